using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>"looked in, all quiet": somebody went round the dams that are near their time.</summary>
internal static class LookReader
{
    /// <summary>The task it answers.</summary>
    public static readonly string Task = CareTaskWords.Word(CareTaskName.LookIn);

    public static void Read(Statement statement, Clause clause)
    {
        var asked = statement.Known.Context.Reminders.Any(reminder => reminder.Task == Task);
        if (!clause.Has(Tag.LookedIn) || clause.Asked || clause.Has(Tag.Not) || !(asked || clause.Has(Tag.HasDam)))
        {
            return;
        }

        statement.Drafts.RemoveAll(draft => draft.Kind == FactKind.Note && draft.Clause == clause);
        var look = statement.Add(FactKind.Done, clause, clause.First(Tag.LookedIn));
        look.Task = Task;
        look.Mention = clause.Mentions.FirstOrDefault(mention => mention.Entries.Count > 0);
        // In reply to a word about one dam it is that dam; else one look goes round them all.
        if (look.Mention is null && statement.Known.Reply is { } reply && reply.Task == Task && statement.Known.Context.Reminders.Count(reminder => reminder.Task == Task) == 1)
        {
            (look.Animal, look.Settled) = (reply.Animal, true);
        }
    }
}

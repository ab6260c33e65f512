using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Animals;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>What is only supposed, or so as a rule, is no record: it is kept in its own words where an animal was named.</summary>
internal static class MoodGate
{
    public static void Sift(Statement statement, Clause clause, int from)
    {
        if (clause.Mood == Mood.Told)
        {
            return;
        }

        Mention? held = null;
        for (var i = statement.Drafts.Count - 1; i >= from; i--)
        {
            var draft = statement.Drafts[i];
            if (clause.Mood == Mood.Usual ? draft.Value is not null || draft.Ask is not null || draft.Kind is FactKind.Feed or FactKind.Colostrum : IsRecord(draft.Kind))
            {
                held = draft.Mention ?? held;
                statement.Because(clause, "a condition, a plan or a rule, not something that has happened");
                statement.Drafts.RemoveAt(i);
            }
        }

        if (held is { Kind: MentionKind.Named or MentionKind.BabyOf } && !statement.Drafts.Exists(draft => draft.Kind == FactKind.Note))
        {
            statement.Add(FactKind.Note, clause, clause.Items[0]).Mention = held;
        }
    }

    private static bool IsRecord(FactKind kind) =>
        kind is not (FactKind.Kit or FactKind.Weather or FactKind.Note or FactKind.Claim or FactKind.Presentation or FactKind.LabourSign or FactKind.Roster);
}

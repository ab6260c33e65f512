using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Reads bare answers: done, not yet, on it.</summary>
internal static class ReplyReader
{
    private static readonly TagSet Answers = TagSet.Of(Tag.Done, Tag.Yes, Tag.NotDone, Tag.Claim, Tag.Redo);

    public static void Read(Statement statement)
    {
        if (statement.Drafts.Exists(draft => draft.Kind != FactKind.Note) || statement.Clauses.Count == 0)
        {
            return;
        }

        var clause = statement.Clauses.Find(one => one.Tags.HasAny(Answers)) ?? Refusal(statement);
        if (Soon(statement) || DidAll(statement) || NoSign(statement) || Fine(statement))
        {
            return;
        }

        if (clause is null || clause.Asked || statement.Clauses.IndexOf(clause) > 1 || clause.Items.Exists(item => item.Kind is ItemKind.Quantity))
        {
            return;
        }

        Answer(statement, clause);
    }

    // "normal": the reading was taken and its figure left out; "too muddy, tomorrow": it was not
    private static bool Fine(Statement statement)
    {
        if (statement.Known.Reply is not { } reply || statement.Clauses.Exists(clause => clause.Asked))
        {
            return false;
        }

        if (Circumstances.Reading(reply.Task) is { } kind && statement.Clauses is [var only] && only.Has(Tag.Fine) && only.Items.TrueForAll(item => item.Tags.HasAny(TagSet.Of(Tag.Fine, Tag.Be, Tag.It, Tag.All, Tag.She, Tag.He)) || item.Mention?.Kind == MentionKind.Pronoun))
        {
            statement.Add(kind, only, only.Items[0]).Ask = Ask.Value;
            return true;
        }

        if (statement.Clauses.Find(clause => clause.Has(Tag.Tomorrow) && clause.Items.Count <= 2) is { } later)
        {
            var not = statement.Add(FactKind.NotDone, later, later.Items[0]);
            (not.Task, not.Animal, not.Settled) = (reply.Task, reply.Animal, true);
            return true;
        }

        return false;
    }

    // "still no sign of it": the thing waited for has not happened
    private static bool NoSign(Statement statement)
    {
        var clause = statement.Clauses[0];
        if (statement.Known.Reply is not { } reply || !FactWords.TryKind(reply.Task, out var kind) || Circumstances.Reading(reply.Task) is not null || clause.Has(Tag.NotDone)
            || clause.Items.Find(item => item.Is(Tag.Not) && item.End > item.First + 1) is not { } not || !clause.Has(Tag.It))
        {
            return false;
        }

        var draft = statement.Add(kind, clause, not);
        draft.Neg = true;
        return true;
    }

    // "in 10", answering a reminder
    private static bool Soon(Statement statement)
    {
        if (statement.Known.Reply is not { } reply || statement.Clauses.Count != 1 || statement.Clauses[0].Items is not [{ Kind: ItemKind.Time, When.Kind: Times.WhenKind.Ahead } time])
        {
            return false;
        }

        var claim = statement.Add(FactKind.Claim, statement.Clauses[0], time);
        (claim.Task, claim.Animal, claim.Settled, claim.When) = (reply.Task, reply.Animal, true, time.When);
        return true;
    }

    // "did both": each of the open reminders
    private static bool DidAll(Statement statement)
    {
        var open = statement.Known.Context.Reminders;
        var clause = statement.Clauses[0];
        if (statement.Clauses.Count > 1 || clause.Asked || !clause.Has(Tag.Done) || !clause.HasAny(Tag.Both, Tag.All) || clause.Has(Tag.Not) || clause.Items.Count > 4 || open.Length < 2 || (clause.Has(Tag.Both) && open.Length != 2))
        {
            return false;
        }

        foreach (var one in open)
        {
            var done = statement.Add(FactKind.Done, clause, clause.Items[0]);
            (done.Task, done.Animal, done.Settled) = (one.Task, one.Animal, true);
            done.Ask = Circumstances.Reading(one.Task) is not null && one.Task != "warm" ? Ask.Value : null;
        }

        return true;
    }

    // "can't, at work till 5"
    private static Clause? Refusal(Statement statement) =>
        statement.Known.Reply is not null && statement.Clauses[0] is { Items.Count: 1 } first && first.Has(Tag.Not) ? first : null;

    private static void Answer(Statement statement, Clause clause)
    {
        var now = statement.Clauses.Find(one => one.Has(Tag.Redo) || (one.Has(Tag.Claim) && !one.Has(Tag.NotDone) && statement.Clauses.IndexOf(one) > 0));
        clause = now ?? clause;
        var kind = now is null && clause.Has(Tag.NotDone) || (clause.Has(Tag.Not) && (clause.Has(Tag.Done) || clause.Items.Count == 1)) ? FactKind.NotDone
            : clause.Has(Tag.Claim) && !IsPlainDone(clause) ? FactKind.Claim
            : clause.Has(Tag.Done) || (clause.Has(Tag.Yes) && statement.Known.Reply is not null) ? FactKind.Done
            : (FactKind?)null;
        if (kind is null || (kind != FactKind.Claim && clause.Items.Count > 5))
        {
            return;
        }

        var named = statement.Clauses.Select(PlanReader.TaskOf).FirstOrDefault(task => task is not null);
        var reminder = Reminder(statement, named);
        if (reminder is null && (statement.Known.Context.Reminders.IsDefaultOrEmpty || kind == FactKind.Claim && named is null && statement.Known.Context.Reminders.IsDefaultOrEmpty))
        {
            return;
        }

        statement.Drafts.RemoveAll(draft => kind != FactKind.Done || draft.Kind != FactKind.Note);
        var draft = statement.Add(kind.Value, clause, clause.Items[0]);
        draft.Task = reminder?.Task ?? named;
        draft.Mention = clause.Mentions.FirstOrDefault(mention => mention.Entries.Count > 0);
        if (draft.Mention is null)
        {
            (draft.Animal, draft.Settled) = (reminder is null ? Fact.AskAnimal : reminder.Animal, true);
        }

        draft.Ask = reminder is null && draft.Mention is null ? Ask.Animal : kind == FactKind.Done && Circumstances.Reading(draft.Task) is { } reading && draft.Task != "warm" && reading != FactKind.Note ? Ask.Value : null;
        draft.When = clause.Items.Find(item => item.Kind == ItemKind.Time)?.When;
    }

    private static bool IsPlainDone(Clause clause) => clause.First(Tag.Done) is { } done && !done.Is(Tag.Claim) && clause.First(Tag.Claim)?.First > done.First;

    private static OpenReminder? Reminder(Statement statement, string? named)
    {
        var known = statement.Known;
        if (known.Reply is { } reply)
        {
            return reply;
        }

        var fitting = known.Context.Reminders.Where(one => named is null || one.Task == named).ToArray();
        return fitting.Length == 1 ? fitting[0] : null;
    }
}

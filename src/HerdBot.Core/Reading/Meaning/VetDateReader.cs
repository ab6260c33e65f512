using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;
using HerdBot.Core.Reading.Times;
using NodaTime;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>"vet says due around May 20": the birth that a vet expects, as part of a pregnancy check.</summary>
internal static class VetDateReader
{
    // A due date without a year that lies further back than this is next year's.
    private const int LongPast = 60;

    public static void Read(Statement statement)
    {
        if (!statement.Clauses.Exists(clause => clause.HasAny(Tag.Vet, Tag.Scan)))
        {
            return;
        }

        foreach (var clause in statement.Clauses.Where(clause => clause.Has(Tag.Due) && !clause.Asked).ToList())
        {
            if (clause.Items.Find(item => item is { Kind: ItemKind.Time, When: { Kind: WhenKind.Day, Date: not null } }) is { } day)
            {
                Expect(statement, clause, day);
            }
        }
    }

    private static void Expect(Statement statement, Clause clause, Item day)
    {
        var (date, today) = (day.When!.Date!.Value, statement.Known.Context.Now.Date);
        var check = statement.Drafts.Find(draft => draft is { Kind: FactKind.PregnancyCheck, Neg: false } && draft.Clause.Sentence == clause.Sentence) ?? statement.Add(FactKind.PregnancyCheck, clause, day);
        check.Mention ??= clause.Mentions.FirstOrDefault(mention => mention.Entries.Count > 0) ?? statement.Named;
        check.Expected = Period.DaysBetween(date, today) > LongPast ? date.PlusYears(1) : date;
        check.When = check.When == day.When ? null : check.When;
        check.Unsure = false;
        statement.Drafts.RemoveAll(draft => draft.Kind == FactKind.Note && (draft.Clause == clause || draft.When == day.When));
    }
}

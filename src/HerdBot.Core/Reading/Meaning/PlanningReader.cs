using HerdBot.Core.Due;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;
using HerdBot.Core.Reading.Times;
using NodaTime;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Questions that look ahead: if she is mated on a day, which days for births in a month, the season's calendar.</summary>
internal static class PlanningReader
{
    private const int FewWords = 6;

    // "if I breed her", not only "to breed".
    private const int OnADay = 1;

    public static Draft? Read(Statement statement, List<Clause> clauses, TagSet tags, bool asked)
    {
        var thought = clauses.SelectMany(clause => clause.Items).Where(item => item.Is(Tag.IfBred)).ToList();
        if (thought.Exists(item => item.Argument == OnADay) && (asked || tags.Has(Tag.When)))
        {
            var draft = New(statement, clauses[0], MatingTopics.If);
            draft.When = clauses.SelectMany(clause => clause.Items).FirstOrDefault(item => item is { Kind: ItemKind.Time, When.Kind: WhenKind.Day })?.When;
            return draft;
        }

        if (tags.Has(Tag.Calendar) && clauses.Count == 1 && clauses[0].Items.Count <= FewWords && !tags.HasAny(TagSet.Of(Tag.HasNumber, Tag.HasQuantity, Tag.HasTime)))
        {
            return New(statement, clauses[0], MatingTopics.Calendar);
        }

        return thought.Count > 0 && (asked || tags.HasAny(TagSet.Of(Tag.Question, Tag.When, Tag.Howto, Tag.TasksQ))) ? Months(statement, clauses) : null;
    }

    // "for May births", "births in April or May"
    private static Draft? Months(Statement statement, List<Clause> clauses)
    {
        var months = clauses.SelectMany(clause => clause.Items).Where(item => item.Is(Tag.Month) && item.Kind != ItemKind.Time).Select(item => item.Argument).Where(month => month is >= 1 and <= 12).ToList();
        if (months.Count == 0)
        {
            return null;
        }

        var year = statement.Known.Context.Now.Year;
        var last = new LocalDate(months[^1] < months[0] ? year + 1 : year, months[^1], 1);
        var draft = New(statement, clauses[0], MatingTopics.Months);
        draft.When = new When(WhenKind.Range) { Date = new LocalDate(year, months[0], 1), EndDate = last.PlusMonths(1).PlusDays(-1) };
        return draft;
    }

    private static Draft New(Statement statement, Clause clause, string field)
    {
        var draft = statement.Add(FactKind.QuestionDue, clause, null);
        draft.Field = field;
        return draft;
    }
}

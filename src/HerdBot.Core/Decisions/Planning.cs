using System.Collections.Immutable;
using HerdBot.Core.Due;
using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>Looks ahead: a mating that is only thought of, and the days that give births in wanted months.</summary>
internal static class Planning
{
    private const double Told = 0.2;
    private const double AlmostBest = 0.9;
    private const int LongestMonths = 12;

    /// <summary>"If I breed Willow on June 3, when?"</summary>
    public static string If(Draft draft, Fact question)
    {
        var today = draft.Farm.Clock.Day(draft.Now);
        var mated = Coming(question.At?.Date ?? today, today);
        if (draft.State.Due(draft.Farm).If(draft.State.Named(question.Animal)?.Id, mated) is not { } due)
        {
            return draft.Phrases.Say("answer.due.nobody");
        }
        return draft.Phrases.Say("plan.if", [("mated", draft.Speaker.Date(mated)), .. DueAnswers.Window(draft, due)]) + Weather(draft, due);
    }

    /// <summary>"Which days to breed for May births?"</summary>
    public static string Months(Draft draft, Fact question)
    {
        var today = draft.Farm.Clock.Day(draft.Now);
        if (question is not { At: { Date: var from }, Until: { } until } || until < from || Period.Between(from, until, PeriodUnits.Months).Months >= LongestMonths)
        {
            return draft.Phrases.Say("plan.months.which");
        }
        var dam = draft.State.Named(question.Animal)?.Id;
        // The soonest year in which the best day is not past.
        for (var years = 0; years < 4; years++)
        {
            var (first, last) = (from.PlusYears(years), until.PlusYears(years));
            if (Best(draft, dam, first, last) is { } best && best.Day >= today)
            {
                return draft.Phrases.Say("plan.months", ("months", $"{draft.Speaker.Date(first)} - {draft.Speaker.Date(last)}"), ("from", draft.Speaker.Date(LocalDate.Max(best.From, today))),
                    ("to", draft.Speaker.Date(best.To)), ("best", draft.Speaker.Date(best.Day)), ("chance", DueAnswers.Percent(best.Chance)));
            }
        }
        return draft.Phrases.Say("plan.months.which");
    }

    private static (LocalDate From, LocalDate To, LocalDate Day, double Chance)? Best(Draft draft, Herd.AnimalId? dam, LocalDate first, LocalDate last)
    {
        var book = draft.State.Due(draft.Farm);
        if (book.If(dam, first) is not { } some)
        {
            return null;
        }
        var usual = Period.DaysBetween(first, some.Median);
        var days = new List<(LocalDate Day, double Chance)>();
        for (var day = first.PlusDays(-usual - 30); day <= last.PlusDays(-usual + 30); day = day.PlusDays(1))
        {
            var due = book.If(dam, day)!;
            days.Add((day, due.ChanceBy(last) - due.ChanceBy(first.PlusDays(-1))));
        }
        var (bestDay, chance) = days.MaxBy(day => day.Chance);
        var good = days.Where(day => day.Chance >= AlmostBest * chance).ToList();
        return (good[0].Day, good[^1].Day, bestDay, chance);
    }

    /// <summary>Births that the farm's settings call hard for heat or cold are pointed out.</summary>
    private static string Weather(Draft draft, DueForecast due)
    {
        var south = draft.Farm.Hemisphere == Hemisphere.South;
        ImmutableArray<int> summer = [7, 8], winter = [12, 1, 2], southernSummer = [1, 2], southernWinter = [6, 7, 8];
        var (hot, cold) = (ShareIn(due, draft.Farm.HotMonths ?? (south ? southernSummer : summer)), ShareIn(due, draft.Farm.ColdMonths ?? (south ? southernWinter : winter)));
        return hot >= Told ? " " + draft.Phrases.Say("plan.hot", ("chance", DueAnswers.Percent(hot)))
            : cold >= Told ? " " + draft.Phrases.Say("plan.cold", ("chance", DueAnswers.Percent(cold))) : "";
    }

    private static double ShareIn(DueForecast due, ImmutableArray<int> months)
    {
        var window = due.Window(0.98);
        return Enumerable.Range(0, Period.DaysBetween(window.From, window.To) + 1).Select(window.From.PlusDays).Where(day => months.Contains(day.Month)).Sum(due.ChanceOn);
    }

    /// <summary>A day without a year is the next such day.</summary>
    private static LocalDate Coming(LocalDate day, LocalDate today)
    {
        while (day < today && Period.DaysBetween(day, today) < 3000)
        {
            day = day.PlusYears(1);
        }
        return day;
    }
}

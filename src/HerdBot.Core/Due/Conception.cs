using HerdBot.Core.Care;
using NodaTime;

namespace HerdBot.Core.Due;

/// <summary>A day on which she may have conceived.</summary>
/// <param name="Day">The day.</param>
/// <param name="Mating">Which of the case's matings, from 0.</param>
/// <param name="Chance">That she conceived then and carries it still.</param>
internal readonly record struct ConceptionDay(LocalDate Day, int Mating, double Chance);

/// <summary>
/// Where a dam may stand: carrying since a day, or carrying nothing. Matings move chance from nothing to carrying,
/// losses move it back evenly with time, and every look at her weighs both by how likely it makes what was seen.
/// </summary>
internal sealed class Conception
{
    private readonly Likelihoods likelihoods;
    private readonly LocalDate first;
    private readonly List<(int Day, int Mating, double Weight)> carried = [];
    private double open = 1;
    private int at;

    // A weight times this is a chance: losses and normalising touch all weights alike, so they touch this alone.
    private double scale = 1;
    private double weights;

    private Conception(Likelihoods likelihoods, LocalDate first) => (this.likelihoods, this.first) = (likelihoods, first);

    /// <summary>The chance that she carries nothing.</summary>
    public double Open => open;

    /// <summary>The chance that she carries.</summary>
    public double Carried => weights * scale;

    /// <summary>The days on which she may have conceived, in their order; their chances and <see cref="Open"/> make 1.</summary>
    public IEnumerable<ConceptionDay> Days => carried.Select(day => new ConceptionDay(first.PlusDays(day.Day), day.Mating, day.Weight * scale));

    /// <summary>What matings and checks up to a day say.</summary>
    public static Conception Of(CareTable table, DueCase asked)
    {
        var first = asked.Matings.Min(mating => mating.From);
        var state = new Conception(new Likelihoods(table), first);
        int DayOf(LocalDate day) => Period.DaysBetween(first, day);
        var checks = asked.Checks.Where(check => check.On <= asked.Today).Select(check => (Day: DayOf(check.On), Order: -1, Do: (Action)(() => state.See(check))));
        var matings = asked.Matings.SelectMany((mating, which) => state.MatingDays(mating, which, DayOf(mating.From), DayOf(mating.To)));
        foreach (var (day, _, happen) in checks.Concat(matings).Where(happened => happened.Day <= DayOf(asked.Today)).OrderBy(happened => happened.Day).ThenBy(happened => happened.Order))
        {
            state.GoTo(day);
            happen();
        }
        state.GoTo(DayOf(asked.Today));
        return state;
    }

    private IEnumerable<(int Day, int Order, Action Do)> MatingDays(Mating mating, int which, int from, int to)
    {
        if (!mating.IsPen)
        {
            return [(from, which, () => Mate(which))];
        }
        var days = to - from + 1;
        var share = likelihoods.PenTakes(days) / days;
        return Enumerable.Range(0, days).Select(n => (from + n, which, (Action)(() => Conceive(which, share / (1 - n * share)))));
    }

    /// <summary>A male that she took: what carries already seldom would.</summary>
    private void Mate(int which)
    {
        Weigh(age => 1 - likelihoods.Rejects(age), 1 - likelihoods.RejectsOpen);
        Conceive(which, likelihoods.Takes);
    }

    private void Conceive(int which, double share)
    {
        carried.Add((at, which, open * share / scale));
        weights += open * share / scale;
        open *= 1 - share;
    }

    private void See(PregnancyCheck check)
    {
        switch (check.Result)
        {
            case CheckResult.Pregnant:
                Weigh(likelihoods.CheckSees, likelihoods.CheckFalse);
                break;
            case CheckResult.Open:
                Weigh(age => 1 - likelihoods.CheckSees(age), 1 - likelihoods.CheckFalse);
                break;
            case CheckResult.SpitOff:
                Weigh(likelihoods.Rejects, likelihoods.RejectsOpen);
                break;
            default:
                Weigh(age => 1 - likelihoods.Rejects(age), 1 - likelihoods.RejectsOpen);
                break;
        }
        if (check.Expected is { } expected)
        {
            Expect(Period.DaysBetween(first, expected));
        }
    }

    /// <summary>A vet's due date says how old the pregnancy is, and nothing of whether there is one.</summary>
    private void Expect(int day)
    {
        var before = weights;
        Multiply(age => likelihoods.VetDate(day - (at - age)));
        scale *= weights > 0 ? before / weights : 1;
    }

    private void Weigh(Func<int, double> carrying, double nothing)
    {
        open *= nothing;
        Multiply(carrying);
        var sum = open + Carried;
        (open, scale) = (open / sum, scale / sum);
    }

    private void Multiply(Func<int, double> carrying)
    {
        weights = 0;
        for (var n = 0; n < carried.Count; n++)
        {
            var day = carried[n];
            carried[n] = day with { Weight = day.Weight * carrying(at - day.Day) };
            weights += carried[n].Weight;
        }
    }

    private void GoTo(int day)
    {
        var kept = likelihoods.Kept(day - at);
        at = day;
        open += Carried * (1 - kept);
        scale *= kept;
    }
}

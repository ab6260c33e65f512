using System.Runtime.CompilerServices;
using HerdBot.Core.Care;
using NodaTime;

namespace HerdBot.Core.Due;

/// <summary>Days from one to another, both counted.</summary>
/// <param name="From">The first.</param>
/// <param name="To">The last.</param>
public readonly record struct DayRange(LocalDate From, LocalDate To);

/// <summary>When a dam is due, as far as anybody can know.</summary>
/// <remarks>
/// The day of birth is the convolution of the conception's days with the pregnancy's length, given that nothing was
/// born by the end of the day before today. Windows and median are of a birth, should she carry; whether she does is
/// <see cref="Open"/>.
/// </remarks>
public sealed class DueForecast
{
    private readonly double[] all;
    private readonly double[] given;
    private readonly LocalDate firstDay;

    private DueForecast(Conception conception, Gestation gestation, DueCase asked, Lean lean, double residual)
    {
        Case = asked;
        Lean = lean;
        var days = conception.Days.ToList();
        firstDay = days[0].Day.PlusDays(gestation.Shortest);
        all = new double[Period.DaysBetween(firstDay, days[^1].Day.PlusDays(gestation.Longest)) + 1];
        var today = Period.DaysBetween(firstDay, asked.Today);
        var since = new double[days.Count];
        for (var n = 0; n < days.Count; n++)
        {
            since[n] = Add(days[n], gestation, gestation.SpreadOf(days[n].Day, asked.Hemisphere, lean, residual), today);
        }
        var carrying = since.Sum();
        Open = conception.Open / (conception.Open + carrying);
        Overdue = Math.Min(1, carrying / days.Sum(day => day.Chance));
        (Mating, ConceivedOn) = Likeliest(days, since);
        Days = Period.DaysBetween(ConceivedOn, asked.Today);
        Normalise(all);
        given = [.. all.Select((chance, day) => day < today ? 0 : chance)];
        Normalise(given);
        Next7 = (1 - Open) * given.Skip(Math.Max(0, today)).Take(7 + Math.Min(0, today)).Sum();
        Today = today >= 0 && today < given.Length ? (1 - Open) * given[today] : 0;
    }

    /// <summary>What was asked.</summary>
    public DueCase Case { get; }
    /// <summary>How the dam carries, herd and own record together.</summary>
    public Lean Lean { get; }
    /// <summary>The chance that she carries nothing, never did or no more.</summary>
    public double Open { get; }
    /// <summary>The chance that a pregnancy of this sort lasts this long.</summary>
    public double Overdue { get; }
    /// <summary>The chance of a birth in the seven days from today on.</summary>
    public double Next7 { get; }
    /// <summary>The chance of a birth today.</summary>
    public double Today { get; }
    /// <summary>The mating that she most likely carries from.</summary>
    public Mating Mating { get; }
    /// <summary>The likeliest day of it; of a time in the pen, the middle of what is likely.</summary>
    public LocalDate ConceivedOn { get; }
    /// <summary>How long she has carried today, from that day.</summary>
    public int Days { get; }
    /// <summary>The day by which half of the births like this one have come.</summary>
    public LocalDate Median => Quantile(given, 0.5);
    /// <summary>The 5 % point, whatever today is: from then on she is looked in on.</summary>
    public LocalDate LookFrom => Quantile(all, 0.05);
    /// <summary>The 95 % point, whatever today is: past it she is overdue.</summary>
    public LocalDate OverdueFrom => Quantile(all, 0.95);

    /// <summary>The middle window that holds a share of the births: its ends are equal-tailed quantiles.</summary>
    /// <param name="share">Above 0, below 1.</param>
    public DayRange Window(double share) => new(Quantile(given, (1 - share) / 2), Quantile(given, (1 + share) / 2));

    /// <summary>The chance that a birth, should she carry, comes on a day.</summary>
    public double ChanceOn(LocalDate day) => At(given, Period.DaysBetween(firstDay, day));

    /// <summary>The chance that a birth, should she carry, has come by the end of a day.</summary>
    public double ChanceBy(LocalDate day) => given.Take(Math.Max(0, Period.DaysBetween(firstDay, day) + 1)).Sum();

    /// <summary>Works it out.</summary>
    /// <param name="table">The species' numbers.</param>
    /// <param name="asked">What is known.</param>
    /// <returns>Null where no mating can still be carried.</returns>
    public static DueForecast? Of(CareTable table, DueCase asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var gestation = Gestation.Of(table);
        var (lean, residual) = HerdLengths.Of(table, gestation, [.. asked.HerdPast, asked.Past]).OfDam(asked.Past);
        return Of(table, gestation, asked, lean, residual);
    }

    /// <summary>Works it out where the herd's lengths are known already.</summary>
    /// <param name="table">The species' numbers.</param>
    /// <param name="gestation">Their meaning.</param>
    /// <param name="asked">What is known.</param>
    /// <param name="lean">How the dam carries.</param>
    /// <param name="residual">The residual variance in force, in days squared.</param>
    /// <returns>Null where no mating can still be carried.</returns>
    public static DueForecast? Of(CareTable table, Gestation gestation, DueCase asked, Lean lean, double residual)
    {
        ArgumentNullException.ThrowIfNull(gestation);
        ArgumentNullException.ThrowIfNull(asked);
        var current = asked with { Matings = [.. asked.Matings.Where(mating => mating.From <= asked.Today && Period.DaysBetween(mating.To, asked.Today) <= gestation.Longest)] };
        if (current.Matings.IsEmpty || Conception.Of(table, current) is not { Carried: > 0 } conception)
        {
            return null;
        }
        return new DueForecast(conception, gestation, current, lean, residual);
    }

    /// <summary>The likeliest length of a pregnancy that ended in a birth.</summary>
    /// <param name="table">The species' numbers.</param>
    /// <param name="gestation">Their meaning.</param>
    /// <param name="asked">The matings and checks; its today is the day of the birth.</param>
    /// <returns>Its days, and whether the mating is beyond reasonable doubt; null where no mating fits the birth.</returns>
    public static (int Days, bool Sure)? LengthAt(CareTable table, Gestation gestation, DueCase asked)
    {
        ArgumentNullException.ThrowIfNull(gestation);
        ArgumentNullException.ThrowIfNull(asked);
        if (asked.Matings.IsEmpty)
        {
            return null;
        }
        var lean = new Lean(0, gestation.Variances.Herd + gestation.Variances.Dam);
        var fits = Conception.Of(table, asked).Days.Select(day => (Length: Period.DaysBetween(day.Day, asked.Today), Weight: day.Chance * gestation
                .SpreadOf(day.Day, asked.Hemisphere, lean, gestation.Variances.Residual).On(Period.DaysBetween(day.Day, asked.Today))))
            .Where(fit => fit.Weight > 0 && fit.Length >= gestation.Shortest && fit.Length <= gestation.Longest).OrderBy(fit => fit.Length).ToList();
        if (fits.Count == 0)
        {
            return null;
        }
        var (half, whole) = (0.0, fits.Sum(fit => fit.Weight));
        var middle = fits.First(fit => (half += fit.Weight) >= whole / 2).Length;
        return (middle, fits.Where(fit => Math.Abs(fit.Length - middle) <= Near).Sum(fit => fit.Weight) >= Beyond * whole);
    }

    private const int Near = 1;
    private const double Beyond = 0.9;

    /// <summary>Adds the births of one conception, and returns the chance that it is carried still.</summary>
    /// <remarks>The innermost loop, made fast from its first call: a file of matings is worked through before the runtime would have warmed up.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double Add(ConceptionDay day, Gestation gestation, LengthSpread spread, int today)
    {
        var offset = Period.DaysBetween(firstDay, day.Day);
        var (before, whole) = (spread.UpTo(gestation.Shortest - 1), spread.UpTo(gestation.Longest) - spread.UpTo(gestation.Shortest - 1));
        var (below, since) = (before, 0.0);
        for (var length = gestation.Shortest; length <= gestation.Longest; length++)
        {
            var upTo = spread.UpTo(length);
            var chance = day.Chance * (upTo - below) / whole;
            below = upTo;
            all[offset + length] += chance;
            since += offset + length >= today ? chance : 0;
        }
        return since;
    }

    private (Mating Mating, LocalDate On) Likeliest(List<ConceptionDay> days, double[] since)
    {
        var which = days.Select((day, n) => (day.Mating, Chance: since[n])).GroupBy(day => day.Mating).MaxBy(group => group.Sum(day => day.Chance))!.Key;
        var half = days.Select((day, n) => day.Mating == which ? since[n] : 0).Sum() / 2;
        var on = days[0].Day;
        for (var n = 0; n < days.Count && half >= 0; n++)
        {
            if (days[n].Mating == which)
            {
                (half, on) = (half - since[n], days[n].Day);
            }
        }
        return (Case.Matings[which], on);
    }

    private LocalDate Quantile(double[] chances, double share)
    {
        var sum = 0.0;
        for (var day = 0; day < chances.Length; day++)
        {
            sum += chances[day];
            if (sum >= share - 1e-12)
            {
                return firstDay.PlusDays(day);
            }
        }
        return firstDay.PlusDays(chances.Length - 1);
    }

    private static double At(double[] chances, int day) => day >= 0 && day < chances.Length ? chances[day] : 0;

    private static void Normalise(double[] chances)
    {
        var sum = chances.Sum();
        for (var day = 0; day < chances.Length && sum > 0; day++)
        {
            chances[day] /= sum;
        }
    }
}

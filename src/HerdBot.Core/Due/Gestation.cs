using HerdBot.Core.Care;
using NodaTime;

namespace HerdBot.Core.Due;

/// <summary>How long a species carries: median, season, spread and tails.</summary>
/// <remarks>
/// The published spread is taken as a t; the herd's, the dam's and the season's variances are parts of it and the rest
/// is the residual, to which alone the heavy tails belong. What is known takes its part off; with nothing known the
/// published spread comes out again.
/// </remarks>
public sealed class Gestation
{
    private const double Year = 365.25;
    private readonly double tails;
    private readonly double published;
    private readonly double north;
    private readonly double south;

    private Gestation(CareTable table)
    {
        Median = (double)table.Number(DueKeys.Median);
        Season = (double)table.Number(DueKeys.Season);
        Shortest = table.Count(DueKeys.Shortest);
        Longest = table.Count(DueKeys.Longest);
        (north, south) = (table.Count(DueKeys.SeasonNorth), table.Count(DueKeys.SeasonSouth));
        tails = (double)table.Number(DueKeys.Tails);
        published = Math.Pow((double)table.Number(DueKeys.Scale), 2) * tails / (tails - 2);
        var (herd, dam) = (published * (double)table.Number(DueKeys.HerdShare) / 100, published * (double)table.Number(DueKeys.DamShare) / 100);
        Variances = new Variances(herd, dam, published - herd - dam - SeasonVariance);
    }

    /// <summary>The numbers of a table.</summary>
    /// <param name="table">A species' care table.</param>
    public static Gestation Of(CareTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return new Gestation(table);
    }

    /// <summary>The species' median, in days.</summary>
    public double Median { get; }
    /// <summary>How far the season moves it, up and down, in days.</summary>
    public double Season { get; }
    /// <summary>The shortest pregnancy reckoned with, in days.</summary>
    public int Shortest { get; }
    /// <summary>The longest pregnancy reckoned with, in days.</summary>
    public int Longest { get; }
    /// <summary>What lengths vary by where the farm's own records say nothing, in days squared.</summary>
    public Variances Variances { get; }
    /// <summary>The variance of the season's curve over a year, in days squared.</summary>
    public double SeasonVariance => Season * Season / 2;

    /// <summary>How much longer a pregnancy lasts for the season of its mating, in days; 0 where the hemisphere is not known.</summary>
    public double ShiftOf(LocalDate mating, Hemisphere? hemisphere) => hemisphere is null ? 0
        : Season * Math.Cos(2 * Math.PI * (mating.DayOfYear - (hemisphere == Hemisphere.North ? north : south)) / Year);

    /// <summary>A length on record, as it deviates.</summary>
    /// <param name="days">How long she carried.</param>
    /// <param name="mating">The day of the mating; null where it is not known.</param>
    /// <param name="hemisphere">Null where it is not known.</param>
    public Length LengthOf(int days, LocalDate? mating, Hemisphere? hemisphere) => mating is { } day && hemisphere is not null
        ? new Length(days, days - Median - ShiftOf(day, hemisphere), true) : new Length(days, days - Median, false);

    /// <summary>The length of a pregnancy: a t with the moments of all that is not known.</summary>
    /// <param name="mating">The day of the mating.</param>
    /// <param name="hemisphere">Null where it is not known: then the season is part of the spread.</param>
    /// <param name="lean">How the dam carries.</param>
    /// <param name="residual">The residual variance in force, in days squared.</param>
    public LengthSpread SpreadOf(LocalDate mating, Hemisphere? hemisphere, Lean lean, double residual)
    {
        var variance = residual + lean.Variance + (hemisphere is null ? SeasonVariance : 0);
        // The fourth cumulant is the residual's alone, so a smaller share of it makes lighter tails.
        var degrees = 4 + (tails - 4) * Math.Pow(variance / published * (Variances.Residual / residual), 2);
        return new LengthSpread(Median + ShiftOf(mating, hemisphere) + lean.Mean, Math.Sqrt(variance * (degrees - 2) / degrees), StandardT.Of(degrees));
    }

    /// <summary>The degrees of freedom of the residual by itself.</summary>
    public double ResidualTails => 4 + (tails - 4) * Math.Pow(Variances.Residual / published, 2);
}

/// <summary>The distribution of one pregnancy's length.</summary>
/// <param name="Centre">Its median, in days.</param>
/// <param name="Scale">Its scale, in days.</param>
/// <param name="Shape">Its shape.</param>
public readonly record struct LengthSpread(double Centre, double Scale, StandardT Shape)
{
    /// <summary>The chance of a length up to some whole days: whole days run from half to half.</summary>
    public double UpTo(int days) => Shape.Below((days + 0.5 - Centre) / Scale);

    /// <summary>The chance of a length of just so many days.</summary>
    public double On(int days) => UpTo(days) - UpTo(days - 1);
}

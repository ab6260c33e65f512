using HerdBot.Core.Care;
using HerdBot.Core.Due;
using HerdBot.Core.Herd;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using NodaTime;

namespace HerdBot.Tests.Core.Due;

/// <summary>
/// Made-up herds whose dams carry as the model assumes, each with an effect of her own that nobody knows, and what the
/// forecasts are worth. Shared with the benchmarks, which print the big run.
/// </summary>
public sealed class Calibration
{
    private const int DamsInHerd = 10;
    private const int MostEarlier = 5;
    private static readonly LocalDate Start = new(2020, 1, 1);
    private readonly MersenneTwister chance;
    private readonly CareTable table = CareTable.BuiltIn(Species.Alpaca);
    private readonly Gestation gestation;
    private readonly double stretched;

    /// <summary>Runs.</summary>
    /// <param name="pregnancies">How many.</param>
    /// <param name="seed">Chance.</param>
    /// <param name="stretched">How much wider the truth is than the model assumes; 1 for as assumed.</param>
    public Calibration(int pregnancies, int seed, double stretched = 1)
    {
        chance = new MersenneTwister(seed);
        gestation = Gestation.Of(table);
        this.stretched = stretched;
        for (var herd = 0; herd < pregnancies / DamsInHerd; herd++)
        {
            Herd();
        }
    }

    /// <summary>Births by the tenth of the forecast that they fell in, as shares.</summary>
    public double[] Tenths { get; } = new double[10];
    /// <summary>The same, given not yet born at the forecast's median.</summary>
    public double[] TenthsFromTheMedian { get; } = new double[10];
    /// <summary>Shares of births inside the whole-day windows of 50, 80 and 95 %.</summary>
    public double[] Covered { get; } = new double[3];
    /// <summary>The mean score (CRPS, in days) for dams with three earlier births or more.</summary>
    public double Score => known.Average(one => one.Ours);
    /// <summary>The same for the species' median as the one answer.</summary>
    public double ScoreOfTheMean => known.Average(one => one.Mean);
    /// <summary>The same for the published spread around the species' median.</summary>
    public double ScoreOfTheSpecies => known.Average(one => one.Species);
    /// <summary>The mean score of all dams.</summary>
    public double ScoreOfAll => all.Average();

    private readonly List<(double Ours, double Mean, double Species)> known = [];
    private readonly List<double> all = [];
    private int counted;
    private int countedFromTheMedian;

    /// <summary>Shares instead of counts.</summary>
    public Calibration Finish()
    {
        for (var n = 0; n < 10; n++)
        {
            Tenths[n] /= counted;
            TenthsFromTheMedian[n] /= countedFromTheMedian;
        }
        for (var n = 0; n < 3; n++)
        {
            Covered[n] /= counted;
        }
        return this;
    }

    private void Herd()
    {
        var herd = Normal.Sample(chance, 0, Math.Sqrt(gestation.Variances.Herd));
        var hemisphere = chance.NextDouble() < 0.5 ? Hemisphere.North : Hemisphere.South;
        var dams = Enumerable.Range(0, DamsInHerd).Select(_ =>
        {
            var dam = herd + Normal.Sample(chance, 0, Math.Sqrt(gestation.Variances.Dam));
            var past = Enumerable.Range(0, chance.Next(MostEarlier + 1)).Select(_ => Earlier(dam, hemisphere)).ToList();
            return (Effect: dam, Past: past);
        }).ToList();
        var lengths = HerdLengths.Of(table, gestation, dams.Select(dam => dam.Past));
        foreach (var (effect, past) in dams)
        {
            var mated = SomeDay();
            var born = mated.PlusDays(LengthOf(mated, effect, hemisphere));
            var (lean, residual) = lengths.OfDam(past);
            var asked = new DueCase(Species.Alpaca, [Mating.On(mated)], mated.PlusDays(60)) { Hemisphere = hemisphere };
            var due = DueForecast.Of(table, gestation, asked, lean, residual)!;
            Count(due, born);
            if (born >= due.Median)
            {
                var later = DueForecast.Of(table, gestation, asked with { Today = due.Median }, lean, residual)!;
                TenthsFromTheMedian[Tenth(later, born)]++;
                countedFromTheMedian++;
            }
            all.Add(Crps(due.ChanceOn, mated, born));
            if (past.Count >= 3)
            {
                var species = gestation.SpreadOf(mated, null, new Lean(0, gestation.Variances.Herd + gestation.Variances.Dam), gestation.Variances.Residual);
                known.Add((all[^1], Math.Abs(Period.DaysBetween(mated, born) - gestation.Median),
                    Crps(day => species.UpTo(Period.DaysBetween(mated, day)) - species.UpTo(Period.DaysBetween(mated, day) - 1), mated, born)));
            }
        }
    }

    private void Count(DueForecast due, LocalDate born)
    {
        counted++;
        Tenths[Tenth(due, born)]++;
        foreach (var (share, n) in new[] { (0.5, 0), (0.8, 1), (0.95, 2) })
        {
            var window = due.Window(share);
            Covered[n] += born >= window.From && born <= window.To ? 1 : 0;
        }
    }

    /// <summary>Where the birth fell in the forecast, the day itself spread evenly: the randomised probability integral transform.</summary>
    private int Tenth(DueForecast due, LocalDate born)
    {
        var on = due.ChanceOn(born);
        return (int)Math.Clamp((due.ChanceBy(born) - on * chance.NextDouble()) * 10, 0, 9);
    }

    private Length Earlier(double dam, Hemisphere hemisphere)
    {
        var mated = SomeDay();
        return gestation.LengthOf(LengthOf(mated, dam, hemisphere), mated, hemisphere);
    }

    private LocalDate SomeDay() => Start.PlusDays(chance.Next(2000));

    private int LengthOf(LocalDate mated, double dam, Hemisphere hemisphere)
    {
        int days;
        do
        {
            var degrees = gestation.ResidualTails;
            var residual = StudentT.Sample(chance, 0, Math.Sqrt(gestation.Variances.Residual * (degrees - 2) / degrees), degrees);
            days = (int)Math.Round(gestation.Median + stretched * (gestation.ShiftOf(mated, hemisphere) + dam + residual));
        }
        while (days < gestation.Shortest || days > gestation.Longest);
        return days;
    }

    private double Crps(Func<LocalDate, double> chanceOn, LocalDate mated, LocalDate born)
    {
        var (sum, below) = (0.0, 0.0);
        for (var length = gestation.Shortest; length <= gestation.Longest; length++)
        {
            var day = mated.PlusDays(length);
            below += chanceOn(day);
            sum += Math.Pow(below - (day >= born ? 1 : 0), 2);
        }
        return sum;
    }
}

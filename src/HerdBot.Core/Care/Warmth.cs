using System.Collections.Immutable;
using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>One judged reading of a newborn's rectal temperature.</summary>
/// <param name="At">When it was taken.</param>
/// <param name="Fahrenheit">°F; null where the thermometer showed "Lo" or would not register.</param>
/// <param name="Level">How grave.</param>
/// <param name="Band">Which row of the table, for the wording.</param>
/// <param name="Again">When it is read again.</param>
/// <param name="Holds">Feeding is held from here on.</param>
public sealed record WarmthReading(Instant At, decimal? Fahrenheit, Level Level, string Band, Duration? Again, bool Holds);

/// <summary>How a newborn's warmth stands.</summary>
/// <param name="Readings">Every reading, judged, oldest first.</param>
/// <param name="HoldSince">When the hold on feeding began; null where none is on.</param>
/// <param name="HoldEnded">When the last hold ended; null where none did.</param>
/// <param name="Progress">How it warms; null where there is nothing to say.</param>
public sealed record WarmthState(
    ImmutableArray<WarmthReading> Readings, Instant? HoldSince, Instant? HoldEnded, WarmthProgress? Progress)
{
    /// <summary>The newest reading; null where there is none.</summary>
    public WarmthReading? Last => Readings.LastOrDefault();

    /// <summary>It was cold at some time: at risk.</summary>
    public bool WasCold => Readings.Any(reading => reading.Holds);
}

/// <summary>How fast it warms.</summary>
/// <param name="PerHour">Rise in °F an hour, by least squares since the lowest reading; null before there are two.</param>
/// <param name="NormalAt">When 99.0 °F will be reached at that rate; null where it falls or stands.</param>
/// <param name="SlowAt">From when on it warms too slowly, unless a reading says better; null where that is not to be said.</param>
public sealed record WarmthProgress(decimal? PerHour, Instant? NormalAt, Instant? SlowAt);

/// <summary>Judges temperatures: bands, the hold on feeding, and how fast it warms.</summary>
public static class Warmth
{
    /// <summary>Readings closer together say nothing about a rate.</summary>
    private static readonly Duration LeastRise = Duration.FromMinutes(5);

    /// <summary>How warmth stands at an instant.</summary>
    /// <param name="table">The species' numbers.</param>
    /// <param name="temperatures">The temperature facts with their instants, oldest first; unsure ones may raise, never ease.</param>
    /// <param name="born">The birth.</param>
    /// <param name="upAt">When it was first said to be up or getting up; null where it was not.</param>
    /// <param name="fedAt">When it first got anything; null where it did not.</param>
    /// <param name="now">Nothing after this counts.</param>
    public static WarmthState At(
        CareTable table, IEnumerable<(Fact Fact, Instant At)> temperatures, Instant born, Instant? upAt, Instant? fedAt, Instant now)
    {
        ArgumentNullException.ThrowIfNull(table);
        var readings = ImmutableArray.CreateBuilder<WarmthReading>();
        Instant? holdSince = null, holdEnded = null;
        foreach (var (fact, at) in temperatures.Where(reading => reading.At <= now))
        {
            if (Judge(table, fact, at - born, upAt <= at, fedAt <= at, holdSince is not null) is not { } reading
                || (fact.Unsure && reading.Level < Level.Act))
            {
                continue;
            }
            reading = reading with { At = at };
            if (reading.Holds)
            {
                holdSince ??= at;
            }
            else if (holdSince is not null && EndsHold(table, readings, reading))
            {
                (holdSince, holdEnded) = (null, at);
                reading = reading.Level == Level.Fine ? reading with { Again = null } : reading;
            }
            readings.Add(holdSince is null ? Watched(table, reading, readings, born) : reading);
        }
        var all = readings.ToImmutable();
        return new WarmthState(all, holdSince, holdEnded, holdSince is { } since ? Progress(table, all, since) : null);
    }

    /// <summary>A little low is read once more, and no oftener; twice running in an older one is worth an eye.</summary>
    private static WarmthReading Watched(CareTable table, WarmthReading reading, IReadOnlyList<WarmthReading> before, Instant born)
    {
        if (reading.Band != "watch" || before.Count == 0 || !before[^1].Band.StartsWith("watch", StringComparison.Ordinal))
        {
            return reading;
        }
        var old = before[^1].At - born >= table.Time(CareKeys.WarmthTwiceAfter);
        return reading with { Again = null, Level = old ? Level.Heed : Level.Fine, Band = old ? "watch_twice" : "watch_again" };
    }

    /// <summary>Two good readings in a row, far enough apart.</summary>
    private static bool EndsHold(CareTable table, IReadOnlyList<WarmthReading> before, WarmthReading reading)
    {
        var good = before.Reverse().TakeWhile(earlier => earlier.Fahrenheit >= table.Number(CareKeys.WarmthNormalLow)).ToList();
        return reading.Fahrenheit >= table.Number(CareKeys.WarmthNormalLow)
            && good.Any(earlier => reading.At - earlier.At >= table.Time(CareKeys.WarmthGoodApart));
    }

    private static WarmthReading? Judge(CareTable table, Fact fact, Duration age, bool up, bool fed, bool held)
    {
        var f = Measures.Fahrenheit(fact);
        if (f is null && (fact.Value is not null || fact.Text is null))
        {
            return null;
        }
        var hold = table.Time(CareKeys.WarmthReadAgain);
        bool Under(CareKey key) => f < table.Number(key);
        var (level, band, again, holds) = f switch
        {
            null => (Level.Vet, "critical", hold, true),
            _ when Under(CareKeys.WarmthCriticalLow) => (Level.Vet, "critical", hold, true),
            _ when Under(CareKeys.WarmthNormalLow) && age > table.Time(CareKeys.WarmthSugarAge) && !fed => (Level.Vet, "unfed", hold, true),
            _ when Under(CareKeys.WarmthEmergencyLow) => (Level.Vet, "emergency", hold, true),
            _ when Under(CareKeys.WarmthNormalLow) && age > table.Time(CareKeys.WarmthLateCold) => (Level.Vet, "late_cold", hold, true),
            _ when Under(CareKeys.WarmthNormalLow) && !Under(CareKeys.WarmthSoftLow) && up && age <= table.Time(CareKeys.WarmthSoftUntil) && !held
                => (Level.Heed, "soft", hold, false),
            _ when Under(CareKeys.WarmthNormalLow) => (Level.Act, "cold", hold, true),
            _ when Under(CareKeys.WarmthWatchLow) => (Level.Fine, "watch", held ? hold : table.Time(CareKeys.WarmthWatchAgain), false),
            _ when Under(CareKeys.WarmthHigh) => (Level.Fine, "normal", held ? hold : Duration.Zero, false),
            _ when Under(CareKeys.WarmthVetHigh) => (Level.Heed, "warm", table.Time(CareKeys.WarmthHighAgain), false),
            _ => (Level.Vet, "hot", table.Time(CareKeys.WarmthVetHighAgain), false),
        };
        return new WarmthReading(default, f, level, band, again == Duration.Zero ? null : again, holds);
    }

    private static WarmthProgress Progress(CareTable table, ImmutableArray<WarmthReading> readings, Instant since)
    {
        var held = readings.Where(reading => reading.At >= since && reading.Fahrenheit is not null).ToList();
        var normal = table.Number(CareKeys.WarmthNormalLow);
        var last = readings[^1];
        var slowAt = last.Fahrenheit >= table.Number(CareKeys.WarmthEmergencyLow) && last.Fahrenheit < normal
            ? SlowRise(table, held) ? last.At : Instant.Max(since + table.Time(CareKeys.WarmthSlowAfter), last.At)
            : (Instant?)null;
        var rise = held.Skip(held.FindLastIndex(reading => reading.Fahrenheit == held.Min(lowest => lowest.Fahrenheit))).ToList();
        if (rise.Count < 2 || rise[^1].At - rise[0].At < LeastRise)
        {
            return new WarmthProgress(null, null, slowAt);
        }
        var perHour = Slope(rise);
        var reached = perHour > 0.05 && last.Fahrenheit < normal
            ? last.At + Duration.FromHours((double)(normal - last.Fahrenheit!.Value) / perHour)
            : (Instant?)null;
        return new WarmthProgress(decimal.Round((decimal)perHour, 1), reached, slowAt);
    }

    /// <summary>The newest reading is not enough above the one half an hour before it.</summary>
    private static bool SlowRise(CareTable table, List<WarmthReading> held)
    {
        var last = held[^1];
        var before = held.LastOrDefault(reading => last.At - reading.At >= table.Time(CareKeys.WarmthSlowWithin));
        return before is not null && last.Fahrenheit - before.Fahrenheit < table.Number(CareKeys.WarmthSlowRise);
    }

    private static double Slope(List<WarmthReading> readings)
    {
        var hours = readings.Select(reading => (reading.At - readings[0].At).TotalHours).ToArray();
        var (_, slope) = MathNet.Numerics.Fit.Line(hours, [.. readings.Select(reading => (double)reading.Fahrenheit!.Value)]);
        return slope;
    }
}

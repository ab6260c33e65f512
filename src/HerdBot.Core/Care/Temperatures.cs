using System.Globalization;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>When the temperature is read, and the warming of a cold newborn.</summary>
internal static class Temperatures
{
    public static IEnumerable<CareTask> Tasks(NewbornView baby)
    {
        var warmth = baby.Warmth;
        if (warmth.Last is not { } last)
        {
            return [First(baby)];
        }
        CareTask[] planned = [.. Planned(baby), .. AfterHold(baby)];
        if (last.Again is not { } pause)
        {
            return planned;
        }
        var again = Again(baby, last, pause);
        if (Careful(baby))
        {
            return [again, .. Warming(baby)];
        }
        CareTask[] later = [.. planned.Where(task => task.Due > again.Due)];
        return [again with { LapsesAt = later.Select(task => (Instant?)task.Due).Min() ?? again.Due + Duration.FromHours(24) }, .. later];
    }

    /// <summary>It is cold, hot, or on the way there: nothing but a reading ends the asking.</summary>
    private static bool Careful(NewbornView baby) => baby.Warmth.HoldSince is not null || baby.Warmth.Last?.Level > Level.Fine;

    private static CareTask First(NewbornView baby) => Steps.FromBirth(
        baby, CareTaskName.Temperature, "first", baby.Table.Time(CareKeys.TemperatureAsked), baby.Table.Time(CareKeys.TemperatureLate), baby.Table.Time(CareKeys.TemperatureVet)) with
    {
        LapsesAt = baby.Born + NewbornPlan.FirstDays,
        Wording = "first",
    };

    /// <summary>The next reading of one that is to be watched.</summary>
    private static CareTask Again(NewbornView baby, WarmthReading last, Duration again)
    {
        var key = new TaskKey(CareTaskName.Temperature, baby.Animal.Id, $"again {last.At.ToUnixTimeSeconds()}");
        var careful = Careful(baby);
        var task = Steps.From(baby.Table, baby.Farm, key, baby.Pair, last.At + again,
            baby.Table.Time(careful ? CareKeys.WarmthReadLate : CareKeys.TemperatureAgainLate),
            careful ? baby.Table.Time(CareKeys.WarmthReadVet) : null, careful ? Level.Act : Level.Heed) with
        {
            Prompt = true,
            Wording = careful ? "again" : "",
        };
        if (last.Band == "warm" && NewbornTroubles.IsWeak(baby))
        {
            return task with { Steps = [Steps.VetStep(last.At, "dull") with { News = true }], Wording = "dull" };
        }
        return last is { Level: Level.Vet, Holds: false }
            ? task with { Steps = [new TaskStep(last.At, "hot", TaskState.Asked, Level.Vet) { News = true }], Wording = "hot" }
            : task;
    }

    private static IEnumerable<CareTask> Warming(NewbornView baby)
    {
        if (baby.Warmth is not { HoldSince: { } since, Last: { } last } warmth)
        {
            yield break;
        }
        var key = new TaskKey(CareTaskName.Warm, baby.Animal.Id, $"since {since.ToUnixTimeSeconds()}");
        var steps = new List<TaskStep>();
        foreach (var reading in warmth.Readings.Where(reading => reading.At >= since))
        {
            steps.Add(new TaskStep(reading.At, $"{reading.Band} {reading.At.ToUnixTimeSeconds()}", TaskState.Asked, reading.Level > Level.Act ? Level.Vet : Level.Act) { News = true });
        }
        if (warmth.Progress?.SlowAt is { } slowAt)
        {
            steps.Add(Steps.VetStep(Instant.Max(slowAt - baby.Farm.VetDrive, last.At), "slow"));
        }
        yield return new CareTask(key, baby.Pair, since, [.. steps])
        {
            Prompt = true,
            ClaimLasts = baby.Table.Time(CareKeys.PostingClaim),
            ClaimLastsAtVet = baby.Table.Time(CareKeys.PostingClaimVet),
            Wording = last.Band,
        };
    }

    /// <summary>Readings at fixed ages and each morning.</summary>
    private static IEnumerable<CareTask> Planned(NewbornView baby)
    {
        var watched = baby.Warmth.HoldEnded + baby.Table.Time(CareKeys.WarmthAfter4);
        var times = PlannedTimes(baby).Where(time => !(time.Asked <= watched)).ToList();
        var before = baby.Table.Time(CareKeys.TemperatureBefore);
        for (var n = 0; n < times.Count; n++)
        {
            var (which, asked) = times[n];
            var next = n + 1 < times.Count ? times[n + 1].Asked : asked + Duration.FromHours(24);
            yield return Steps.From(baby.Table, baby.Farm, new TaskKey(CareTaskName.Temperature, baby.Animal.Id, which), baby.Pair, asked,
                baby.Table.Time(CareKeys.TemperatureAgainLate), null, Level.Heed) with
            {
                DoneAt = ReadFrom(baby, asked - before),
                LapsesAt = next,
            };
        }
    }

    private static IEnumerable<(string Which, Instant Asked)> PlannedTimes(NewbornView baby)
    {
        var table = baby.Table;
        yield return ("second", baby.Born + table.Time(CareKeys.TemperatureSecond));
        yield return ("third", baby.Born + table.Time(CareKeys.TemperatureThird));
        var fourth = baby.Born + table.Time(CareKeys.TemperatureFourth);
        yield return ("fourth", fourth);
        var clock = baby.Farm.Clock;
        var born = clock.Day(baby.Born);
        var days = table.Count(baby.AtRisk ? CareKeys.TemperatureDaysAtRisk : CareKeys.TemperatureDays);
        for (var day = 1; day <= days; day++)
        {
            var morning = clock.At(born.PlusDays(day), baby.Farm.WakingHours.From);
            if (morning > fourth + Duration.FromHours(6))
            {
                yield return (string.Create(CultureInfo.InvariantCulture, $"day {day}"), morning);
            }
        }
    }

    private static IEnumerable<CareTask> AfterHold(NewbornView baby)
    {
        if (baby.Warmth.HoldEnded is not { } ended)
        {
            yield break;
        }
        CareKey[] keys = [CareKeys.WarmthAfter1, CareKeys.WarmthAfter2, CareKeys.WarmthAfter3, CareKeys.WarmthAfter4];
        for (var n = 0; n < keys.Length; n++)
        {
            var asked = ended + baby.Table.Time(keys[n]);
            yield return Steps.From(baby.Table, baby.Farm, new TaskKey(CareTaskName.Temperature, baby.Animal.Id, $"after {ended.ToUnixTimeSeconds()} {n + 1}"), baby.Pair,
                asked, baby.Table.Time(CareKeys.TemperatureAgainLate), null, Level.Heed) with
            {
                DoneAt = ReadFrom(baby, asked - baby.Table.Time(CareKeys.WarmthReadLate)),
                LapsesAt = ended + (n + 1 < keys.Length ? baby.Table.Time(keys[n + 1]) : baby.Table.Time(keys[n]) * 2),
                Prompt = true,
                Wording = "after",
            };
        }
    }

    private static Instant? ReadFrom(NewbornView baby, Instant from) =>
        baby.Warmth.Readings.Where(reading => reading.At >= from).Select(reading => (Instant?)reading.At).FirstOrDefault();
}

using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>The cord: dips in waking hours until it is dry, and a watch where it bleeds.</summary>
internal static class Cord
{
    public static IEnumerable<CareTask> Tasks(NewbornView baby) => [Dip(baby), .. Watch(baby)];

    private static CareTask Dip(NewbornView baby)
    {
        var table = baby.Table;
        var dips = baby.Certain(FactKind.CordDip).Select(record => record.At).ToList();
        var key = new TaskKey(CareTaskName.CordDip, baby.Animal.Id, $"{dips.Count + 1}");
        var task = dips.Count == 0
            ? Steps.FromBirth(baby, CareTaskName.CordDip, key.Which, Duration.Zero, table.Time(CareKeys.CordDipLate), null, Level.Heed)
            : Steps.From(table, baby.Farm, key, baby.Pair, NextDip(baby, dips), table.Time(CareKeys.CordDipAgainLate), null, Level.Heed);
        return task with
        {
            LapsesAt = NewbornPlan.Earliest(baby.First(FactKind.CordDry, baby.Born), baby.Born + table.Time(CareKeys.CordDipUntil)),
            Wording = dips.Count == 0 ? "first" : "",
        };
    }

    private static Instant NextDip(NewbornView baby, List<Instant> dips)
    {
        var clock = baby.Farm.Clock;
        var next = dips[^1] + baby.Table.Time(CareKeys.CordDipAgain);
        var today = clock.Day(next);
        if (dips.Count(at => clock.Day(at) == today) >= baby.Table.Count(CareKeys.CordDipADay))
        {
            next = clock.At(today.PlusDays(1), LocalTime.Midnight);
        }
        return baby.Farm.WakingHours.Holds(clock.Local(next).TimeOfDay) ? next : clock.Next(next, baby.Farm.WakingHours.From);
    }

    /// <summary>Bleeding that is only feared counts; only a plain word ends it. A stream calls the vet at once.</summary>
    private static IEnumerable<CareTask> Watch(NewbornView baby)
    {
        var bled = baby.Told.Feared(FactKind.CordBleeding).ToList();
        if (bled.Count == 0)
        {
            return [];
        }
        var since = bled.First(record => !(Stopped(baby, record.At) < bled[^1].At));
        var stopped = Stopped(baby, since.At);
        var stream = bled.Find(record => record.At >= since.At && record.Fact.Says(NoteTopics.Stream));
        var table = baby.Table;
        var task = Steps.From(table, baby.Farm, new TaskKey(CareTaskName.CordWatch, baby.Animal.Id, $"bleeds {since.Id.Number}"), baby.Pair, since.SaidAt,
            table.Time(CareKeys.CordWatchLate), table.Time(CareKeys.CordWatchVet), whenAsked: Level.Act);
        task = Steps.Urgent(table, task) with { Due = since.At, DoneAt = stopped };
        task = stream is null ? task : task with { Steps = [.. task.Steps.Where(step => step.At < stream.SaidAt), Steps.VetStep(stream.SaidAt, "stream") with { News = true }] };
        return stopped is { } over ? [task, .. Looks(baby, over)] : [task];
    }

    private static Instant? Stopped(NewbornView baby, Instant since) => NewbornPlan.Earliest(
        baby.Told.Denied(FactKind.CordBleeding).Where(record => record.At >= since).Select(record => (Instant?)record.At).FirstOrDefault(),
        baby.DoneFrom(CareTaskName.CordWatch, since));

    private static IEnumerable<CareTask> Looks(NewbornView baby, Instant stopped)
    {
        var table = baby.Table;
        var first = new[] { CareKeys.CordWatchLook1, CareKeys.CordWatchLook2, CareKeys.CordWatchLook3, CareKeys.CordWatchLook4 }.Select(key => table.Time(key));
        var every = table.Time(CareKeys.CordWatchDayLook);
        var looks = first.Concat(Enumerable.Range(1, (int)(table.Time(CareKeys.CordWatchDay) / every)).Select(n => every * n)).ToList();
        for (var n = 0; n < looks.Count; n++)
        {
            var asked = stopped + looks[n];
            var from = asked - Duration.FromMinutes(5);
            yield return Steps.From(table, baby.Farm, new TaskKey(CareTaskName.CordWatch, baby.Animal.Id, $"look {stopped.ToUnixTimeSeconds()} {n + 1}"),
                baby.Pair, asked, table.Time(CareKeys.CordWatchLookLate), null, Level.Heed) with
            {
                DoneAt = NewbornPlan.Earliest(Stopped(baby, from), baby.First(FactKind.CordDry, from)),
                LapsesAt = n + 1 < looks.Count ? stopped + looks[n + 1] : asked + every,
                Wording = "look",
                Prompt = n < 4,
            };
        }
    }
}

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

    private static IEnumerable<CareTask> Watch(NewbornView baby)
    {
        var table = baby.Table;
        var told = baby.All(FactKind.CordBleeding).Where(record => record.At <= baby.Now && (record.Fact.Neg || !record.Fact.Unsure)).ToList();
        var bled = told.Find(record => !record.Fact.Neg);
        if (bled is null)
        {
            yield break;
        }
        var newest = told[^1];
        var since = newest.Fact.Neg ? told.FindLast(record => !record.Fact.Neg)! : told.Skip(told.FindLastIndex(record => record.Fact.Neg) + 1).First();
        var vetAtOnce = since.Fact.Field == NoteTopics.Stream;
        var key = new TaskKey(CareTaskName.CordWatch, baby.Animal.Id, $"bleeds {since.Id.Number}");
        yield return Steps.Urgent(table, new CareTask(key, baby.Pair, since.At,
            vetAtOnce
                ? [Steps.VetStep(since.SaidAt, "vet")]
                :
                [
                    new TaskStep(since.SaidAt, "asked", TaskState.Asked, Level.Act),
                    new TaskStep(since.SaidAt + table.Time(CareKeys.CordWatchLate), "late", TaskState.Late, Level.Act),
                    Steps.VetStep(since.SaidAt + table.Time(CareKeys.CordWatchVet), "vet"),
                ])
            with
        { DoneAt = Stopped(baby, since.At) });
        if (newest.Fact.Neg)
        {
            foreach (var look in Looks(baby, newest.At))
            {
                yield return look;
            }
        }
    }

    private static Instant? Stopped(NewbornView baby, Instant since) => NewbornPlan.Earliest(
        baby.All(FactKind.CordBleeding).Where(record => record.Fact.Neg && record.At >= since).Select(record => (Instant?)record.At).FirstOrDefault(),
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
            yield return Steps.From(table, baby.Farm, new TaskKey(CareTaskName.CordWatch, baby.Animal.Id, $"look {stopped.ToUnixTimeSeconds()} {n + 1}"),
                baby.Pair, asked, table.Time(CareKeys.CordWatchLookLate), null, Level.Heed) with
            {
                DoneAt = Stopped(baby, asked - Duration.FromMinutes(5)),
                LapsesAt = n + 1 < looks.Count ? stopped + looks[n + 1] : asked + every,
                Wording = "look",
                Prompt = n < 4,
            };
        }
    }
}

using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>The test for antibodies on the second day.</summary>
internal static class Antibodies
{
    /// <summary>The newest result in mg/dL; null where none has a figure.</summary>
    public static decimal? Lowest(NewbornView baby) =>
        baby.Certain(FactKind.Igg).LastOrDefault(record => record.Fact.Value is not null)?.Fact.Value;

    public static IEnumerable<CareTask> Tasks(NewbornView baby)
    {
        if (baby.Certain(FactKind.Igg).LastOrDefault(record => record.Fact.Value is not null) is { } tested && tested.Fact.Value < baby.Table.Number(CareKeys.IggLow))
        {
            yield return Low(baby, tested.At, tested.SaidAt, $"low {tested.Id.Number}");
        }
        if (!baby.Farm.IggTest)
        {
            yield break;
        }
        var task = Steps.FromBirth(baby, CareTaskName.Igg, "", baby.Table.Time(CareKeys.IggAsked), baby.Table.Time(CareKeys.IggLate), null, baby.AtRisk ? Level.Act : Level.Heed);
        var lapses = baby.Born + baby.Table.Time(CareKeys.IggLapses);
        yield return task with
        {
            Steps = [.. task.Steps, new TaskStep(lapses, "untested", TaskState.Late, Level.Act)],
            DoneAt = NewbornPlan.Earliest(baby.First(FactKind.Igg, baby.Born), baby.DoneFrom(CareTaskName.Igg, baby.Born), baby.Told.Said(baby.Born, NoteTopics.NotTesting)),
            LapsesAt = lapses + Duration.FromMinutes(5),
        };
    }

    private static CareTask Low(NewbornView baby, Instant at, Instant saidAt, string which)
    {
        var key = new TaskKey(CareTaskName.Igg, baby.Animal.Id, which);
        return Steps.Claimable(baby.Table, new CareTask(key, baby.Pair, at, [Steps.VetStep(saidAt, "low") with { News = true }])
        {
            DoneAt = NewbornPlan.Earliest(baby.Told.DoneFrom(key, at), baby.Told.CalledFrom(at)),
            LapsesAt = at + NewbornPlan.FirstDays,
            Prompt = true,
            Wording = "low",
        });
    }
}

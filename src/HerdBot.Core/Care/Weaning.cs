using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Dates that are the vet's to give: asked for once, never invented. And weaning, when its time has come.</summary>
internal static class Weaning
{
    /// <summary>Which task asks for a date.</summary>
    public const string AskedOnce = "once";

    private static readonly Duration AskedFor = Duration.FromDays(1);

    /// <summary>When it was weaned; null where it was not.</summary>
    public static Instant? WeanedAt(NewbornView baby) => NewbornPlan.Earliest(baby.Told.Said(baby.Born, NoteTopics.Weaned), baby.DoneFrom(CareTaskName.Weaning, baby.Born));

    public static IEnumerable<CareTask> Tasks(NewbornView baby)
    {
        yield return Once(baby, CareTaskName.Vaccination, CareKeys.VaccinationAsked) with
        {
            DoneAt = NewbornPlan.Earliest(baby.First(FactKind.Vaccination, baby.Born), baby.DoneFrom(CareTaskName.Vaccination, baby.Born), VetOrders.FirstOf(baby, CareTaskName.Vaccination)),
        };
        yield return Once(baby, CareTaskName.Weaning, CareKeys.WeaningAsked) with { DoneAt = WeanedAt(baby) };
    }

    private static CareTask Once(NewbornView baby, CareTaskName name, CareKey asked)
    {
        var day = baby.Farm.Clock.Day(baby.Born).PlusDays(baby.Table.Count(asked));
        var at = baby.Farm.Clock.At(day, DayLooks.Hour(baby.Farm));
        return Steps.From(baby.Table, baby.Farm, new TaskKey(name, baby.Animal.Id, AskedOnce), baby.Pair, at, null, null) with { LapsesAt = at + AskedFor };
    }
}

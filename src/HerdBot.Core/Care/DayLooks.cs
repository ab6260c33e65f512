using System.Globalization;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>The morning's look, in the round-up; and what is wrong, whenever it is seen.</summary>
internal static class DayLooks
{
    /// <summary>The hour of the morning's round-up.</summary>
    public static LocalTime Hour(Farm farm) => farm.RoundUps.Length > 0 ? farm.RoundUps.Min() : new LocalTime(7, 0);

    public static IEnumerable<CareTask> Tasks(NewbornView baby)
    {
        var clock = baby.Farm.Clock;
        var time = Hour(baby.Farm);
        var today = clock.Day(baby.Now);
        var born = clock.Day(baby.Born);
        for (var day = today; day <= today.PlusDays(1); day = day.PlusDays(1))
        {
            var number = Period.DaysBetween(born, day);
            if (number >= 1 && number <= baby.Table.Count(CareKeys.DayLookDays))
            {
                var asked = clock.At(day, time);
                var key = new TaskKey(CareTaskName.DayLook, baby.Animal.Id, string.Create(CultureInfo.InvariantCulture, $"day {number}"));
                yield return new CareTask(key, baby.Pair, asked, [new TaskStep(asked, "asked", TaskState.Asked, Level.Fine)])
                {
                    DoneAt = NewbornPlan.Earliest(baby.DoneFrom(CareTaskName.DayLook, clock.At(day, LocalTime.Midnight)), baby.Told.Said(clock.At(day, LocalTime.Midnight), NoteTopics.Well)),
                    LapsesAt = clock.At(day.PlusDays(1), time),
                    RoundUpOnly = true,
                };
            }
        }
    }
}

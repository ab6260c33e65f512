using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>A coat that is on is looked at each morning: straps, wet, and off where it is warm.</summary>
internal static class Coats
{
    public static IEnumerable<CareTask> Tasks(NewbornView baby)
    {
        if (baby.Told.Said(baby.Born, NoteTopics.CoatOn) is null || !baby.About(NoteTopics.CoatOn, NoteTopics.CoatOff).Last().Fact.Says(NoteTopics.CoatOn))
        {
            yield break;
        }
        var clock = baby.Farm.Clock;
        var on = baby.About(NoteTopics.CoatOn).Last().At;
        var today = clock.Day(baby.Now);
        for (var day = today; day <= today.PlusDays(1); day = day.PlusDays(1))
        {
            var asked = clock.At(day, DayLooks.Hour(baby.Farm));
            if (asked > on)
            {
                yield return new CareTask(new TaskKey(CareTaskName.Coat, baby.Animal.Id, $"{day:uuuu-MM-dd}"), baby.Pair, asked, [new TaskStep(asked, "asked", TaskState.Asked, Level.Fine)])
                {
                    DoneAt = baby.DoneFrom(CareTaskName.Coat, clock.At(day, LocalTime.Midnight)),
                    LapsesAt = asked + Duration.FromHours(24),
                    RoundUpOnly = true,
                };
            }
        }
    }
}

using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>The vet has it, here or at the clinic: its plan rests until it is back, for so long at most, and then the bot asks.</summary>
public static class Absence
{
    /// <summary>Since when and until when it rests; null where it does not.</summary>
    /// <param name="told">What is on record of the animal.</param>
    /// <param name="table">The species' numbers.</param>
    public static (HerdRecord Since, Instant Until)? Of(ToldRecords told, CareTable table)
    {
        ArgumentNullException.ThrowIfNull(told);
        ArgumentNullException.ThrowIfNull(table);
        return told.About(NoteTopics.Away, NoteTopics.Back).LastOrDefault(record => !record.Fact.Unsure) is { } last && !last.Fact.Says(NoteTopics.Back)
            ? (last, last.SaidAt + table.Time(CareKeys.AwayMost)) : null;
    }

    /// <summary>An animal's tasks: at rest while the vet has it, and the question whether it is back.</summary>
    internal static IEnumerable<CareTask> Rest(IEnumerable<CareTask> tasks, ToldRecords told, CareTable table, AnimalId animal, AnimalId pair, Instant now)
    {
        if (Of(told, table) is not { } away)
        {
            return tasks;
        }
        var key = new TaskKey(CareTaskName.VetToday, animal, $"away {away.Since.Id.Number}");
        var back = Steps.Claimable(table, new CareTask(key, pair, away.Until, [new TaskStep(away.Until, "away", TaskState.Asked, Level.Heed)])
        {
            DoneAt = told.DoneFrom(key, away.Since.At),
            LapsesAt = away.Until + Duration.FromDays(1),
            Wording = "away",
            Prompt = true,
        });
        var resting = now < away.Until && !(back.DoneAt <= now);
        return tasks.Select(task => resting ? task with { RestsUntil = away.Until } : task).Append(back);
    }
}

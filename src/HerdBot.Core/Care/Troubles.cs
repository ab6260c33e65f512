using System.Collections.Immutable;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Whose trouble it is.</summary>
/// <param name="Table">The species' numbers.</param>
/// <param name="Told">What is on record of the animal.</param>
/// <param name="Animal">The animal.</param>
/// <param name="Pair">The dam that it is posted with.</param>
internal sealed record Subject(CareTable Table, ToldRecords Told, AnimalId Animal, AnimalId Pair);

/// <summary>Something wrong that somebody saw: a task at once, open until it is seen to.</summary>
internal static class Troubles
{
    /// <summary>The task of what was seen; null where nothing was.</summary>
    /// <param name="subject">Whose it is.</param>
    /// <param name="name">The task.</param>
    /// <param name="wording">Which trouble, for the wording and the key.</param>
    /// <param name="level">Act, or vet at once.</param>
    /// <param name="seen">The records that tell of it, oldest first, hedged or not.</param>
    /// <param name="over">When it was over, from an instant on, besides the task's own button; null where nothing else ends it.</param>
    public static CareTask? Of(Subject subject, CareTaskName name, string wording, Level level, IEnumerable<HerdRecord> seen, Func<Instant, Instant?>? over = null)
    {
        HerdRecord? first = null;
        HerdRecord? newest = null;
        TaskKey? key = null;
        Instant? done = null;
        foreach (var record in seen)
        {
            if (first is null || done <= record.At)
            {
                first = record;
                key = new TaskKey(name, subject.Animal, $"{wording} {record.Id.Number}");
                done = NewbornPlan.Earliest(subject.Told.DoneFrom(key, record.At), over?.Invoke(record.At));
            }
            newest = record;
        }
        if (first is null)
        {
            return null;
        }
        var step = level == Level.Vet ? Steps.VetStep(first.SaidAt, wording) : new TaskStep(first.SaidAt, wording, TaskState.Asked, level);
        return Steps.Claimable(subject.Table, new CareTask(key!, subject.Pair, first.At, [step with { News = true }])
        {
            DoneAt = done,
            LapsesAt = newest!.At + NewbornPlan.FirstDays,
            Prompt = true,
            Wording = wording,
            Figures = newest.Fact.Text is { } text ? ImmutableDictionary<string, string>.Empty.Add("seen", text) : ImmutableDictionary<string, string>.Empty,
        });
    }

    /// <summary>The task with the vet after a while, if nothing else ends it before.</summary>
    public static CareTask ThenVet(CareTask task, Instant vet) => task with { Steps = [.. task.Steps, Steps.VetStep(Instant.Max(vet, task.Steps[^1].At), "vet")] };
}

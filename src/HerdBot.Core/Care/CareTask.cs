using System.Collections.Immutable;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>How grave it is. Words, never colours.</summary>
public enum Level
{
    /// <summary>All in order.</summary>
    Fine,
    /// <summary>Worth an eye.</summary>
    Heed,
    /// <summary>Do something.</summary>
    Act,
    /// <summary>Phone the vet now.</summary>
    Vet,
}

/// <summary>Where a task stands.</summary>
public enum TaskState
{
    /// <summary>Not asked yet.</summary>
    Ahead,
    /// <summary>Asked.</summary>
    Asked,
    /// <summary>Late.</summary>
    Late,
    /// <summary>Held back, because doing it now would harm.</summary>
    Held,
    /// <summary>Done.</summary>
    Done,
    /// <summary>No longer needed.</summary>
    Lapsed,
}

/// <summary>Names one task for good: what, on whom, and which of its kind.</summary>
/// <param name="Name">What.</param>
/// <param name="Animal">On whom.</param>
/// <param name="Which">Tells the tasks of one kind on one animal apart ("first", "4h", a day).</param>
public sealed record TaskKey(CareTaskName Name, AnimalId Animal, string Which);

/// <summary>From this instant on the task stands so, until the next step.</summary>
/// <param name="At">When.</param>
/// <param name="Label">Names the step within its task, so that it is posted once: "asked", "late", "vet", "half".</param>
/// <param name="State">Where the task stands.</param>
/// <param name="Level">How grave it is.</param>
public sealed record TaskStep(Instant At, string Label, TaskState State, Level Level)
{
    /// <summary>What somebody saw brought it, not the clock: no "on it" or "called" from before keeps it back.</summary>
    public bool News { get; init; }
}

/// <summary>One task of the plan.</summary>
/// <param name="Key">Its name for good.</param>
/// <param name="Pair">The dam whose birth it belongs to: a dam and her newborns are one pair.</param>
/// <param name="Due">The time at which it is asked for.</param>
/// <param name="Steps">What becomes of it if nobody does it, in the order of time; not empty.</param>
public sealed record CareTask(TaskKey Key, AnimalId Pair, Instant Due, ImmutableArray<TaskStep> Steps)
{
    /// <summary>When it was done; null while it is open.</summary>
    public Instant? DoneAt { get; init; }
    /// <summary>When it is no longer needed; null where it never lapses.</summary>
    public Instant? LapsesAt { get; init; }
    /// <summary>Feeding is held: asked and late are not posted.</summary>
    public bool Held { get; init; }
    /// <summary>The vet has the animal: nothing is posted before; null where the plan does not rest.</summary>
    public Instant? RestsUntil { get; init; }
    /// <summary>Goes out at its minute whatever its level: a reading under Warmth, breathing, blood.</summary>
    public bool Prompt { get; init; }
    /// <summary>Asked for in round-ups alone.</summary>
    public bool RoundUpOnly { get; init; }
    /// <summary>How long "on it" silences it below level vet.</summary>
    public Duration ClaimLasts { get; init; }
    /// <summary>How long "on it" silences it at level vet.</summary>
    public Duration ClaimLastsAtVet { get; init; }
    /// <summary>Since when the thing itself goes on, where that is not when the task is asked for.</summary>
    public Instant? Since { get; init; }
    /// <summary>Which of several wordings the post takes; "" for the plain one.</summary>
    public string Wording { get; init; } = "";
    /// <summary>Figures for the wording, by the names it uses.</summary>
    public ImmutableDictionary<string, string> Figures { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>The step it stands at; null while it is ahead.</summary>
    public TaskStep? StepAt(Instant now) => Steps.LastOrDefault(step => step.At <= now);

    /// <summary>Whether it waits to be done.</summary>
    public bool OpenAt(Instant now) => !(DoneAt <= now) && !(LapsesAt <= now) && StepAt(now) is not null;

    /// <summary>Where it stands.</summary>
    public TaskState StateAt(Instant now) =>
        DoneAt <= now ? TaskState.Done
        : LapsesAt <= now ? TaskState.Lapsed
        : StepAt(now) is not { } step ? TaskState.Ahead
        : Held ? TaskState.Held
        : step.State;

    /// <summary>How grave it is.</summary>
    public Level LevelAt(Instant now) => OpenAt(now) ? StepAt(now)!.Level : Level.Fine;
}

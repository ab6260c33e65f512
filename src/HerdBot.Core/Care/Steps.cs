using System.Collections.Immutable;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Builds the steps of a task: asked, late, vet.</summary>
internal static class Steps
{
    /// <summary>A task whose times run from the birth.</summary>
    public static CareTask FromBirth(
        NewbornView baby, CareTaskName name, string which, Duration asked, Duration? late, Duration? vet, Level whenLate = Level.Act) =>
        FromBirth(baby.Table, baby.Farm, new TaskKey(name, baby.Animal.Id, which), baby.Pair, baby.Born, baby.ReportedAt, asked, late, vet, whenLate);

    /// <summary>A task whose times run from a birth, of the newborn or of its dam.</summary>
    public static CareTask FromBirth(
        CareTable table, Farm farm, TaskKey key, AnimalId pair, Instant born, Instant reported, Duration asked, Duration? late, Duration? vet, Level whenLate = Level.Act)
    {
        var soon = reported + table.Time(CareKeys.PostingReportedLate);
        Instant Shifted(Duration after) => born + after is var at && at <= reported ? soon : at;
        var steps = ImmutableArray.CreateBuilder<TaskStep>();
        steps.Add(new TaskStep(Instant.Max(born + asked, reported), "asked", TaskState.Asked, Level.Fine));
        if (late is { } lateAfter)
        {
            steps.Add(new TaskStep(Shifted(lateAfter), "late", TaskState.Late, whenLate));
        }
        if (vet is { } vetAfter)
        {
            steps.Add(VetStep(Instant.Max(Shifted(vetAfter - farm.VetDrive), steps[^1].At), "vet"));
        }
        return Claimable(table, new CareTask(key, pair, born + asked, steps.ToImmutable()));
    }

    /// <summary>A task that runs from an instant of its own.</summary>
    public static CareTask From(
        CareTable table, Farm farm, TaskKey key, AnimalId pair, Instant asked, Duration? late, Duration? vet, Level whenLate = Level.Act)
    {
        var steps = ImmutableArray.Create(new TaskStep(asked, "asked", TaskState.Asked, Level.Fine));
        steps = late is { } lateAfter ? steps.Add(new TaskStep(asked + lateAfter, "late", TaskState.Late, whenLate)) : steps;
        steps = vet is { } vetAfter ? steps.Add(VetStep(Instant.Max(asked + vetAfter - farm.VetDrive, steps[^1].At), "vet")) : steps;
        return Claimable(table, new CareTask(key, pair, asked, steps));
    }

    public static TaskStep VetStep(Instant at, string label) => new(at, label, TaskState.Late, Level.Vet);

    private static CareTask Claimable(CareTable table, CareTask task) => task with
    {
        ClaimLasts = table.Time(CareKeys.PostingClaim),
        ClaimLastsAtVet = table.Time(CareKeys.PostingClaimVet),
    };

    /// <summary>Breathing, blood and birth: a claim is trusted for less long.</summary>
    public static CareTask Urgent(CareTable table, CareTask task) => task with
    {
        Prompt = true,
        ClaimLasts = table.Time(CareKeys.PostingClaimUrgent),
        ClaimLastsAtVet = table.Time(CareKeys.PostingClaimUrgent),
    };
}

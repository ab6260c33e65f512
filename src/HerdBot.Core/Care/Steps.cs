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
        Instant? Shifted(Instant? at) => at <= reported ? reported + table.Time(CareKeys.PostingReportedLate) : at;
        var steps = Of(Instant.Max(born + asked, reported), Shifted(born + late), Shifted(born + vet - farm.VetDrive), Level.Fine, whenLate);
        return Claimable(table, new CareTask(key, pair, born + asked, steps));
    }

    /// <summary>A task that runs from an instant of its own.</summary>
    public static CareTask From(
        CareTable table, Farm farm, TaskKey key, AnimalId pair, Instant asked, Duration? late, Duration? vet, Level whenLate = Level.Act, Level whenAsked = Level.Fine) =>
        Claimable(table, new CareTask(key, pair, asked, Of(asked, asked + late, asked + vet - farm.VetDrive, whenAsked, whenLate)));

    /// <summary>Nothing lengthens the time to the vet: a late time that would come after it is left out.</summary>
    private static ImmutableArray<TaskStep> Of(Instant asked, Instant? late, Instant? vet, Level whenAsked, Level whenLate)
    {
        var steps = ImmutableArray.CreateBuilder<TaskStep>();
        steps.Add(new TaskStep(asked, "asked", TaskState.Asked, whenAsked));
        if (late is { } lateAt && !(vet <= lateAt))
        {
            steps.Add(new TaskStep(lateAt, "late", TaskState.Late, whenLate));
        }
        if (vet is { } vetAt)
        {
            steps.Add(VetStep(Instant.Max(vetAt, asked), "vet"));
        }
        return steps.ToImmutable();
    }

    public static TaskStep VetStep(Instant at, string label) => new(at, label, TaskState.Late, Level.Vet);

    /// <summary>"On it" keeps it quiet for the usual times.</summary>
    public static CareTask Claimable(CareTable table, CareTask task) => task with
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

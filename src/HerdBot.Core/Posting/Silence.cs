using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Posting;

/// <summary>How long people's words keep a task quiet: "on it", "not yet", "called".</summary>
public static class Silence
{
    private static readonly Duration Reach = Duration.FromHours(12);

    /// <summary>Until when the task is kept quiet; the start of time where nothing keeps it.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="task">A task of the plan.</param>
    /// <param name="table">Its species' numbers.</param>
    /// <param name="now">Nothing after this counts.</param>
    public static Instant Until(HerdState state, CareTask task, CareTable table, Instant now)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(task);
        var until = Instant.MinValue;
        for (var n = state.Records.Count - 1; n >= 0 && state.Records[n].SaidAt > now - Reach; n--)
        {
            if (state.Records[n] is { Withdrawn: false } record && record.SaidAt <= now && Quiets(task, record, table, now) is { } quiet)
            {
                until = Instant.Max(until, quiet);
            }
        }
        return until;
    }

    private static Instant? Quiets(CareTask task, HerdRecord record, CareTable table, Instant now) => record.Fact.Kind switch
    {
        FactKind.Claim or FactKind.Done when record.Fact.Neg || record.Fact.Unsure => null,
        FactKind.Claim when record.Fact.Task == CareTaskWords.CallVet =>
            task.LevelAt(now) == Level.Vet && OfAnimal(task, record) ? record.SaidAt + table.Time(CareKeys.PostingCalled) : null,
        FactKind.Claim or FactKind.Done when Means(task, record) => record.SaidAt + Lasts(task, record),
        FactKind.NotDone when Means(task, record) => record.SaidAt + table.Time(CareKeys.PostingNotYet),
        _ when record.Fact.Neg && record.Animal == task.Key.Animal && FactWords.Word(record.Fact.Kind) == CareTaskWords.Word(task.Key.Name)
            && task.Key.Name != CareTaskName.CordWatch => record.SaidAt + table.Time(CareKeys.PostingNotYet),
        _ => null,
    };

    private static Duration Lasts(CareTask task, HerdRecord claim) =>
        task.LevelAt(claim.SaidAt) == Level.Vet ? task.ClaimLastsAtVet : task.ClaimLasts;

    private static bool Means(CareTask task, HerdRecord record) =>
        record.Task is { } key ? Same(key, task.Key)
        : record.Fact.Task == CareTaskWords.Word(task.Key.Name) && (record.Animal is null || record.Animal == task.Key.Animal);

    /// <summary>Warming and its readings are one job.</summary>
    private static bool Same(TaskKey one, TaskKey other) => one == other
        || (one.Animal == other.Animal && one.Name == CareTaskName.Warm && other.Name == CareTaskName.Temperature)
        || (one.Animal == other.Animal && one.Name == CareTaskName.Temperature && other.Name == CareTaskName.Warm);

    private static bool OfAnimal(CareTask task, HerdRecord record) => record.Animal is null || record.Animal == task.Key.Animal;
}

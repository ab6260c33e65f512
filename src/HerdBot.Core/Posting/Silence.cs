using System.Collections.Immutable;
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
        return Until(Words(state, now), task, table, now);
    }

    /// <summary>As above, for several tasks at one instant.</summary>
    internal static Instant Until(IEnumerable<HerdRecord> words, CareTask task, CareTable table, Instant now) =>
        words.Select(record => Quiets(task, record, table, now)).Max() ?? Instant.MinValue;

    /// <summary>All that was said of late and may keep any task quiet.</summary>
    internal static ImmutableArray<HerdRecord> Words(HerdState state, Instant now) => [.. state.NewestFirst().TakeWhile(record => record.SaidAt > now - Reach)
        .Where(record => !record.Withdrawn && record.SaidAt <= now && (record.Fact.Neg || record.Fact.Kind is FactKind.Claim or FactKind.Done or FactKind.NotDone))];

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

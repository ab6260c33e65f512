using HerdBot.Core.Due;
using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>How early a newborn came, by its days and by its signs.</summary>
/// <param name="IsEarly">Born before its time, or with enough of its signs: somebody phones the vet within the hour.</param>
/// <param name="Watch">Born on the line: look for the signs.</param>
/// <param name="Since">When that was known; null where it is not early.</param>
public sealed record Prematurity(bool IsEarly, bool Watch, Instant? Since)
{
    private static readonly string[] Signs =
        [NoteTopics.EarlyEars, NoteTopics.EarlyTeeth, NoteTopics.EarlyPasterns, NoteTopics.EarlySuck, NoteTopics.EarlyCaps];

    /// <summary>Judges a newborn.</summary>
    /// <param name="newborn">What is on record of it.</param>
    public static Prematurity Of(NewbornView newborn)
    {
        ArgumentNullException.ThrowIfNull(newborn);
        var table = newborn.Table;
        var byDays = newborn.GestationDays < table.Count(DueKeys.Early) ? newborn.ReportedAt : (Instant?)null;
        var since = NewbornPlan.Earliest(byDays, newborn.About(NoteTopics.Early).Select(record => (Instant?)record.SaidAt).FirstOrDefault(), BySigns(newborn));
        return new Prematurity(since is not null, since is null && newborn.GestationDays < table.Count(DueKeys.EarlyWatch), since);
    }

    /// <summary>When enough different signs had been told.</summary>
    private static Instant? BySigns(NewbornView newborn)
    {
        var seen = new HashSet<string>();
        foreach (var record in newborn.About(Signs))
        {
            seen.UnionWith(Signs.Where(sign => record.Fact.Says(sign)));
            if (seen.Count >= newborn.Table.Count(CareKeys.EarlySigns))
            {
                return record.SaidAt;
            }
        }
        return null;
    }

    /// <summary>The task: the vet is phoned within the hour; at once where it breathes hard, has no suck or is not up in time.</summary>
    internal static IEnumerable<CareTask> Tasks(NewbornView newborn)
    {
        if (Of(newborn) is not { Since: { } since })
        {
            yield break;
        }
        var table = newborn.Table;
        var key = new TaskKey(CareTaskName.VetToday, newborn.Animal.Id, "early");
        var grave = NewbornPlan.Earliest(Feeble(newborn), NotUp(newborn, since));
        TaskStep[] steps =
        [
            new(since, "asked", TaskState.Asked, Level.Act),
            .. grave is { } at ? [Steps.VetStep(Instant.Max(at, since), "vet") with { News = true }] : Array.Empty<TaskStep>(),
        ];
        if (!(grave <= since + table.Time(CareKeys.EarlyLate)))
        {
            steps = [steps[0], new TaskStep(since + table.Time(CareKeys.EarlyLate), "late", TaskState.Late, Level.Act), .. steps[1..]];
        }
        yield return Steps.Claimable(table, new CareTask(key, newborn.Pair, since, [.. grave <= since ? steps[1..] : steps])
        {
            DoneAt = NewbornPlan.Earliest(newborn.Told.DoneFrom(key, since), newborn.Told.CalledFrom(since)),
            LapsesAt = newborn.Born + NewbornPlan.FirstDays,
            Prompt = true,
            Wording = "early",
        });
    }

    /// <summary>Hard breathing or no suck: danger at any hour.</summary>
    private static Instant? Feeble(NewbornView newborn) =>
        newborn.About(NoteTopics.Breathing, NoteTopics.Weak).Select(record => (Instant?)record.SaidAt).FirstOrDefault();

    private static Instant? NotUp(NewbornView newborn, Instant since)
    {
        var by = newborn.Born + newborn.Table.Time(CareKeys.EarlyUpBy);
        var up = NewbornPlan.Earliest(newborn.First(FactKind.Standing, newborn.Born), newborn.Nursed.Cast<Instant?>().FirstOrDefault());
        return up <= by || up <= since ? null : Instant.Max(by - newborn.Farm.VetDrive, newborn.ReportedAt);
    }
}

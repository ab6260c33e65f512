using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Posting;

/// <summary>When a task is posted, and when again: the posting manners of the care table.</summary>
internal sealed class Manners(HerdState state, Farm farm, Instant now, bool awake = false)
{
    private readonly ImmutableArray<HerdRecord> words = Silence.Words(state, now);

    /// <summary>When the task is posted next, if nothing happens; null where it never is. May lie in the past: then it is due.</summary>
    public Instant? Next(CareTask task, IReadOnlyList<CareTask> pair)
    {
        if (task.RoundUpOnly || !task.OpenAt(now) || task.StepAt(now) is not { } step || TableOf(task) is not { } table)
        {
            return null;
        }
        if (task.RestsUntil > now || (task.Held && step.Level < Level.Vet))
        {
            return null;
        }
        var posted = state.Posted.GetValueOrDefault(task.Key);
        var first = posted?.Step != step.Label;
        var at = first ? FirstPost(task, step)
            : step.Level switch
            {
                Level.Act => step.State == TaskState.Late || step.Level == Level.Act && task.Prompt && task.Key.Name != CareTaskName.Warm ? NextAct(step, posted!, table) : null,
                Level.Vet => NextVet(pair, table),
                _ => null,
            };
        return at is not { } next ? null : first && step.News ? next : Instant.Max(next, Silence.Until(words, task, table, now));
    }

    /// <summary>Fine and heed wait for company, and for the morning; everything else goes out at its minute.</summary>
    public static bool Waits(CareTask task, Instant now) => !task.Prompt && task.StepAt(now)!.Level <= Level.Heed;

    /// <summary>The numbers of the task's species; null where no care is planned.</summary>
    public CareTable? TableOf(CareTask task) => farm.TableOf(state.Find(task.Key.Animal)?.Species ?? farm.Species);

    private Instant FirstPost(CareTask task, TaskStep step)
    {
        var quiet = !awake && step.Level <= Level.Heed && !task.Prompt && farm.QuietHours.Holds(farm.Clock.Local(Instant.Max(step.At, now)).TimeOfDay);
        return quiet ? farm.Clock.Next(Instant.Max(step.At, now), farm.QuietHours.To) : step.At;
    }

    /// <summary>Again 15, 30 and 60 minutes after it was late, then hourly, eight posts in all.</summary>
    private static Instant? NextAct(TaskStep step, TaskPosts posted, CareTable table)
    {
        Duration[] early = [Duration.Zero, table.Time(CareKeys.PostingActSecond), table.Time(CareKeys.PostingActThird), table.Time(CareKeys.PostingActFourth)];
        var every = table.Time(CareKeys.PostingActEvery);
        return posted.Count >= table.Count(CareKeys.PostingActCount) ? null
            : Enumerable.Range(0, 400).Select(n => step.At + (n < early.Length ? early[n] : early[^1] + every * (n - early.Length + 1)))
                .Cast<Instant?>().FirstOrDefault(at => at > posted.Last);
    }

    /// <summary>One series a pair: every 10 minutes, then every 30, then hourly; a task that newly comes to vet starts it anew.</summary>
    private Instant? NextVet(IReadOnlyList<CareTask> pair, CareTable table)
    {
        var series = pair.Where(task => task.LevelAt(now) == Level.Vet)
            .Select(task => (Step: task.StepAt(now)!.Label, Posts: state.Posted.GetValueOrDefault(task.Key)))
            .Where(task => task.Posts?.Step == task.Step).Select(task => task.Posts!).ToList();
        var start = series.Max(posts => posts.First);
        var last = series.Max(posts => posts.Last);
        return VetTimes(start, table).First(at => at > last);
    }

    private static IEnumerable<Instant> VetTimes(Instant start, CareTable table)
    {
        var at = start;
        for (var count = 1; ; count++)
        {
            yield return at;
            at += count < table.Count(CareKeys.PostingVetCount) ? table.Time(CareKeys.PostingVetEvery)
                : at - start < table.Time(CareKeys.PostingVetHours) ? table.Time(CareKeys.PostingVetThen)
                : table.Time(CareKeys.PostingVetLast);
        }
    }
}

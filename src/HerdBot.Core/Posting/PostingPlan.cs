using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Posting;

/// <summary>Tasks that go out together.</summary>
/// <param name="Kind">Reminder, alarm or round-up.</param>
/// <param name="Tasks">The gravest first.</param>
/// <param name="Since">After an outage: since when the bot was off; else null.</param>
public sealed record DuePost(PostKind Kind, ImmutableArray<CareTask> Tasks, Instant? Since = null);

/// <summary>What is to be posted now, and when to look again.</summary>
/// <param name="Posts">In the order of gravity.</param>
/// <param name="Next">When anything can fall due next; null where nothing can.</param>
public sealed record DuePosts(ImmutableArray<DuePost> Posts, Instant? Next);

/// <summary>Turns the plan into posts by the posting manners. Pure and idempotent: what was posted is in the state.</summary>
public static class PostingPlan
{
    /// <summary>What is due at an instant.</summary>
    /// <param name="state">The herd, with what was posted.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="tasks">The plan at that instant.</param>
    /// <param name="now">The instant.</param>
    /// <param name="offSince">On the first look after a start: when the bot was last seen alive; else null.</param>
    public static DuePosts At(HerdState state, Farm farm, ImmutableArray<CareTask> tasks, Instant now, Instant? offSince = null)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(farm);
        var manners = new Manners(state, farm, now);
        var pairs = tasks.GroupBy(task => task.Pair).Select(pair => new PairOutlook(manners, [.. pair], now)).ToList();
        var due = pairs.Select(pair => pair.Due).Where(pair => pair.Length > 0).ToList();
        var lapses = Lapses(state, tasks, now).ToList();
        var roundUp = RoundUp(state, farm, tasks, now, offSince);
        due = [.. due.Select(pair => NewsFirst(state, pair, now))];
        var posts = Combine(due, lapses, roundUp, farm, now, GapOf(due, manners, now, offSince));
        return new DuePosts(posts, NextLook(pairs, state, farm, tasks, now));
    }

    /// <summary>What may go out with an answer: all that is due, without waiting for company.</summary>
    /// <param name="state">The herd, with what was posted.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="tasks">The plan.</param>
    /// <param name="now">The instant.</param>
    /// <param name="awake">Somebody is up and asked for it: quiet hours keep nothing back.</param>
    public static IEnumerable<CareTask> Ready(HerdState state, Farm farm, ImmutableArray<CareTask> tasks, Instant now, bool awake)
    {
        var manners = new Manners(state, farm, now, awake);
        return tasks.GroupBy(task => task.Pair).SelectMany(pair => pair.Where(task => manners.Next(task, [.. pair]) <= now));
    }

    /// <summary>Orders tasks: the gravest first, then the oldest.</summary>
    public static ImmutableArray<CareTask> Gravest(IEnumerable<CareTask> tasks, Instant now) =>
        [.. tasks.OrderByDescending(task => task.LevelAt(now)).ThenBy(task => task.Due).ThenBy(task => task.Key.Name).ThenBy(task => task.Key.Animal.Value, StringComparer.Ordinal)];

    /// <summary>Of equally grave tasks the one that nobody was told of yet comes first.</summary>
    private static ImmutableArray<CareTask> NewsFirst(HerdState state, ImmutableArray<CareTask> pair, Instant now) =>
        [.. Gravest(pair, now).OrderByDescending(task => task.LevelAt(now)).ThenBy(task => state.Posted.GetValueOrDefault(task.Key)?.Step == task.StepAt(now)?.Label)];

    private static ImmutableArray<DuePost> Combine(
        List<ImmutableArray<CareTask>> due, List<CareTask> lapses, ImmutableArray<CareTask>? roundUp, Farm farm, Instant now, Instant? gap)
    {
        var posts = new List<DuePost>();
        if (gap is not null)
        {
            var all = Gravest(due.SelectMany(pair => pair).Concat(lapses), now);
            var kind = all.Any(task => task.LevelAt(now) == Level.Vet) ? PostKind.Alarm : PostKind.RoundUp;
            return [new DuePost(kind, all, gap)];
        }
        var calm = due.Where(pair => pair.All(task => task.LevelAt(now) < Level.Vet)).ToList();
        posts.AddRange(due.Except(calm).Select(pair => new DuePost(PostKind.Alarm, pair)));
        posts.AddRange(lapses.Select(task => new DuePost(PostKind.Alarm, [task])));
        var many = farm.Tables.Values.Select(table => table.Count(CareKeys.PostingRoundUpPairs)).DefaultIfEmpty(3).Min();
        if (roundUp is { } open)
        {
            posts.Add(new DuePost(PostKind.RoundUp, Gravest(open, now)));
        }
        else if (calm.Count >= many)
        {
            posts.Add(new DuePost(PostKind.RoundUp, Gravest(calm.SelectMany(pair => pair), now)));
        }
        else
        {
            posts.AddRange(calm.Select(pair => new DuePost(PostKind.Reminder, pair)));
        }
        return [.. posts];
    }

    /// <summary>Colostrum's window closes with a word: the test and the vet come next.</summary>
    private static IEnumerable<CareTask> Lapses(HerdState state, IEnumerable<CareTask> tasks, Instant now) => tasks.Where(task =>
        task.Key.Name == CareTaskName.Colostrum && !(task.DoneAt <= now) && task.LapsesAt <= now && now - task.LapsesAt < Duration.FromDays(2)
        && state.Posted.GetValueOrDefault(task.Key)?.Step != LapsedStep);

    /// <summary>The label under which a lapse is posted.</summary>
    public const string LapsedStep = "lapsed";

    /// <summary>What is open at the hour of a round-up, none where only a lapsed question is; null where no round-up is due.</summary>
    private static ImmutableArray<CareTask>? RoundUp(HerdState state, Farm farm, IEnumerable<CareTask> tasks, Instant now, Instant? offSince)
    {
        var today = farm.Clock.Day(now);
        var latest = farm.RoundUps.SelectMany(time => new[] { farm.Clock.At(today.PlusDays(-1), time), farm.Clock.At(today, time) })
            .Where(at => at <= now).Cast<Instant?>().Max();
        var missed = latest is null || state.RoundUpAt >= latest || (now - latest > Duration.FromMinutes(1) && !(offSince < latest));
        var open = missed ? [] : tasks.Where(task => task.OpenAt(now) && !(task.RestsUntil > now)).ToImmutableArray();
        return missed || (open.IsEmpty && state.Lapsed.IsEmpty) ? null : open;
    }

    /// <summary>Since when the bot was off, where anything fell due in that time.</summary>
    private static Instant? GapOf(List<ImmutableArray<CareTask>> due, Manners manners, Instant now, Instant? offSince) =>
        offSince is { } since && now - since >= Duration.FromMinutes(5)
        && due.SelectMany(pair => pair).Any(task => manners.Next(task, [task]) is { } at && at > since && now - at > Duration.FromMinutes(1))
            ? since : null;

    private static Instant? NextLook(List<PairOutlook> pairs, HerdState state, Farm farm, ImmutableArray<CareTask> tasks, Instant now)
    {
        var looks = pairs.SelectMany(pair => pair.Looks)
            .Concat(tasks.Where(task => !(task.DoneAt <= now)).SelectMany(task => task.Steps.Select(step => step.At)))
            .Concat(tasks.Where(task => !(task.DoneAt <= now) && task.LapsesAt is not null).Select(task => task.LapsesAt!.Value));
        if (tasks.Any(task => !(task.DoneAt <= now) && !(task.LapsesAt <= now)) || state.Questions.Count + state.Lapsed.Count > 0)
        {
            looks = looks.Concat(farm.RoundUps.Select(time => farm.Clock.Next(now + Duration.Epsilon, time)));
        }
        return looks.Where(at => at > now).Cast<Instant?>().Min();
    }
}

/// <summary>What a pair has due, and what it waits for.</summary>
internal sealed class PairOutlook
{
    public PairOutlook(Manners manners, ImmutableArray<CareTask> tasks, Instant now)
    {
        var next = tasks.Select(task => (Task: task, At: manners.Next(task, tasks))).Where(task => task.At is not null).ToList();
        var ready = next.Where(task => task.At <= now).ToList();
        Looks = [.. next.Where(task => task.At > now).Select(task => task.At!.Value)];
        if (ready.Exists(task => !Manners.Waits(task.Task, now)))
        {
            Due = [.. ready.Select(task => task.Task)];
            return;
        }
        var company = ready.Count == 0 ? null : manners.TableOf(ready[0].Task)?.Time(CareKeys.PostingCompany);
        var deadline = ready.Min(task => task.At) + (company ?? Duration.Zero);
        var coming = tasks.Where(task => !task.RoundUpOnly && !task.Held && !(task.DoneAt <= now))
            .SelectMany(task => task.Steps.Where(step => step.At > now && step.At <= deadline && !(task.LapsesAt <= step.At)).Select(step => (Instant?)step.At)).Min();
        if (ready.Count > 0 && coming is { } soon)
        {
            Looks = Looks.Add(soon);
            Due = [];
            return;
        }
        Due = [.. ready.Select(task => task.Task)];
    }

    /// <summary>Goes out now.</summary>
    public ImmutableArray<CareTask> Due { get; }

    /// <summary>When to look again.</summary>
    public ImmutableArray<Instant> Looks { get; }
}

using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Decisions;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using NodaTime;

namespace HerdBot.Tests.Support;

/// <summary>
/// A farm in a test: people say facts at local times, the clock runs from due moment to due moment, and all that was
/// posted is kept. The whole core but the reader, without a store and a chat.
/// </summary>
internal sealed class Farmyard
{
    private readonly List<Post> posts = [];
    private int messages;

    public Farmyard(Farm? farm = null, string start = "05:00", params Animal[] herd)
    {
        Farm = farm ?? Some.Farm();
        Now = At(start);
        Take([.. (herd.Length > 0 ? herd : [Some.Dam("Sage"), Some.Dam("Willow", state: HerdEntryState.Open)]).Select(animal => new HerdEvent.AnimalAdded(animal))]);
    }

    public Farm Farm { get; }

    public HerdState State { get; private set; } = HerdState.Empty;

    public Instant Now { get; private set; }

    /// <summary>Every post so far, oldest first.</summary>
    public IReadOnlyList<Post> Posts => posts;

    public Instant At(string time) => Farm.Clock.At(Some.Local(time));

    public string Clock(Instant at) => Farm.Clock.Local(at).ToString("dd HH:mm", null);

    /// <summary>Runs to a time, then somebody says facts, as the reader would give them; what was answered.</summary>
    public IReadOnlyList<Post> Say(string time, params Fact[] facts) => SayBy("Ana", time, "…", null, facts);

    /// <inheritdoc cref="Say"/>
    public IReadOnlyList<Post> SayBy(string by, string time, string text, Ask? ask, params Fact[] facts)
    {
        RunTo(time);
        var message = $"message {++messages}";
        return Decide(draft =>
        {
            draft.Add(new HerdEvent.LineHeard(message, by, text, Now, null));
            Hear.Act(draft, [.. facts], ask, by, message, text);
        });
    }

    /// <summary>Somebody writes words that the real reader reads.</summary>
    public IReadOnlyList<Post> Write(string by, string time, string text, Post? replyTo = null)
    {
        RunTo(time);
        return Take(Hear.Line(State, Farm, Now, by, $"message {++messages}", text, replyTo is null ? null : MessageOf(replyTo)));
    }

    /// <summary>Somebody changes the words of their newest message.</summary>
    public IReadOnlyList<Post> Edit(string by, string time, string text)
    {
        RunTo(time);
        return Take(Hear.Edit(State, Farm, Now, by, State.Lines.Last(line => line.By == by).Message, text));
    }

    /// <summary>Somebody presses a button under the newest post that tells of the task.</summary>
    public IReadOnlyList<Post> Tap(string by, string time, CareTaskName task, ButtonVerb verb, string animal = Some.Baby)
    {
        RunTo(time);
        var post = posts.Last(post => post.Edits is null && post.Tasks.Any(told => told.Key.Name == task && told.Animal == animal));
        return Take(Press.Button(State, Farm, Now, by, post.Number, verb, post.Tasks.ToList().FindIndex(told => told.Key.Name == task && told.Animal == animal)));
    }

    /// <summary>Somebody presses a button of a question.</summary>
    public IReadOnlyList<Post> Choose(string by, string time, Post question, int index)
    {
        RunTo(time);
        return Take(Press.Button(State, Farm, Now, by, question.Number, ButtonVerb.Choose, index));
    }

    /// <summary>Lets the clock run, posting at each due moment; what was posted.</summary>
    public IReadOnlyList<Post> RunTo(string time)
    {
        var (to, before) = (At(time), posts.Count);
        for (var next = Look(); next <= to; next = Look())
        {
            Now = next.Value;
        }
        Now = Instant.Max(Now, to);
        return posts[before..];
    }

    /// <summary>The bot is off until a time, then starts; what it posts then.</summary>
    public IReadOnlyList<Post> OffUntil(string time)
    {
        var (since, before) = (State.LastAt, posts.Count);
        Now = At(time);
        Take(Remind.At(State, Farm, Now, since).Events);
        return posts[before..];
    }

    /// <summary>The plan as it stands at a time; nothing is posted.</summary>
    public ImmutableArray<CareTask> PlanAt(string time) => CarePlan.At(State, Farm, At(time));

    /// <summary>Where a task stands at a time, as "late act"; "none" where the plan has no such task.</summary>
    public string Stands(CareTaskName name, string time, string animal = Some.Baby, string? which = null) => StandsAt(name, At(time), animal, which);

    /// <inheritdoc cref="Stands"/>
    public string StandsAt(CareTaskName name, Instant at, string animal = Some.Baby, string? which = null)
    {
        var tasks = CarePlan.At(State, Farm, at).Where(task => task.Key.Name == name && State.Find(task.Key.Animal)?.Name == animal && (which is null || task.Key.Which == which)).ToList();
        var task = tasks.Find(task => task.OpenAt(at)) ?? tasks.Find(task => task.StateAt(at) == TaskState.Ahead) ?? tasks.LastOrDefault();
        return task is null ? "none" : $"{task.StateAt(at)} {task.LevelAt(at)}".ToLowerInvariant();
    }

    /// <summary>Each reminder, alarm and round-up that told of a task, as "18 07:40 late act".</summary>
    public IEnumerable<string> Told(CareTaskName name, string animal = Some.Baby) =>
        from post in posts
        where post.Kind is PostKind.Reminder or PostKind.Alarm or PostKind.RoundUp
        from task in post.Tasks
        where task.Key.Name == name && task.Animal == animal
        select $"{Clock(post.At)} {task.State} {task.Level}".ToLowerInvariant();

    /// <summary>Takes events in, and sends their posts at once.</summary>
    public IReadOnlyList<Post> Take(ImmutableArray<HerdEvent> events)
    {
        var said = events.OfType<HerdEvent.PostQueued>().Select(queued => queued.Post).ToList();
        State = State.Apply(events).Apply(said.Select(post => new HerdEvent.PostSent(post.Number, MessageOf(post), Now)));
        posts.AddRange(said);
        return said;
    }

    private static string MessageOf(Post post) => $"post {post.Number}";

    private IReadOnlyList<Post> Decide(Action<Draft> decide)
    {
        var draft = new Draft(State, Farm, Now);
        decide(draft);
        return Take(draft.Events);
    }

    private Instant? Look()
    {
        var (events, next) = Remind.At(State, Farm, Now);
        Take(events);
        return next is { } at && at <= Now ? throw new InvalidOperationException($"What fell due at {Clock(at)} stays due.") : next;
    }
}

using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using NodaTime;

namespace HerdBot.Core.Herd;

/// <summary>A chat line that the group may still refer to.</summary>
/// <param name="Message">The chat's id of it.</param>
/// <param name="By">Who wrote it.</param>
/// <param name="Text">What it says now.</param>
/// <param name="At">When it came.</param>
/// <param name="ReplyTo">The post it replies to.</param>
public sealed record HeardLine(string Message, string By, string Text, Instant At, int? ReplyTo);

/// <summary>What was posted about a task's newest step.</summary>
/// <param name="Step">The step's label.</param>
/// <param name="First">When that step was posted first.</param>
/// <param name="Last">When it was posted last.</param>
/// <param name="Count">How often.</param>
public sealed record TaskPosts(string Step, Instant First, Instant Last, int Count);

/// <summary>Where a post is on its way to the chat.</summary>
/// <param name="Post">What is to be said.</param>
/// <param name="Attempts">How often it was handed over with an outcome that is not known.</param>
/// <param name="Message">The chat's id once it has it.</param>
public sealed record PostProgress(Post Post, int Attempts = 0, string? Message = null);

/// <summary>All that a group's history comes to. Derived from its events alone, and rebuilt from them at any time.</summary>
public sealed record HerdState
{
    private const int LinesKept = 60;
    private const int PostsKept = 400;

    /// <summary>Nothing has happened yet.</summary>
    public static HerdState Empty { get; } = new();

    /// <summary>Animals as they were added by name, in that order.</summary>
    public ImmutableList<HerdEvent.AnimalAdded> Added { get; init; } = [];
    /// <summary>All records in the order they were made, as they stand now.</summary>
    public ImmutableList<HerdRecord> Records { get; init; } = [];
    /// <summary>The newest lines, oldest first.</summary>
    public ImmutableList<HeardLine> Lines { get; init; } = [];
    /// <summary>The newest posts by number, and where each is.</summary>
    public ImmutableSortedDictionary<int, PostProgress> Posts { get; init; } = ImmutableSortedDictionary<int, PostProgress>.Empty;
    /// <summary>Posts that the chat does not have yet, oldest first.</summary>
    public ImmutableSortedSet<int> Unsent { get; init; } = [];
    /// <summary>What was posted about each task.</summary>
    public ImmutableDictionary<TaskKey, TaskPosts> Posted { get; init; } = ImmutableDictionary<TaskKey, TaskPosts>.Empty;
    /// <summary>Questions that wait for an answer, oldest first.</summary>
    public ImmutableList<Question> Questions { get; init; } = [];
    /// <summary>Questions that lapsed since the last round-up: nobody answered them, so nothing of them is on record.</summary>
    public ImmutableList<Question> Lapsed { get; init; } = [];
    /// <summary>When the newest event happened; null where there is none.</summary>
    public Instant? LastAt { get; init; }
    /// <summary>When people were last asked to dictate a voice note as text.</summary>
    public Instant? WordlessAnsweredAt { get; init; }
    /// <summary>How many posts there were.</summary>
    public int PostCount { get; init; }
    /// <summary>The last round-up.</summary>
    public Instant? RoundUpAt { get; init; }

    /// <summary>The animals that were added by name, as they stand now: by the names and tags they bear, sold or dead where they are.</summary>
    public ImmutableArray<Animal> Roster => List.Added;

    /// <summary>Newborns by the births on record, in that order; none of a birth that was taken back.</summary>
    public ImmutableArray<Animal> Newborns => List.Newborns;

    /// <summary>Every animal: the roster, then the newborns.</summary>
    public IEnumerable<Animal> Animals => List.All;

    /// <summary>The animal of an id; null where the herd has none.</summary>
    public Animal? Find(AnimalId? id) => id is null ? null : List.Find(id);

    /// <summary>The animal of a spoken name, letter case aside: its name, a nickname or one that it bore before; null where the herd has none.</summary>
    public Animal? Named(string? name) => name is null ? null : List.Named(name);

    /// <summary>The animal of the herd that bears a tag; null where none does.</summary>
    public Animal? Tagged(string? tag) => tag is null ? null : List.All.FirstOrDefault(animal => animal.IsHere() && string.Equals(animal.Tag, tag, StringComparison.OrdinalIgnoreCase));

    /// <summary>An animal's nicknames and the names it bore before.</summary>
    public ImmutableArray<string> OtherNames(AnimalId id) => List.OtherNames(id);

    private HerdList List => list ??= HerdList.Of(Added, Records);
    private HerdList? list;

    /// <summary>The record of an id; null where there is none.</summary>
    public HerdRecord? Record(FactId? id) => id is { } known ? Records.FirstOrDefault(record => record.Id == known) : null;

    /// <summary>The number of the next record.</summary>
    public FactId NextFact => new(Records.Count + 1);

    /// <summary>The state after an event.</summary>
    public HerdState Apply(HerdEvent happened) => happened switch
    {
        HerdEvent.AnimalAdded added => Fresh() with { Added = Added.Add(added) },
        HerdEvent.LineHeard heard => this with { Lines = Keep(Lines.Add(new(heard.Message, heard.By, heard.Text, heard.At, heard.ReplyTo))), LastAt = heard.At },
        HerdEvent.LineEdited edited => this with { Lines = Lines.ConvertAll(line => line.Message == edited.Message ? line with { Text = edited.Text } : line), LastAt = edited.At },
        HerdEvent.ButtonPressed pressed => this with { LastAt = pressed.At },
        HerdEvent.WordlessHeard wordless => this with { LastAt = wordless.At, WordlessAnsweredAt = wordless.Answered ? wordless.At : WordlessAnsweredAt },
        HerdEvent.FactRecorded recorded => Fresh() with { Records = Records.Add(Recorded(recorded)), LastAt = recorded.SaidAt },
        HerdEvent.FactAmended amended => Fresh() with { Records = Mend(amended.Id, record => record with { Fact = amended.Becomes, Animal = amended.Animal, At = amended.At }), LastAt = amended.SaidAt },
        HerdEvent.FactWithdrawn withdrawn => Fresh() with { Records = Mend(withdrawn.Id, record => record with { Withdrawn = true }), LastAt = withdrawn.SaidAt },
        HerdEvent.QuestionAsked asked => this with { Questions = Questions.Add(asked.Question) },
        HerdEvent.QuestionClosed closed => this with { Questions = Questions.RemoveAll(question => question.Post == closed.Post), Lapsed = closed.Answered ? Lapsed : Lapsed.AddRange(Questions.Where(question => question.Post == closed.Post)) },
        HerdEvent.PostQueued queued => Queued(queued.Post),
        HerdEvent.PostSending sending => Progress(sending.Number, progress => progress with { Attempts = progress.Attempts + 1 }) with { LastAt = sending.At },
        HerdEvent.PostSent sent => Progress(sent.Number, progress => progress with { Message = sent.Message }) with { Unsent = Unsent.Remove(sent.Number), LastAt = sent.At },
        HerdEvent.PostParked parked => Progress(parked.Number, progress => progress with { Attempts = Math.Max(0, progress.Attempts - 1) }) with { LastAt = parked.At },
        _ => throw new System.Diagnostics.UnreachableException(happened.ToString()),
    };

    /// <summary>The state after some events, in order.</summary>
    public HerdState Apply(IEnumerable<HerdEvent> happened) => happened.Aggregate(this, (state, next) => state.Apply(next));

    /// <summary>A copy in which what is derived from roster and records is derived anew.</summary>
    private HerdState Fresh() => this with { list = null };

    private static HerdRecord Recorded(HerdEvent.FactRecorded e) =>
        new(e.Id, e.Fact, e.Animal, e.At, e.SaidAt, e.By) { Message = e.Message, Newborn = e.Newborn, Task = e.Task };

    private static ImmutableList<HeardLine> Keep(ImmutableList<HeardLine> lines) =>
        lines.Count > LinesKept ? lines.RemoveAt(0) : lines;

    private ImmutableList<HerdRecord> Mend(FactId id, Func<HerdRecord, HerdRecord> mend)
    {
        var at = Records.FindIndex(record => record.Id == id);
        return at < 0 ? Records : Records.SetItem(at, mend(Records[at]));
    }

    private HerdState Progress(int number, Func<PostProgress, PostProgress> change) =>
        Posts.TryGetValue(number, out var progress) ? this with { Posts = Posts.SetItem(number, change(progress)) } : this;

    private HerdState Queued(Post post)
    {
        var posts = Posts.Add(post.Number, new PostProgress(post));
        if (posts.Count > PostsKept && posts.Keys.FirstOrDefault(number => !Unsent.Contains(number)) is > 0 and var oldest)
        {
            posts = posts.Remove(oldest);
        }
        return this with
        {
            Posts = posts,
            Unsent = Unsent.Add(post.Number),
            Posted = post.Kind == PostKind.Edit ? Posted : post.Tasks.Where(task => task.Step.Length > 0).Aggregate(Posted, (all, task) => all.SetItem(task.Key, Counted(all.GetValueOrDefault(task.Key), task.Step, post.At))),
            PostCount = post.Number,
            RoundUpAt = post.Kind == PostKind.RoundUp ? post.At : RoundUpAt,
            Lapsed = post.Kind == PostKind.RoundUp ? [] : Lapsed,
            LastAt = post.At,
        };
    }

    private static TaskPosts Counted(TaskPosts? before, string step, Instant at) =>
        before?.Step == step ? before with { Last = at, Count = before.Count + 1 } : new TaskPosts(step, at, at, 1);

    /// <summary>Births of one dam within this are twins.</summary>
    public static Duration Twins { get; } = Duration.FromHours(24);
}

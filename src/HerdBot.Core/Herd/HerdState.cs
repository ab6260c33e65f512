using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Due;
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

    /// <summary>The records of each animal, in the order they were made, as they stand now.</summary>
    private ImmutableDictionary<AnimalId, ImmutableArray<HerdRecord>> ByAnimal { get; init; } = ImmutableDictionary<AnimalId, ImmutableArray<HerdRecord>>.Empty;
    /// <summary>The records that tell who there is, by number.</summary>
    private ImmutableSortedDictionary<int, HerdRecord> Vital { get; init; } = ImmutableSortedDictionary<int, HerdRecord>.Empty;

    /// <summary>The animals that were added by name, as they stand now: by the names and tags they bear, sold or dead where they are.</summary>
    public ImmutableArray<Animal> Roster => Census.Roster;

    /// <summary>Newborns by the births on record, in that order; none of a birth that was taken back.</summary>
    public ImmutableArray<Animal> Newborns => Census.Newborns;

    private Census Census => census ??= new Census(Added, Vital.Values);
    private Census? census;

    /// <summary>The plan that was worked out last, for this herd or an earlier one.</summary>
    internal PlanMemo? Planned { get; set; }

    /// <summary>The herd's pregnancies, by the records; worked out when first asked for.</summary>
    public DueBook Due(Farm farm) => due is { } book && ReferenceEquals(book.Farm, farm) ? book : due = DueBook.Of(this, farm);
    private DueBook? due;

    /// <summary>Every animal: the roster, then the newborns.</summary>
    public IEnumerable<Animal> Animals => Census.All;

    /// <summary>The animal of an id; null where the herd has none.</summary>
    public Animal? Find(AnimalId? id) => id is null ? null : Census.Find(id);

    /// <summary>The animal of a spoken name, letter case aside: its name, a nickname or one that it bore before; null where the herd has none.</summary>
    public Animal? Named(string? name) => name is null ? null : Census.Named(name);

    /// <summary>The animal that is here and bears a tag; null where none does.</summary>
    public Animal? Tagged(string? tag) => tag is null ? null : Census.All.FirstOrDefault(animal => animal.IsHere() && string.Equals(animal.Tag, tag, StringComparison.OrdinalIgnoreCase));

    /// <summary>An animal's nicknames and the names it bore before.</summary>
    public ImmutableArray<string> OtherNames(AnimalId id) => Census.OtherNames(id);

    /// <summary>A dam's newborns, in the order of their births on record.</summary>
    public IEnumerable<Animal> NewbornsOf(AnimalId dam) => Census.Of(dam);

    /// <summary>The record of an id; null where there is none.</summary>
    public HerdRecord? Record(FactId? id) => id is { } known && PlaceOf(known) is >= 0 and var place ? Records[place] : null;

    /// <summary>An animal's records, in the order they were made, as they stand now.</summary>
    public ImmutableArray<HerdRecord> RecordsOf(AnimalId animal) => ByAnimal.GetValueOrDefault(animal, []);

    /// <summary>All records, the newest first: for whoever needs only those of late.</summary>
    public IEnumerable<HerdRecord> NewestFirst()
    {
        for (var n = Records.Count - 1; n >= 0; n--)
        {
            yield return Records[n];
        }
    }

    /// <summary>The number of the next record.</summary>
    public FactId NextFact => new(Records.Count + 1);

    /// <summary>The state after an event.</summary>
    public HerdState Apply(HerdEvent happened) => happened switch
    {
        HerdEvent.AnimalAdded added => this with { Added = Added.Add(added), census = null, due = null },
        HerdEvent.LineHeard heard => this with { Lines = Keep(Lines.Add(new(heard.Message, heard.By, heard.Text, heard.At, heard.ReplyTo))), LastAt = heard.At },
        HerdEvent.LineEdited edited => this with { Lines = Lines.ConvertAll(line => line.Message == edited.Message ? line with { Text = edited.Text } : line), LastAt = edited.At },
        HerdEvent.ButtonPressed pressed => this with { LastAt = pressed.At },
        HerdEvent.WordlessHeard wordless => this with { LastAt = wordless.At, WordlessAnsweredAt = wordless.Answered ? wordless.At : WordlessAnsweredAt },
        HerdEvent.FactRecorded recorded => With(null, Recorded(recorded), Records.Count) with { LastAt = recorded.SaidAt },
        HerdEvent.FactAmended amended => Mend(amended.Id, record => record with { Fact = amended.Becomes, Animal = amended.Animal, At = amended.At }) with { LastAt = amended.SaidAt },
        HerdEvent.FactWithdrawn withdrawn => Mend(withdrawn.Id, record => record with { Withdrawn = true }) with { LastAt = withdrawn.SaidAt },
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

    private static HerdRecord Recorded(HerdEvent.FactRecorded e) =>
        new(e.Id, e.Fact, e.Animal, e.At, e.SaidAt, e.By) { Message = e.Message, Newborn = e.Newborn, Task = e.Task };

    private static ImmutableList<HeardLine> Keep(ImmutableList<HeardLine> lines) =>
        lines.Count > LinesKept ? lines.RemoveAt(0) : lines;

    private HerdState Mend(FactId id, Func<HerdRecord, HerdRecord> mend) =>
        PlaceOf(id) is >= 0 and var place ? With(Records[place], mend(Records[place]), place) : this;

    /// <summary>The state in which a record stands at a place, instead of what stood there before; all that is derived from it follows.</summary>
    private HerdState With(HerdRecord? before, HerdRecord record, int place)
    {
        var counts = Census.Counts(record) || (before is not null && Census.Counts(before));
        return this with
        {
            Records = before is null ? Records.Add(record) : Records.SetItem(place, record),
            ByAnimal = Indexed(before, record),
            Vital = Census.Counts(record) ? Vital.SetItem(place, record) : Vital.Remove(place),
            census = counts ? null : census,
            due = DueBook.Counts(record) || (before is not null && DueBook.Counts(before)) ? null : due,
        };
    }

    private ImmutableDictionary<AnimalId, ImmutableArray<HerdRecord>> Indexed(HerdRecord? before, HerdRecord record)
    {
        var index = ByAnimal;
        if (before?.Animal is { } was && was != record.Animal)
        {
            index = index.SetItem(was, index[was].Remove(before));
        }
        if (record.Animal is not { } animal)
        {
            return index;
        }
        var records = index.GetValueOrDefault(animal, []);
        var at = before?.Animal == animal ? records.IndexOf(before) : -1;
        return index.SetItem(animal, at >= 0 ? records.SetItem(at, record) : records.Insert(Place(records, record), record));
    }

    private static int Place(ImmutableArray<HerdRecord> records, HerdRecord record)
    {
        var place = records.Length;
        while (place > 0 && records[place - 1].Id.Number > record.Id.Number)
        {
            place--;
        }
        return place;
    }

    /// <summary>Where a record stands: at its number, unless somebody numbered otherwise.</summary>
    private int PlaceOf(FactId id) =>
        id.Number >= 1 && id.Number <= Records.Count && Records[id.Number - 1].Id == id ? id.Number - 1 : Records.FindIndex(record => record.Id == id);

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

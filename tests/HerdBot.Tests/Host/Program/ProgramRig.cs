using System.Collections.Immutable;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.App.Records;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Host.LiteDb;
using HerdBot.Host.Rehearsal;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Host.Telegram;
using HerdBot.Tests.Support.FakeBotApi;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace HerdBot.Tests.Host.Program;

/// <summary>The whole program on the stand-in for Telegram: one clock for both, a data file in a folder of its own.</summary>
internal sealed class ProgramRig : IAsyncDisposable
{
    public static readonly FakePerson Ana = new(4711, "Ana");
    public static readonly FakePerson Ben = new(4712, "Ben");

    private const string Farmstead = """
        {"farm": {"zone": "America/Denver", "units": "us", "dates": "mdy", "lang": "en", "species": "llama",
                  "people": [{"name": "Ana", "owner": true}, {"name": "Ben"}],
                  "herd": [{"name": "Juniper", "role": "dam", "state": "due"}, {"name": "Hazel", "role": "dam", "state": "due"}],
                  "settings": {}}, "start": "2027-04-18T06:40"}
        """;

    private readonly FarmSetup setup;
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("herdbot-program-");
    private readonly Dictionary<string, FakePerson> people = [];
    private ProgramLife? life;

    private ProgramRig(FarmSetup setup, Instant start, FakeBotApi fake)
    {
        (this.setup, Start, Fake) = (setup, start, fake);
        Group = fake.Group("Juniper Hollow");
        Home = fake.Private(Ana);
    }

    public FakeBotApi Fake { get; }

    public FakeTimeProvider Clock => Fake.Clock;

    public LogSheet Log { get; } = new();

    /// <summary>The farm's group, in which the bot is not yet.</summary>
    public FakeChat Group { get; }

    /// <summary>The owner's private chat with the bot.</summary>
    public FakeChat Home { get; }

    public Instant Start { get; }

    public GroupId Stream => TelegramIds.GroupOf(Group.Id);

    public ProgramLife Life => life ?? throw new InvalidOperationException("The program is off.");

    public HerdState State => Life.Pipeline.StateOf(Stream);

    /// <summary>A rig whose program is off: the history may still be prepared.</summary>
    public static async Task<ProgramRig> PrepareAsync()
    {
        var script = RehearsalScript.Read([Farmstead.ReplaceLineEndings(" ")]).Script!;
        return await PrepareAsync(script.Setup, new FakeTimeProvider(script.Start.ToDateTimeOffset()));
    }

    public static async Task<ProgramRig> PrepareAsync(FarmSetup setup, FakeTimeProvider clock) =>
        new(setup, Instant.FromDateTimeOffset(clock.GetUtcNow()), await FakeBotApi.StartAsync(time: clock));

    /// <summary>A running program that Ana owns and that works in her group.</summary>
    public static async Task<ProgramRig> StartAsync()
    {
        var rig = await PrepareAsync();
        await rig.BootAsync();
        await rig.MoveInAsync();
        return rig;
    }

    /// <summary>Makes Ana the owner, by the code on the console, and lets her add the bot to the group.</summary>
    public async Task MoveInAsync()
    {
        Fake.Say(Home, Ana, $"/start {Life.SetUpCode}");
        await Life.SettleAsync();
        Fake.Add(Group, Ana);
        await Life.SettleAsync();
    }

    public async Task BootAsync() => life = await ProgramLife.StartAsync(setup, Path.Combine(folder.FullName, "farm.db"), Clock, Fake, Log);

    public async Task CutAsync()
    {
        await Life.CutAsync();
        life = null;
    }

    /// <summary>A birth that is on record before the program starts, so that reminders fall due whatever the reader understands.</summary>
    public async Task RecordBirthAsync(string dam, Instant at)
    {
        await using var store = LiteDbHerdStore.Open(Path.Combine(folder.FullName, "farm.db"));
        var known = (await store.ReadGroupAsync(Stream)).Length;
        var animal = setup.Herd.Single(animal => animal.Name == dam);
        var id = new FactId(known + 1);
        ImmutableArray<HerdEvent> events =
        [
            new HerdEvent.AnimalAdded(animal),
            new HerdEvent.FactRecorded(id, new Fact(FactKind.Birth) { Animal = dam }, animal.Id, at, at, "Ana") { Newborn = new AnimalId($"{animal.Id.Value}/{id.Number}") },
        ];
        await store.AppendAsync(new Commit(Stream, known, $"before/{dam}", at, [.. events.Select(EventCodec.Write)]));
    }

    /// <summary>Somebody by their first name; equal names are one person.</summary>
    public FakePerson Person(string name) => name == Ana.FirstName ? Ana
        : people.TryGetValue(name, out var known) ? known : people[name] = new FakePerson(4800 + people.Count, name);

    /// <summary>Somebody writes in the group, and all that follows at once has followed.</summary>
    public async Task<int> SayAsync(string text, FakePerson? from = null)
    {
        var message = Fake.Say(Group, from ?? Ana, text);
        await Life.SettleAsync();
        return message;
    }

    public Task RunForAsync(Duration time) => Life.RunToAsync(Instant.FromDateTimeOffset(Clock.GetUtcNow()) + time);

    /// <summary>The group's history.</summary>
    public async Task<IReadOnlyList<HerdEvent>> HistoryAsync() =>
        [.. (await Life.Store.ReadGroupAsync(Stream)).SelectMany(stored => stored.Commit.Events).Select(EventCodec.Read)];

    /// <summary>What the bot sent into a chat, in order.</summary>
    public IReadOnlyList<FakePost> SentTo(FakeChat chat) => [.. Fake.Sent.Where(post => post.Chat == chat.Id)];

    /// <summary>Reminders, alarms and round-ups so far, oldest first.</summary>
    public IReadOnlyList<Post> Reminders =>
        [.. State.Posts.Values.Select(progress => progress.Post).Where(post => post.Kind is PostKind.Reminder or PostKind.Alarm or PostKind.RoundUp)];

    public async ValueTask DisposeAsync()
    {
        if (life is not null)
        {
            await life.EndAsync();
        }
        await Fake.DisposeAsync();
        folder.Delete(recursive: true);
    }
}

using System.Text.RegularExpressions;
using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.App.Records;
using HerdBot.Core.Care;
using HerdBot.Core.Decisions;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Tests.App.Messages;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Architecture;

/// <summary>Every case of a closed set is handled wherever the set is switched over.</summary>
public sealed class ClosedSetTests
{
    private static readonly Instant At = Instant.FromUtc(2027, 4, 18, 12, 40);
    private static readonly AnimalId Sage = new("sage");
    private static readonly TaskKey Key = new(CareTaskName.CordDip, new AnimalId("sage/1"), "2");

    private static readonly Fact Whole = new(FactKind.Correction)
    {
        Animal = "Sage's baby",
        Value = 24.25m,
        Unit = FactUnit.Lb,
        At = FactTime.Of(new LocalDateTime(2027, 4, 18, 6, 40)),
        Neg = true,
        Unsure = true,
        Sex = Sex.Female,
        N = 2,
        Sire = "Flint",
        Route = FeedRoute.Bottle,
        Task = "weight",
        Field = "value",
        Was = "23 \"lb\"",
        Name = "Copper",
        Traits = new AnimalTraits(HerdRole.Sire, Species.Alpaca, "rose grey", "14", "Fern"),
        Text = "línea\nmit 'ä' 🦙",
        Until = new LocalDate(2027, 6, 20),
        Expected = new LocalDate(2028, 5, 20),
        Target = new FactId(7),
    };

    private static readonly Post Post = new(3, PostKind.Alarm, "group", "Vet now: \"Sage\"\n…", At)
    {
        Tasks = [new PostedTask(Key, "Sage's baby", At, TaskState.Held, Level.Vet, "vet")],
        Buttons = [new Button("On it", ButtonVerb.OnIt, 0)],
        Picture = Post.Season,
        ReplyTo = "tg:5",
        Edits = 2,
    };

    private static readonly HerdEvent[] Cases =
    [
        new HerdEvent.AnimalAdded(new Animal(Sage, "Sage", HerdRole.Dam, Species.Alpaca) { Sex = Sex.Female, Dam = new AnimalId("fern"), Born = At, Twin = 1, State = HerdEntryState.InLabour, Tag = "12", Colour = "rose grey", Nickname = "Sagie" }) { Told = new FactId(3) },
        new HerdEvent.LineHeard("m1", "Ana", "Sage had a girl", At, 4),
        new HerdEvent.LineEdited("m1", "Ana", "Sage had a boy", At),
        new HerdEvent.ButtonPressed("Ben", 3, ButtonVerb.NotYet, 1, At),
        new HerdEvent.WordlessHeard("Ben", "voice", At, true),
        new HerdEvent.FactRecorded(new FactId(1), Whole, Sage, At, At, "Ana") { Message = "m1", Newborn = new AnimalId("sage/1"), Task = Key },
        new HerdEvent.FactAmended(new FactId(1), Whole, null, At, At, "Ana", Whole),
        new HerdEvent.FactWithdrawn(new FactId(1), At, "Ana"),
        new HerdEvent.QuestionAsked(new Question(5, Ask.Unit, [Whole, new Fact(FactKind.Weight)], ["lb", "kg"], "Ana", "m1", At)),
        new HerdEvent.QuestionClosed(5, true),
        new HerdEvent.PostQueued(Post),
        new HerdEvent.PostSending(3, At),
        new HerdEvent.PostSent(3, "tg:9", At),
        new HerdEvent.PostParked(3, "kicked", At),
    ];

    public static TheoryData<string> Events => [.. Cases.Select(one => one.GetType().Name)];

    [Fact]
    public void Every_event_has_a_case_here() => Cases.Select(one => one.GetType()).Should().BeEquivalentTo(Of(typeof(HerdEvent)));

    [Theory]
    [MemberData(nameof(Events))]
    public void The_state_takes_every_event_in(string name)
    {
        var applying = () => HerdState.Empty.Apply(Case(name));

        applying.Should().NotThrow();
    }

    [Theory]
    [MemberData(nameof(Events))]
    public void Every_event_comes_back_from_its_stored_form_as_it_was(string name)
    {
        var written = EventCodec.Write(Case(name));
        var read = EventCodec.Read(written);

        read.Should().BeEquivalentTo(Case(name), options => options.RespectingRuntimeTypes().WithStrictOrdering());
        EventCodec.Write(read).Should().Be(written);
    }

    [Theory]
    [InlineData("no_such_event", 1, "{}", "*'no_such_event' (version 1)*does not know*")]
    [InlineData("line_heard", 2, "{}", "*'line_heard' (version 2)*does not know*")]
    [InlineData("line_heard", 1, "{\"message\":", "*damaged*")]
    [InlineData("fact_withdrawn", 1, "{\"id\":1,\"said_at\":\"yesterday\",\"by\":\"Ana\"}", "*damaged*")]
    public void An_event_that_nobody_knows_or_that_is_damaged_stops_with_a_plain_sentence(string type, int version, string data, string sentence)
    {
        var reading = () => EventCodec.Read(new EventRecord(type, version, data));

        reading.Should().Throw<InvalidDataException>().WithMessage(sentence);
    }

    [Fact]
    public void Every_word_of_a_closed_set_leads_back_to_its_case()
    {
        foreach (var kind in Enum.GetValues<FactKind>())
        {
            FactWords.TryKind(FactWords.Word(kind), out var back).Should().BeTrue();
            back.Should().Be(kind);
        }
        foreach (var unit in Enum.GetValues<FactUnit>())
        {
            FactWords.TryUnit(FactWords.Word(unit), out var back).Should().BeTrue();
            back.Should().Be(unit);
        }
        foreach (var task in Enum.GetValues<CareTaskName>())
        {
            CareTaskWords.TryParse(CareTaskWords.Word(task), out var back).Should().BeTrue();
            back.Should().Be(task);
        }
    }

    [Fact]
    public async Task Every_way_in_reaches_the_desk_without_a_fault()
    {
        var (group, ana) = (new GroupId("farm"), new Person("name:Ana", "Ana"));
        Inbound[] ways =
        [
            new Inbound.Line("k1", group, ana, At, "m1", "Sage had a girl 6:40", null), new Inbound.Edit("k2", group, ana, At, "m1", "Sage had a boy 6:40"),
            new Inbound.Tap("k3", group, ana, At, ButtonData.Write(1, new Button("", ButtonVerb.Done, 0))), new Inbound.Wordless("k4", group, ana, At, "m2", "voice"),
            new Inbound.Membership("k5", group, ana, At, "Barn", true), new Inbound.Moved("k6", group, ana, At, new GroupId("barn")),
            new Inbound.Missed("k7", group, ana, At, At - Duration.FromHours(30)),
        ];
        ways.Select(way => way.GetType()).Should().BeEquivalentTo(Of(typeof(Inbound)));
        using var desk = await Desk.OpenAsync(new InMemoryHerdStore(), At);

        foreach (var way in ways)
        {
            (await desk.HandleAsync(way, At)).Should().BeNull();
        }
    }

    [Fact]
    public void Every_kind_of_fact_can_be_recorded_said_and_answered()
    {
        foreach (var kind in Enum.GetValues<FactKind>())
        {
            foreach (var fact in new[] { new Fact(kind), new Fact(kind) { Animal = "Sage" }, new Fact(kind) { Animal = Some.Baby, Neg = true }, Whole with { Kind = kind, Animal = Some.Baby, At = null, Target = null } })
            {
                var yard = new Farmyard();
                yard.Say("06:40", Some.Birth("06:40"));
                var saying = () => yard.Say("06:45", fact);

                saying.Should().NotThrow($"{fact} is a fact as any other");
                yard.RunTo("08:00");
            }
        }
    }

    [Fact]
    public void The_ids_of_log_events_are_unique()
    {
        var ids = ReferenceTests.Files().SelectMany(file => Regex.Matches(File.ReadAllText(file), @"\[LoggerMessage\((?:EventId = )?(\d+)").Select(match => match.Groups[1].Value)).ToList();

        ids.Should().HaveCountGreaterThanOrEqualTo(5).And.OnlyHaveUniqueItems();
    }

    [Fact]
    public void A_button_of_a_reading_is_never_done() =>
        Enum.GetValues<CareTaskName>().Where(task => !TaskButtons.DoneByPress(task)).Should().Equal(CareTaskName.Temperature, CareTaskName.Weight, CareTaskName.Igg);

    private static HerdEvent Case(string name) => Cases.Single(one => one.GetType().Name == name);

    private static IEnumerable<Type> Of(Type set) => set.GetNestedTypes().Where(type => type.IsSubclassOf(set));
}

using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.App.Outbox;
using HerdBot.App.Ports;
using HerdBot.Core.Decisions;
using HerdBot.Core.Events;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.App.Outbox;

/// <summary>Posts on their way: in order, at the chat's pace, and none is ever given up.</summary>
public sealed class OutboxRunTests
{
    [Fact]
    public async Task Posts_go_out_in_their_order_and_once()
    {
        var rig = await Rig.WithAsync(3);
        await rig.SendAsync();
        await rig.SendAsync();

        rig.Chat.Taken.Select(one => one.Text).Should().Equal("Post 1", "Post 2", "Post 3");
        rig.Desk.State.Unsent.Should().BeEmpty();
    }

    [Fact]
    public async Task The_pause_that_the_chat_asks_for_is_kept_to()
    {
        var rig = await Rig.WithAsync(2);
        rig.Chat.Answers.Enqueue(new SendResult.Wait(Duration.FromSeconds(7)));

        (await rig.SendAsync()).Should().Be(rig.Now + Duration.FromSeconds(7));
        rig.Now += Duration.FromSeconds(6);
        (await rig.SendAsync()).Should().Be(rig.Now + Duration.FromSeconds(1));
        rig.Chat.Taken.Should().BeEmpty();
        rig.Now += Duration.FromSeconds(1);
        (await rig.SendAsync()).Should().BeNull();
        rig.Chat.Taken.Select(one => one.Text).Should().Equal("Post 1", "Post 2");
    }

    [Fact]
    public async Task A_line_that_is_down_is_tried_again_ever_more_slowly_up_to_five_minutes()
    {
        var rig = await Rig.WithAsync(1);
        var pauses = new List<double>();
        for (var n = 0; n < 12; n++)
        {
            rig.Chat.Answers.Enqueue(new SendResult.NotSent("no route"));
            var next = await rig.SendAsync();
            pauses.Add((next!.Value - rig.Now).TotalSeconds);
            rig.Now = next.Value;
        }
        pauses.Should().Equal(1, 2, 4, 8, 16, 32, 64, 128, 256, 300, 300, 300);

        await rig.SendAsync();
        rig.Chat.Taken.Should().ContainSingle().Which.Text.Should().Be("Post 1", "it was certainly not sent before");
    }

    [Fact]
    public async Task After_it_went_through_the_pauses_begin_anew()
    {
        var rig = await Rig.WithAsync(1);
        rig.Chat.Answers.Enqueue(new SendResult.NotSent("no route"));
        rig.Chat.Answers.Enqueue(new SendResult.NotSent("no route"));
        rig.Now = (await rig.SendAsync())!.Value;
        rig.Now = (await rig.SendAsync())!.Value;
        await rig.SendAsync();
        await rig.QueueAsync("Post 2");
        rig.Chat.Answers.Enqueue(new SendResult.NotSent("no route"));

        (await rig.SendAsync()).Should().Be(rig.Now + Duration.FromSeconds(1));
    }

    [Fact]
    public async Task A_refused_post_is_parked_and_tried_on_keeps_its_place_and_is_no_repeat()
    {
        var rig = await Rig.WithAsync(2);
        rig.Chat.Answers.Enqueue(new SendResult.Refused("not enough rights"));
        rig.Chat.Answers.Enqueue(new SendResult.Refused("not enough rights"));
        rig.Now = (await rig.SendAsync())!.Value;
        rig.Now = (await rig.SendAsync())!.Value;

        rig.Desk.State.Unsent.Should().Equal(1, 2);
        (await rig.EventsAsync<HerdEvent.PostParked>()).Select(parked => parked.Why).Should().Equal("not enough rights", "not enough rights");
        await rig.SendAsync();
        rig.Chat.Taken.Select(one => one.Text).Should().Equal("Post 1", "Post 2");
    }

    [Fact]
    public async Task A_post_whose_fate_is_unknown_is_sent_once_more_and_says_so()
    {
        var rig = await Rig.WithAsync(1);
        rig.Chat.Answers.Enqueue(new SendResult.Unknown("time is up"));
        rig.Now = (await rig.SendAsync())!.Value;
        await rig.SendAsync();
        await rig.SendAsync();

        rig.Chat.Taken.Should().ContainSingle().Which.Text.Should().Be("Post 1\n(perhaps sent before)");
    }

    [Fact]
    public async Task A_post_that_was_on_its_way_at_a_power_cut_is_sent_once_more_and_says_so()
    {
        var rig = await Rig.WithAsync(1);
        await rig.Desk.NoteAsync([new HerdEvent.PostSending(1, rig.Now)], rig.Now);
        await rig.RestartAsync();
        await rig.SendAsync();

        rig.Chat.Taken.Should().ContainSingle().Which.Text.Should().EndWith("(perhaps sent before)");
    }

    [Fact]
    public async Task A_group_gets_twenty_posts_a_minute()
    {
        var rig = await Rig.WithAsync(25);
        var next = await rig.SendAsync();

        rig.Chat.Taken.Should().HaveCount(20);
        next.Should().Be(rig.Now + Duration.FromMinutes(1));
        rig.Now = next!.Value;
        (await rig.SendAsync()).Should().BeNull();
        rig.Chat.Taken.Select(one => one.Number).Should().Equal(Enumerable.Range(1, 25));
    }

    [Fact]
    public async Task A_chat_without_a_pace_gets_all_at_once()
    {
        var rig = await Rig.WithAsync(25, mostAMinute: null);

        (await rig.SendAsync()).Should().BeNull();

        rig.Chat.Taken.Should().HaveCount(25);
    }

    [Fact]
    public async Task A_mark_or_an_edit_that_is_refused_is_left_and_holds_up_nothing()
    {
        var rig = await Rig.WithAsync(1);
        await rig.QueueAsync("👍", PostKind.React);
        await rig.QueueAsync("Post 3");
        await rig.SendAsync();
        rig.Chat.Taken.Clear();
        await rig.QueueAsync("👍", PostKind.React);
        await rig.QueueAsync("Post 5");
        rig.Chat.Answers.Enqueue(new SendResult.Refused("message to react not found"));
        await rig.SendAsync();

        rig.Chat.Taken.Select(one => one.Text).Should().Equal("Post 5");
        rig.Desk.State.Unsent.Should().BeEmpty();
    }

    [Fact]
    public async Task An_edit_of_a_post_that_waits_goes_out_after_it_and_at_its_message()
    {
        var rig = await Rig.WithAsync(1);
        await rig.QueueAsync("Post 1\nBen is on it, 7:11.", PostKind.Edit, edits: 1);
        await rig.SendAsync();

        rig.Chat.Taken.Select(one => (one.Kind, one.Target)).Should().Equal((OutgoingKind.Send, null), (OutgoingKind.Edit, "sent 1"));
    }

    [Fact]
    public async Task A_chat_that_moved_is_met_in_its_new_place()
    {
        var rig = await Rig.WithAsync(1);
        rig.Chat.Answers.Enqueue(new SendResult.Moved(new GroupId("farm 2")));
        rig.Now = (await rig.SendAsync())!.Value;
        await rig.SendAsync();

        rig.Chat.Taken.Should().ContainSingle().Which.Group.Should().Be(new GroupId("farm 2"));
    }

    [Fact]
    public async Task Only_an_alarm_may_ring()
    {
        var rig = await Rig.WithAsync(0);
        await rig.QueueAsync("calm", PostKind.Reminder);
        await rig.QueueAsync("vet now", PostKind.Alarm);
        await rig.SendAsync();

        rig.Chat.Taken.Select(one => one.Loud).Should().Equal(false, true);
    }

    /// <summary>A chat that answers what it is told to, and takes everything else.</summary>
    private sealed class FakeChat : IChat
    {
        public int? MostAMinute { get; set; }
        public Queue<SendResult> Answers { get; } = new();
        public List<Outgoing> Taken { get; } = [];

        public Task<SendResult> SendAsync(Outgoing outgoing, CancellationToken cancellation = default)
        {
            if (Answers.TryDequeue(out var answer))
            {
                return Task.FromResult(answer);
            }
            Taken.Add(outgoing);
            return Task.FromResult<SendResult>(new SendResult.Sent($"sent {outgoing.Number}"));
        }
    }

    /// <summary>A door that remembers where a chat moved to.</summary>
    private sealed class MovingDoor : IDoor
    {
        private GroupId place = Messages.Desk.Group;

        public Task<GroupId?> AdmitAsync(Inbound inbound, CancellationToken cancellation = default) => Task.FromResult<GroupId?>(Messages.Desk.Group);
        public Task<IReadOnlyList<GroupId>> KnownAsync(CancellationToken cancellation = default) => Task.FromResult<IReadOnlyList<GroupId>>([Messages.Desk.Group]);
        public GroupId ChatOf(GroupId group) => place;
        public Task<Instant?> DeliverAsync(CancellationToken cancellation = default) => Task.FromResult<Instant?>(null);

        public Task MovedAsync(GroupId from, GroupId to, CancellationToken cancellation = default)
        {
            place = to;
            return Task.CompletedTask;
        }
    }

    private sealed class Rig
    {
        private readonly InMemoryHerdStore store = new();
        private OutboxRun outbox = null!;

        public FakeChat Chat { get; } = new();
        public GroupDesk Desk { get; private set; } = null!;
        public Instant Now { get; set; } = Messages.Desk.Dawn;

        public static async Task<Rig> WithAsync(int posts, int? mostAMinute = 20)
        {
            var rig = new Rig { Chat = { MostAMinute = mostAMinute } };
            await rig.RestartAsync();
            for (var n = 1; n <= posts; n++)
            {
                await rig.QueueAsync($"Post {n}");
            }
            return rig;
        }

        public async Task RestartAsync()
        {
            outbox = new OutboxRun(Chat, new MovingDoor(), NullLogger<OutboxRun>.Instance);
            Desk = await Messages.Desk.OpenAsync(store, handOver: outbox);
        }

        public Task QueueAsync(string text, PostKind kind = PostKind.Reminder, int? edits = null)
        {
            var draft = new Draft(Desk.State, Some.Farm(), Now);
            draft.Say(draft.Post(kind, text) with { Edits = edits, ReplyTo = kind == PostKind.React ? "m 1" : null });
            return Desk.NoteAsync(draft.Events, Now);
        }

        public Task<Instant?> SendAsync() => outbox.SendAsync(Desk, () => Now);

        public async Task<IEnumerable<T>> EventsAsync<T>() =>
            (await store.ReadGroupAsync(Messages.Desk.Group)).SelectMany(stored => stored.Commit.Events).Select(HerdBot.App.Records.EventCodec.Read).OfType<T>();
    }
}

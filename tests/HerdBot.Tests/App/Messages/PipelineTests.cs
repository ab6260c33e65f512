using System.Collections.Immutable;
using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.App.Outbox;
using HerdBot.App.Ports;
using HerdBot.Tests.Support;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.App.Messages;

/// <summary>The way through the house: whatever comes in is worked on once, and nothing stops the rest.</summary>
public sealed class PipelineTests
{
    private readonly InMemoryHerdStore store = new();
    private readonly FakeTimeProvider clock = new(Desk.Dawn.ToDateTimeOffset());
    private readonly TakingChat chat = new();
    private readonly KeptWakeUp wakeUp = new();

    [Fact]
    public async Task A_message_is_stored_read_answered_and_sent()
    {
        await RunAsync(pipeline => pipeline.TakeInAsync([Entry("k1", "Sage had a girl 6:40, 24 lb")]));

        chat.Taken.Should().ContainSingle().Which.Should().StartWith("Sage's baby: girl, born 6:40, 24 lb.");
        (await store.ReadWaitingAsync()).Should().BeEmpty();
        wakeUp.At.Should().Be(Desk.Dawn + Duration.FromMinutes(10), "the temperature is due at 6:55");
    }

    [Fact]
    public async Task The_same_update_twice_is_worked_on_once()
    {
        await RunAsync(async pipeline =>
        {
            await pipeline.TakeInAsync([Entry("k1", "Sage had a girl 6:40, 24 lb"), Entry("k1", "Sage had a girl 6:40, 24 lb")]);
            await pipeline.IdleAsync();
            await pipeline.TakeInAsync([Entry("k1", "Sage had a girl 6:40, 24 lb")]);
        });

        chat.Taken.Should().ContainSingle();
    }

    [Fact]
    public async Task What_cannot_be_read_is_set_aside_and_the_rest_goes_on()
    {
        await RunAsync(pipeline => pipeline.TakeInAsync([new InboxEntry("bad", Desk.Dawn, "{ nonsense"), new InboxEntry("odd", Desk.Dawn, """{"type":"dance","group":"farm","from":"Ana","message":"","text":""}"""),
            Entry("k1", "Sage had a girl 6:40, 24 lb")]));

        chat.Taken.Should().ContainSingle();
        (await store.ReadWaitingAsync()).Should().BeEmpty("nothing is tried for ever");
        (await store.ReadGroupAsync(Pipeline.Aside)).Select(stored => stored.Commit.Key).Should().Equal("bad", "odd");
    }

    [Fact]
    public async Task What_was_taken_in_before_a_stop_is_worked_on_after_the_start()
    {
        await store.TakeInAsync(Entry("k1", "Sage had a girl 6:40, 24 lb"));
        await store.TakeInAsync(Entry("k2", "cord dipped"));
        await RunAsync(_ => Task.CompletedTask);

        chat.Taken.Should().HaveCount(2);
        (await store.ReadWaitingAsync()).Should().BeEmpty();
    }

    [Fact]
    public async Task What_is_due_is_posted_when_the_clock_rings_and_once()
    {
        await RunAsync(async pipeline =>
        {
            await pipeline.TakeInAsync([Entry("k1", "Sage had a girl 6:40, 24 lb")]);
            await pipeline.IdleAsync();
            clock.SetUtcNow(wakeUp.At!.Value.ToDateTimeOffset());
            await pipeline.LookAsync();
            await pipeline.LookAsync();
        });

        chat.Taken.Should().HaveCount(2);
        chat.Taken[1].Should().Contain("temperature");
    }

    [Fact]
    public async Task A_send_that_takes_long_is_not_begun_again_however_often_the_clock_rings()
    {
        chat.Hold = new TaskCompletionSource();
        await RunAsync(async pipeline =>
        {
            await pipeline.TakeInAsync([Entry("k1", "Sage had a girl 6:40, 24 lb")]);
            await pipeline.IdleAsync();
            var looks = Enumerable.Range(0, 4).Select(_ => pipeline.LookAsync()).ToList();
            chat.Hold.SetResult();
            await Task.WhenAll(looks);
        });

        chat.Taken.Should().ContainSingle();
    }

    [Fact]
    public async Task Where_saving_fails_nothing_is_confirmed()
    {
        var door = new OpenDoor(Desk.Group);
        using var pipeline = new Pipeline(new FullStore(store), new PlainInboundFormat(), door, wakeUp, new OutboxRun(chat, door, NullLogger<OutboxRun>.Instance),
            new FarmSetup(Some.Farm(), []), clock, NullLogger<Pipeline>.Instance);
        await pipeline.StartAsync();
        var running = pipeline.RunAsync(CancellationToken.None);
        await pipeline.TakeInAsync([Entry("k1", "Sage had a girl 6:40, 24 lb")]);

        var ending = async () => await running;

        await ending.Should().ThrowAsync<StoreOutcomeUnknownException>("a supervisor starts it anew");
        chat.Taken.Should().BeEmpty();
    }

    private async Task RunAsync(Func<Pipeline, Task> during)
    {
        var door = new OpenDoor(Desk.Group);
        using var pipeline = new Pipeline(store, new PlainInboundFormat(), door, wakeUp, new OutboxRun(chat, door, NullLogger<OutboxRun>.Instance),
            new FarmSetup(Some.Farm(), [Some.Dam("Sage"), Some.Dam("Willow")]), clock, NullLogger<Pipeline>.Instance);
        using var stop = new CancellationTokenSource();
        await pipeline.StartAsync();
        var running = pipeline.RunAsync(stop.Token);
        await during(pipeline);
        await pipeline.IdleAsync();
        await pipeline.LookAsync();
        await stop.CancelAsync();
        await running.ContinueWith(_ => { }, TaskScheduler.Default);
        running.IsFaulted.Should().BeFalse();
    }

    private static InboxEntry Entry(string key, string text) => PlainInboundFormat.Write(Desk.Line(key, text));

    private sealed class TakingChat : IChat
    {
        public int? MostAMinute => 20;

        public List<string> Taken { get; } = [];

        public TaskCompletionSource? Hold { get; set; }

        public async Task<SendResult> SendAsync(Outgoing outgoing, CancellationToken cancellation = default)
        {
            Taken.Add(outgoing.Text);
            await (Hold?.Task ?? Task.CompletedTask);
            return new SendResult.Sent($"sent {outgoing.Number}");
        }
    }

    /// <summary>Takes messages in, and fails at every commit of events.</summary>
    private sealed class FullStore(IHerdStore inner) : IHerdStore
    {
        public Task<bool> TakeInAsync(InboxEntry entry, CancellationToken cancellation = default) => inner.TakeInAsync(entry, cancellation);
        public Task<long> AppendAsync(Commit commit, CancellationToken cancellation = default) => Task.FromException<long>(new StoreOutcomeUnknownException("The disk is full."));
        public Task<ImmutableArray<InboxEntry>> ReadWaitingAsync(CancellationToken cancellation = default) => inner.ReadWaitingAsync(cancellation);
        public Task<ImmutableArray<StoredCommit>> ReadGroupAsync(GroupId group, long afterVersion = 0, CancellationToken cancellation = default) => inner.ReadGroupAsync(group, afterVersion, cancellation);
        public Task<ImmutableArray<StoredCommit>> ReadAllAsync(long afterPosition = 0, int limit = int.MaxValue, CancellationToken cancellation = default) => inner.ReadAllAsync(afterPosition, limit, cancellation);
        public Task<ImmutableArray<GroupId>> ReadGroupsAsync(CancellationToken cancellation = default) => inner.ReadGroupsAsync(cancellation);
        public Task<long> HeadPositionAsync(CancellationToken cancellation = default) => inner.HeadPositionAsync(cancellation);
    }

    private sealed class KeptWakeUp : IWakeUp
    {
        public Instant? At { get; private set; }

        public Task ArmAsync(Instant? at, CancellationToken cancellation = default)
        {
            At = at;
            return Task.CompletedTask;
        }
    }
}

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

        public Task<SendResult> SendAsync(Outgoing outgoing, CancellationToken cancellation = default)
        {
            Taken.Add(outgoing.Text);
            return Task.FromResult<SendResult>(new SendResult.Sent($"sent {outgoing.Number}"));
        }
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

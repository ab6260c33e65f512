using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.App.Outbox;
using HerdBot.App.Ports;
using HerdBot.App.Records;
using HerdBot.Core.Events;
using HerdBot.Host.LiteDb;
using HerdBot.Tests.Support;
using HerdBot.Tests.Support.StoreDisk;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace HerdBot.Tests.App.Messages;

/// <summary>The power goes in the middle of the whole program's work, on a disk that keeps what was not synced in any order.</summary>
public sealed class PowerCutOfTheWholeTests(ITestOutputHelper output)
{
    private const int CutsPerFile = 3;
    private const int MostOperations = 400;
    private static readonly string[] Lines = ["Sage had a girl 6:40, 24 lb", "Sage's baby temp 100.4", "Sage's baby is up", "nursing", "trough is full", "what's open?"];
    private static readonly int Files = LongRun.Of("HERDBOT_CUTS", 5);

    private readonly FakeTimeProvider clock = new(Desk.Dawn.ToDateTimeOffset());
    private int said;

    [Theory]
    [InlineData(nameof(Survival.Prefix))]
    [InlineData(nameof(Survival.Subset))]
    [InlineData(nameof(Survival.Torn))]
    public async Task Nothing_taken_in_is_lost_or_heard_twice_and_every_file_opens(string survival)
    {
        var (cuts, acknowledged) = (0, 0);
        for (ulong seed = 1; seed <= (ulong)Files; seed++)
        {
            var chance = new Chance(seed);
            var disk = new SimulatedDisk(Enum.Parse<Survival>(survival), new Chance(~seed), HerdDatabase.Empty(), []);
            var taken = new List<string>();
            for (var cut = 0; cut < CutsPerFile; cut++, cuts++)
            {
                disk.WorkFor(1 + chance.Below(MostOperations));
                await LiveAsync(disk, chance, taken);
                disk = disk.CutPower();
            }
            acknowledged += taken.Count;
            await FinishAsync(disk, taken);
        }

        acknowledged.Should().BeGreaterThan(cuts);
        output.WriteLine($"{survival}: {cuts} power cuts, {acknowledged} messages acknowledged, 0 lost, 0 twice, 0 files unreadable");
    }

    /// <summary>People write until the store fails.</summary>
    private async Task LiveAsync(SimulatedDisk disk, Chance chance, List<string> taken)
    {
        await using var store = LiteDbHerdStore.Open(disk.Data, disk.Log);
        using var pipeline = New(store);
        using var stop = new CancellationTokenSource();
        var running = Task.CompletedTask;
        try
        {
            await pipeline.StartAsync();
            running = pipeline.RunAsync(stop.Token);
            while (!running.IsCompleted && said < int.MaxValue)
            {
                var entries = Enumerable.Range(0, 1 + chance.Below(3)).Select(_ => PlainInboundFormat.Write(Desk.Line($"k{++said}", Lines[said % Lines.Length]))).ToList();
                await pipeline.TakeInAsync(entries);
                taken.AddRange(entries.Select(entry => entry.Key));
            }
        }
        catch (StoreOutcomeUnknownException)
        {
            // Dark.
        }
        await stop.CancelAsync();
        await running.ContinueWith(_ => { }, TaskScheduler.Default);
    }

    private async Task FinishAsync(SimulatedDisk disk, List<string> taken)
    {
        disk.WorkFor(int.MaxValue);
        await using var store = LiteDbHerdStore.Open(disk.Data, disk.Log);
        using var pipeline = New(store);
        using var stop = new CancellationTokenSource();
        await pipeline.StartAsync();
        var running = pipeline.RunAsync(stop.Token);
        await pipeline.IdleAsync();
        await pipeline.LookAsync();
        await stop.CancelAsync();
        await running.ContinueWith(_ => { }, TaskScheduler.Default);
        running.IsFaulted.Should().BeFalse();
        var heard = (await store.ReadGroupAsync(Desk.Group)).SelectMany(stored => stored.Commit.Events).Select(EventCodec.Read).OfType<HerdEvent.LineHeard>().Select(line => line.Message).ToList();
        heard.Should().OnlyHaveUniqueItems();
        taken.Select(key => $"m {key}").Except(heard).Should().BeEmpty("the program said that it had them");
        (await store.ReadWaitingAsync()).Should().BeEmpty();
    }

    private Pipeline New(IHerdStore store)
    {
        var door = new OpenDoor(Desk.Group);
        return new Pipeline(store, new PlainInboundFormat(), door, new NoWakeUp(), new OutboxRun(new TakingAll(), door, NullLogger<OutboxRun>.Instance),
            new FarmSetup(Some.Farm(), [Some.Dam("Sage")]), clock, NullLogger<Pipeline>.Instance);
    }

    private sealed class NoWakeUp : IWakeUp
    {
        public Task ArmAsync(NodaTime.Instant? at, CancellationToken cancellation = default) => Task.CompletedTask;
    }

    private sealed class TakingAll : IChat
    {
        public int? MostAMinute => null;

        public Task<SendResult> SendAsync(Outgoing outgoing, CancellationToken cancellation = default) => Task.FromResult<SendResult>(new SendResult.Sent($"sent {outgoing.Number}"));
    }
}

using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using HerdBot.App.Messages;
using HerdBot.App.Outbox;
using HerdBot.App.Ports;
using HerdBot.Host.Composition;
using HerdBot.Host.LiteDb;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;

namespace HerdBot.Benchmarks;

/// <summary>
/// Messages through the whole way: taken in durably, read, decided, committed durably, answered. Beside it the limit: the
/// same writer puts the same documents in as many durable writes, and nothing else is done.
/// </summary>
internal static class WholeWayBenchmarks
{
    private const int Messages = 1000;
    private const int WarmUp = 200;
    private const int Rounds = 3;

    public static async Task RunAsync(TextWriter output)
    {
        await WarmUpAsync();
        foreach (var inFlight in new[] { 1, 64 })
        {
            var rounds = new List<(Way Whole, Way Bare)>();
            for (var round = 0; round <= Rounds; round++)
            {
                var folder = Directory.CreateTempSubdirectory("herdbot-benchmark-");
                try
                {
                    var (whole, written) = await WholeAsync(Path.Combine(folder.FullName, "farm.db"), inFlight);
                    rounds.Add((whole, await BareAsync(Path.Combine(folder.FullName, "bare.db"), written, whole.DurableWrites)));
                }
                finally
                {
                    folder.Delete(recursive: true);
                }
            }
            // The first round warms up.
            var (way, bare) = rounds.Skip(1).OrderBy(pair => pair.Bare.Seconds / pair.Whole.Seconds).ElementAt(Rounds / 2);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"whole way, {inFlight} in flight: {way.Messages / way.Seconds:0} messages/s, {(double)way.Documents / way.Messages:0.0} documents in {(double)way.DurableWrites / way.Messages:0.00} durable writes each; the same documents alone: {way.Messages / bare.Seconds:0} messages/s in {(double)bare.DurableWrites / way.Messages:0.00} writes; reached {bare.Seconds / way.Seconds:0%}"));
        }
    }

    /// <summary>A program that has run for a day: the code is compiled for good.</summary>
    private static async Task WarmUpAsync()
    {
        for (var round = 0; round < 4; round++)
        {
            using var pipeline = Pipeline(new InMemoryHerdStore());
            using var stop = new CancellationTokenSource();
            await pipeline.StartAsync();
            var running = pipeline.RunAsync(stop.Token);
            await SendAsync(pipeline, 0, Messages, 1);
            await stop.CancelAsync();
            await running.ContinueWith(_ => { }, TaskScheduler.Default);
        }
    }

    private static Pipeline Pipeline(IHerdStore store)
    {
        var door = new OpenDoor(Yard.Group);
        return new Pipeline(store, new PlainInboundFormat(), door, new NoWakeUp(), new OutboxRun(new YesChat(), door, NullLogger<OutboxRun>.Instance), Yard.Setup, SystemClocks.Real, NullLogger<Pipeline>.Instance);
    }

    private static async Task<(Way Way, IReadOnlyList<object> Written)> WholeAsync(string data, int inFlight)
    {
        await using var disk = LiteDbHerdStore.Open(data);
        var store = new WrittenDown(disk);
        using var pipeline = Pipeline(store);
        using var stop = new CancellationTokenSource();
        await pipeline.StartAsync();
        var running = pipeline.RunAsync(stop.Token);
        await SendAsync(pipeline, 0, WarmUp, inFlight);
        await pipeline.LookAsync();
        var (before, from) = (store.Written.Count, disk.DurableWrites);
        var start = Stopwatch.GetTimestamp();
        await SendAsync(pipeline, WarmUp, Messages, inFlight);
        await pipeline.LookAsync();
        var way = new Way(Messages, store.Written.Count - before, disk.DurableWrites - from, Stopwatch.GetElapsedTime(start).TotalSeconds);
        await stop.CancelAsync();
        await running.ContinueWith(_ => { }, TaskScheduler.Default);
        return (way, [.. store.Written.Skip(before)]);
    }

    private static async Task<Way> BareAsync(string data, IReadOnlyList<object> written, long writes)
    {
        await using var store = LiteDbHerdStore.Open(data);
        var versions = new Dictionary<GroupId, long>();
        var documents = written.Select(one => one is Commit commit ? commit with { ExpectedVersion = Next(versions, commit.Group) } : one).ToList();
        var start = Stopwatch.GetTimestamp();
        foreach (var share in Enumerable.Range(0, (int)writes).Select(n => documents.Skip((int)(documents.Count * n / writes)).Take((int)((documents.Count * (n + 1) / writes) - (documents.Count * n / writes)))))
        {
            await Task.WhenAll(share.Select(one => one is Commit commit ? store.AppendAsync(commit) : (Task)store.TakeInAsync((InboxEntry)one)).ToList());
        }
        return new Way(0, documents.Count, store.DurableWrites, Stopwatch.GetElapsedTime(start).TotalSeconds);
    }

    private static long Next(Dictionary<GroupId, long> versions, GroupId group) =>
        versions[group] = versions.TryGetValue(group, out var version) ? version + 1 : 0;

    private static async Task SendAsync(Pipeline pipeline, int from, int count, int inFlight)
    {
        foreach (var batch in Enumerable.Range(from, count).Chunk(inFlight))
        {
            await pipeline.TakeInAsync([.. batch.Select(n => PlainInboundFormat.Write(Yard.Line(n, Instant.FromDateTimeOffset(SystemClocks.Real.GetUtcNow()))))]);
            await pipeline.IdleAsync();
        }
    }

    private sealed record Way(int Messages, int Documents, long DurableWrites, double Seconds);

    /// <summary>A store that writes down what is written to it.</summary>
    private sealed class WrittenDown(IHerdStore inner) : IHerdStore
    {
        public ConcurrentQueue<object> Written { get; } = [];

        public Task<bool> TakeInAsync(InboxEntry entry, CancellationToken cancellation = default)
        {
            Written.Enqueue(entry);
            return inner.TakeInAsync(entry, cancellation);
        }

        public Task<long> AppendAsync(Commit commit, CancellationToken cancellation = default)
        {
            Written.Enqueue(commit);
            return inner.AppendAsync(commit, cancellation);
        }

        public Task<ImmutableArray<InboxEntry>> ReadWaitingAsync(CancellationToken cancellation = default) => inner.ReadWaitingAsync(cancellation);

        public Task<ImmutableArray<StoredCommit>> ReadGroupAsync(GroupId group, long afterVersion = 0, CancellationToken cancellation = default) => inner.ReadGroupAsync(group, afterVersion, cancellation);

        public Task<ImmutableArray<StoredCommit>> ReadAllAsync(long afterPosition = 0, int limit = int.MaxValue, CancellationToken cancellation = default) => inner.ReadAllAsync(afterPosition, limit, cancellation);

        public Task<ImmutableArray<GroupId>> ReadGroupsAsync(CancellationToken cancellation = default) => inner.ReadGroupsAsync(cancellation);

        public Task<long> HeadPositionAsync(CancellationToken cancellation = default) => inner.HeadPositionAsync(cancellation);
    }

    private sealed class NoWakeUp : IWakeUp
    {
        public Task ArmAsync(Instant? at, CancellationToken cancellation = default) => Task.CompletedTask;
    }

    private sealed class YesChat : IChat
    {
        public int? MostAMinute => null;

        public Task<SendResult> SendAsync(Outgoing outgoing, CancellationToken cancellation = default) => Task.FromResult<SendResult>(new SendResult.Sent($"post {outgoing.Number}"));
    }
}

using System.Diagnostics;
using System.Globalization;
using HerdBot.App.Ports;
using HerdBot.Host.LiteDb;
using LiteDB;
using LiteDB.Engine;
using NodaTime;

namespace HerdBot.Benchmarks;

/// <summary>
/// What durability costs on this disk: commits of the store, beside bare LiteDB inserts of the same documents, which
/// are not durable, and beside the disk's own pace. Fsync is what is measured, so it is timed by the clock.
/// </summary>
public static class StoreBenchmarks
{
    private const int Rounds = 3;
    private const string Data = "{\"kind\":\"weight\",\"animal\":\"juniper\",\"at\":\"2026-04-11T10:40:00Z\",\"value\":24.0,\"unit\":\"lb\",\"by\":\"Ines\"}";
    private static readonly TimeSpan OneRun = TimeSpan.FromSeconds(1);
    private static readonly Instant At = Instant.FromUtc(2026, 4, 11, 10, 40);

    /// <summary>Measures in a folder of its own on the disk that is asked about, and prints.</summary>
    /// <param name="output">Where the numbers go.</param>
    /// <param name="folder">On which disk; the system's folder for temporary files where null.</param>
    public static async Task RunAsync(TextWriter output, string? folder = null)
    {
        var place = Directory.CreateDirectory(Path.Combine(folder ?? Path.GetTempPath(), $"herdbot-bench-{Environment.ProcessId}"));
        var measures = new Measure[]
        {
            new("store, one commit at a time", path => CommitAsync(path, inFlight: 1)),
            new("store, 64 commits in flight", path => CommitAsync(path, inFlight: 64)),
            new("bare LiteDB inserts, not durable", path => Task.FromResult(InsertBare(path))),
            new("bare 8 KB appends with fsync", path => Task.FromResult(AppendBare(path))),
        };
        try
        {
            await RunRoundsAsync(measures, place.FullName);
        }
        finally
        {
            place.Delete(recursive: true);
        }

        Print(output, measures);
    }

    // The first round warms up; the others take turns, so that a slow minute of the disk hits all alike.
    private static async Task RunRoundsAsync(Measure[] measures, string folder)
    {
        for (var round = 0; round <= Rounds; round++)
        {
            for (var n = 0; n < measures.Length; n++)
            {
                var rate = await measures[n].Run(Path.Combine(folder, $"{round}-{n}.db"));
                if (round > 0)
                {
                    measures[n].Rates.Add(rate);
                }
            }
        }
    }

    private static void Print(TextWriter output, Measure[] measures)
    {
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"median of {Rounds} runs of {OneRun.TotalSeconds} s each"));
        foreach (var measure in measures)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{measure.Name,-34} {measure.Median,8:N0} a second"));
        }

        var (single, many, liteDb, disk) = (measures[0].Median, measures[1].Median, measures[2].Median, measures[3].Median);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"one durable commit takes as long as {disk / single:0.0} bare fsyncs"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"durable to bare LiteDB: 1 : {liteDb / single:0.0} one at a time, 1 : {liteDb / many:0.0} with 64 in flight"));
    }

    private static async Task<double> CommitAsync(string path, int inFlight)
    {
        await using var store = LiteDbHerdStore.Open(path);
        var clock = Stopwatch.StartNew();
        var counts = await Task.WhenAll(Enumerable.Range(0, inFlight).Select(n => Task.Run(() => CommitUntilAsync(store, n, clock))));
        return counts.Sum() / clock.Elapsed.TotalSeconds;
    }

    private static async Task<long> CommitUntilAsync(LiteDbHerdStore store, int worker, Stopwatch clock)
    {
        var group = new GroupId($"group {worker}");
        var version = 0L;
        while (clock.Elapsed < OneRun)
        {
            await store.AppendAsync(new Commit(group, version, $"{worker}:{version}", At, [new EventRecord("fact", 1, Data)]));
            version++;
        }

        return version;
    }

    private static double InsertBare(string path)
    {
        using var engine = new LiteEngine(new EngineSettings { Filename = path, Collation = Collation.Binary });
        engine.EnsureIndex("commits", "g", "$.g", unique: false);
        engine.EnsureIndex("commits", "k", "$.k", unique: true);
        var clock = Stopwatch.StartNew();
        var id = 0L;
        while (clock.Elapsed < OneRun)
        {
            id++;
            engine.Insert("commits", [Document(id)], BsonAutoId.Int64);
        }

        return id / clock.Elapsed.TotalSeconds;
    }

    private static BsonDocument Document(long id) => new()
    {
        ["_id"] = id,
        ["g"] = "group 0",
        ["v"] = id,
        ["k"] = $"0:{id - 1}",
        ["at"] = At.ToUnixTimeMilliseconds(),
        ["d"] = $"[{{\"type\":\"fact\",\"version\":1,\"data\":\"{Data.Replace("\"", "\\\"", StringComparison.Ordinal)}\"}}]",
    };

    private static double AppendBare(string path)
    {
        using var file = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0);
        var page = new byte[8192];
        var clock = Stopwatch.StartNew();
        var count = 0;
        while (clock.Elapsed < OneRun)
        {
            file.Write(page);
            file.Flush(flushToDisk: true);
            count++;
        }

        return count / clock.Elapsed.TotalSeconds;
    }

    private sealed record Measure(string Name, Func<string, Task<double>> Run)
    {
        public List<double> Rates { get; } = [];

        public double Median => Rates.Order().ElementAt(Rates.Count / 2);
    }
}

using System.Diagnostics;
using System.Globalization;
using HerdBot.App.Messages;
using HerdBot.App.Outbox;
using HerdBot.App.Ports;
using HerdBot.Core.Calendar;
using HerdBot.Core.Care;
using HerdBot.Core.Herd;
using HerdBot.Host.Composition;
using HerdBot.Host.LiteDb;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;

namespace HerdBot.Benchmarks;

/// <summary>Messages through the whole way: taken in durably, read, decided, committed durably, answered.</summary>
internal static class WholeWayBenchmarks
{
    private const int Messages = 400;

    public static async Task RunAsync(TextWriter output)
    {
        foreach (var inFlight in new[] { 1, 64 })
        {
            var folder = Directory.CreateTempSubdirectory("herdbot-benchmark-");
            try
            {
                var rate = await RateAsync(Path.Combine(folder.FullName, "farm.db"), inFlight);
                output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"whole way, {inFlight} in flight: {rate:0} messages/s, each durable twice (inbox, commit), its answer once more"));
            }
            finally
            {
                folder.Delete(recursive: true);
            }
        }
    }

    private static async Task<double> RateAsync(string data, int inFlight)
    {
        await using var store = LiteDbHerdStore.Open(data);
        var door = new OpenDoor(Yard.Group);
        using var pipeline = new Pipeline(store, new PlainInboundFormat(), door, new NoWakeUp(), new OutboxRun(new YesChat(), door, NullLogger<OutboxRun>.Instance), Yard.Setup, SystemClocks.Real, NullLogger<Pipeline>.Instance);
        using var stop = new CancellationTokenSource();
        await pipeline.StartAsync();
        var running = pipeline.RunAsync(stop.Token);
        await SendAsync(pipeline, 0, 32, inFlight);
        var start = Stopwatch.GetTimestamp();
        await SendAsync(pipeline, 32, Messages, inFlight);
        var rate = Messages / Stopwatch.GetElapsedTime(start).TotalSeconds;
        await stop.CancelAsync();
        await running.ContinueWith(_ => { }, TaskScheduler.Default);
        return rate;
    }

    private static async Task SendAsync(Pipeline pipeline, int from, int count, int inFlight)
    {
        foreach (var batch in Enumerable.Range(from, count).Chunk(inFlight))
        {
            await Task.WhenAll(batch.Select(n => pipeline.TakeInAsync([PlainInboundFormat.Write(Yard.Line(n, Instant.FromDateTimeOffset(SystemClocks.Real.GetUtcNow())))])));
            await pipeline.IdleAsync();
        }
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

/// <summary>An invented farm of twelve dams, four of them with newborns.</summary>
internal static class Yard
{
    private static readonly string[] Dams = ["Clementine", "Bramblewick", "Dandelion", "Mabel", "Saffron", "Tansy", "Nutmeg", "Quill", "Sorrel", "Thistle", "Marigold", "Cobweb"];

    private static readonly string[] Lines = ["Clementine had a girl, 24 lb", "temp 100.4", "Clementine's baby is up", "Clementine's baby nursing", "cord dipped on Clementine's baby", "how is Clementine's baby?", "nice sunset tonight", "Clementine's baby 99.8F"];

    public static GroupId Group { get; } = new("farm");

    public static Farm Farm { get; } = new(new FarmClock(DateTimeZoneProviders.Tzdb["America/Denver"]),
        new[] { Species.Llama, Species.Alpaca }.Aggregate(System.Collections.Immutable.ImmutableDictionary<Species, CareTable>.Empty, (tables, species) => tables.Add(species, CareTable.BuiltIn(species))))
    {
        People = ["Marisol", "Teo"],
    };

    public static FarmSetup Setup { get; } = new(Farm, [.. Dams.Select(name => Roster.NewAnimal(name, HerdRole.Dam, Species.Llama) with { State = HerdEntryState.Due })]);

    public static Inbound Line(int n, Instant at) =>
        new Inbound.Line($"line {n}", Group, new Person("name:Teo", "Teo"), at, $"message {n}", Lines[n % Lines.Length], null);
}

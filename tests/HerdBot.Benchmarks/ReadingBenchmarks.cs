using System.Globalization;
using HerdBot.App.Records;
using HerdBot.Core.Reading;

namespace HerdBot.Benchmarks;

/// <summary>
/// How long it takes to read a whole message, facts and all, in a herd of 300; beside it, how long a date reader of other
/// hands takes to search the same messages for a time alone.
/// </summary>
internal static class ReadingBenchmarks
{
    private const int WarmUp = 200;
    private const int Rounds = 60;
    private const int Runs = 3;

    public static async Task RunAsync(TextWriter output)
    {
        var lines = Corpus();
        output.WriteLine($"reading {lines.Count} messages, {Rounds} times each after {WarmUp} times to warm up, in a herd of {BigHerd.Size}; 'steady' takes each message's median:");
        List<Timings> ours = [], theirs = [];
        for (var run = 0; run < Runs; run++)
        {
            ours.Add(Ours(lines, out var kilobytes));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  this reader         {ours[^1]}, {kilobytes:0.0} KB allocated a message"));
            if (await ChronoNode.MeasureAsync(CorpusPath, WarmUp, Rounds, output) is { } timings)
            {
                theirs.Add(timings);
                output.WriteLine($"  chrono-node 2.10.3  {timings}");
            }
        }
        if (theirs.Count > 0)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  this reader's time is {Median(ours, one => one.Mean) / Median(theirs, one => one.Mean):0.00} of chrono-node's search (mean), {Median(ours, one => one.SteadyMean) / Median(theirs, one => one.SteadyMean):0.00} (steady mean): medians of {Runs} runs"));
        }
    }

    /// <summary>The corpus, each message in a herd of <see cref="BigHerd.Size"/>.</summary>
    public static List<CorpusLine> Corpus() =>
        [.. File.ReadLines(CorpusPath).Select(line => CorpusLine.Parse(line, out _, out _)).OfType<CorpusLine>().Select(line => line with { Context = BigHerd.Around(line.Context) })];

    private static string CorpusPath => Path.Combine(AppContext.BaseDirectory, "Samples", "open.jsonl");

    private static Timings Ours(List<CorpusLine> lines, out double kilobytes)
    {
        for (var round = 0; round < WarmUp; round++)
        {
            lines.ForEach(line => Reader.Read(line.Text, line.Context));
        }
        var before = GC.GetAllocatedBytesForCurrentThread();
        var timings = Timings.Of(lines, Rounds, line => Reader.Read(line.Text, line.Context));
        kilobytes = (GC.GetAllocatedBytesForCurrentThread() - before) / 1024.0 / (lines.Count * Rounds);
        return timings;
    }

    private static double Median(List<Timings> runs, Func<Timings, double> figure) => runs.Select(figure).Order().ElementAt(runs.Count / 2);
}

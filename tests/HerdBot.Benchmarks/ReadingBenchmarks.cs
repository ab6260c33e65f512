using System.Globalization;
using HerdBot.App.Records;
using HerdBot.Core.Reading;

namespace HerdBot.Benchmarks;

/// <summary>How long it takes to read one message: the whole reading corpus, over and over.</summary>
internal static class ReadingBenchmarks
{
    public static async Task RunAsync(TextWriter output)
    {
        var path = Path.Combine(AppContext.BaseDirectory, "Samples", "open.jsonl");
        var lines = (await File.ReadAllLinesAsync(path)).Select(line => CorpusLine.Parse(line, out _, out _)).OfType<CorpusLine>().ToList();
        for (var round = 0; round < 40; round++)
        {
            lines.ForEach(line => Reader.Read(line.Text, line.Context));
        }
        var next = 0;
        var taken = Watch.Microseconds(0, lines.Count * 40, () => Reader.Read(lines[next % lines.Count].Text, lines[next++ % lines.Count].Context));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"one message of {lines.Count}: median {Watch.At(taken, 0.5):0.0} µs, mean {taken.Average():0.0} µs, 99th percentile {Watch.At(taken, 0.99):0.0} µs"));
    }
}

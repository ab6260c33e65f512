using System.Diagnostics;
using System.Globalization;

namespace HerdBot.Benchmarks;

/// <summary>Microseconds that each of some pieces of work took, several times over.</summary>
/// <param name="Pieces">A row for each piece: what it took in each round.</param>
internal sealed record Timings(double[][] Pieces)
{
    private readonly double[] all = [.. Pieces.SelectMany(rounds => rounds).Order()];
    private readonly double[] steady = [.. Pieces.Select(rounds => rounds.Order().ElementAt(rounds.Length / 2)).Order()];

    /// <summary>The mean of all.</summary>
    public double Mean => all.Average();

    /// <summary>The mean of what each piece takes in its median round: what else the machine does hardly counts.</summary>
    public double SteadyMean => steady.Average();

    /// <summary>Times each piece of work in turn, and all of them again in each round.</summary>
    public static Timings Of<T>(IReadOnlyList<T> pieces, int rounds, Action<T> work)
    {
        var taken = pieces.Select(_ => new double[rounds]).ToArray();
        for (var round = 0; round < rounds; round++)
        {
            for (var n = 0; n < pieces.Count; n++)
            {
                var start = Stopwatch.GetTimestamp();
                work(pieces[n]);
                taken[n][round] = Stopwatch.GetElapsedTime(start).TotalMicroseconds;
            }
        }
        return new(taken);
    }

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"mean {Mean:0.0} µs, median {Watch.At(all, 0.5):0.0}, 99th percentile {Watch.At(all, 0.99):0.0}; steady mean {SteadyMean:0.0}, median {Watch.At(steady, 0.5):0.0}, 99th percentile {Watch.At(steady, 0.99):0.0}");
}

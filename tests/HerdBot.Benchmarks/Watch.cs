using System.Diagnostics;

namespace HerdBot.Benchmarks;

/// <summary>Times a piece of work many times over, after a warm-up.</summary>
internal static class Watch
{
    /// <summary>Microseconds of each run, sorted.</summary>
    public static double[] Microseconds(int warmUp, int runs, Action work)
    {
        for (var n = 0; n < warmUp; n++)
        {
            work();
        }
        var taken = new double[runs];
        for (var n = 0; n < runs; n++)
        {
            var start = Stopwatch.GetTimestamp();
            work();
            taken[n] = Stopwatch.GetElapsedTime(start).TotalMicroseconds;
        }
        Array.Sort(taken);
        return taken;
    }

    /// <summary>The value below which a share of the sorted values lies.</summary>
    public static double At(double[] sorted, double share) => sorted[Math.Min(sorted.Length - 1, (int)(sorted.Length * share))];
}

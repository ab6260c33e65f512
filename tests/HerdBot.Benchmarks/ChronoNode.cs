using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace HerdBot.Benchmarks;

/// <summary>npm's chrono-node, a general-purpose date reader, timed by a script of tests/witnesses in a process of its own.</summary>
internal static class ChronoNode
{
    private static bool told;

    /// <summary>What its search for a time takes for each message of a corpus; null, and a line that says why, where it cannot be run.</summary>
    public static async Task<Timings?> MeasureAsync(string corpus, int warmUp, int rounds, TextWriter output)
    {
        if (Witnesses() is not { } folder)
        {
            return Absent(output, "tests/witnesses is not here");
        }
        if (!Directory.Exists(Path.Combine(folder, "node_modules", "chrono-node")))
        {
            return Absent(output, "it is not installed (npm ci in tests/witnesses, or run .ci/speed)");
        }
        try
        {
            var start = new ProcessStartInfo("node", [Path.Combine(folder, "chrono-times.mjs"), corpus, warmUp.ToString(CultureInfo.InvariantCulture), rounds.ToString(CultureInfo.InvariantCulture)]) { RedirectStandardOutput = true };
            using var node = Process.Start(start)!;
            var timings = await JsonSerializer.DeserializeAsync<double[][]>(node.StandardOutput.BaseStream);
            await node.WaitForExitAsync();
            return node.ExitCode == 0 && timings is not null ? new(timings) : Absent(output, $"its script ended with {node.ExitCode}");
        }
        catch (Win32Exception)
        {
            return Absent(output, "node is not here");
        }
    }

    private static Timings? Absent(TextWriter output, string why)
    {
        if (!told)
        {
            output.WriteLine($"  chrono-node 2.10.3  not measured: {why}");
        }
        told = true;
        return null;
    }

    private static string? Witnesses()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var witnesses = Path.Combine(folder.FullName, "tests", "witnesses");
            if (File.Exists(Path.Combine(witnesses, "package.json")))
            {
                return witnesses;
            }
        }
        return null;
    }
}

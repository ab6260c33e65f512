namespace HerdBot.Tests.Demo;

/// <summary>The chat that README.md shows: a fenced block between two comments.</summary>
internal static class ChatBlock
{
    private const string Begin = "<!-- chat -->";
    private const string End = "<!-- /chat -->";

    /// <summary>Its lines; none where there is no such block.</summary>
    public static IReadOnlyList<string> Of(string text)
    {
        var lines = text.Split('\n').Select(line => line.TrimEnd()).ToList();
        var (begin, end) = (lines.IndexOf(Begin), lines.IndexOf(End));
        return begin < 0 || end < begin ? [] : [.. lines[(begin + 1)..end].Where(line => line.Length > 0 && !line.StartsWith("```", StringComparison.Ordinal))];
    }

    /// <summary>The first line that does not come after those before it in what was printed; null where all do. "…" stands for lines left out.</summary>
    public static string? FirstMissing(IEnumerable<string> block, IEnumerable<string> printed)
    {
        using var rest = printed.Select(line => line.TrimEnd()).GetEnumerator();
        return block.Where(line => line.Trim() != "…").FirstOrDefault(line => !Found(rest, line));
    }

    private static bool Found(IEnumerator<string> rest, string line)
    {
        while (rest.MoveNext())
        {
            if (rest.Current == line)
            {
                return true;
            }
        }
        return false;
    }
}

namespace HerdBot.Host.Telegram;

/// <summary>Cuts a text that is too long for one message: at line ends, else between words, else anywhere.</summary>
public static class TextParts
{
    /// <summary>Telegram's limit. It counts characters; we count UTF-16 units, of which there are never fewer.</summary>
    public const int Limit = 4096;

    /// <summary>The parts in order, none of them blank.</summary>
    public static IReadOnlyList<string> Of(string text, int limit = Limit)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentOutOfRangeException.ThrowIfLessThan(limit, 2);
        var parts = new List<string>();
        var rest = text;
        while (rest.Length > limit)
        {
            var end = Cut(rest, limit);
            Add(parts, rest[..end]);
            rest = rest[end..].TrimStart(' ', '\n');
        }
        Add(parts, rest);
        return parts;
    }

    private static void Add(List<string> parts, string part)
    {
        if (!string.IsNullOrWhiteSpace(part))
            parts.Add(part.TrimEnd());
    }

    private static int Cut(string text, int limit)
    {
        var line = text.LastIndexOf('\n', limit);
        if (line > 0)
            return line;
        var word = text.LastIndexOf(' ', limit);
        if (word > 0)
            return word;
        return char.IsHighSurrogate(text[limit - 1]) ? limit - 1 : limit;
    }
}

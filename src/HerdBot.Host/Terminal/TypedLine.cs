using System.Globalization;

namespace HerdBot.Host.Terminal;

/// <summary>What a line typed into the terminal asks for. A closed set.</summary>
/// <param name="By">Who speaks, by name.</param>
internal abstract record TypedLine(string By)
{
    private const int LongestName = 30;

    /// <summary>Something to pass on.</summary>
    public sealed record Said(string By, string Text) : TypedLine(By);

    /// <summary>A press on the button of a number.</summary>
    public sealed record Tapped(string By, string Presser, int Number) : TypedLine(By);

    /// <summary>A name alone: that person speaks from now on.</summary>
    public sealed record Named(string By) : TypedLine(By);

    /// <summary>What the farm's clock shows.</summary>
    public sealed record Time(string By) : TypedLine(By);

    /// <summary>How to use the terminal.</summary>
    public sealed record Help(string By) : TypedLine(By);

    /// <summary>The end.</summary>
    public sealed record Quit(string By) : TypedLine(By);

    /// <summary>Nothing was typed.</summary>
    public sealed record Nothing(string By) : TypedLine(By);

    /// <summary>A press that does not say which.</summary>
    public sealed record Unclear(string By) : TypedLine(By);

    /// <summary>Reads a line.</summary>
    /// <param name="line">As it was typed.</param>
    /// <param name="last">Who spoke last.</param>
    /// <param name="people">Whose names are known; a new one starts with a capital letter or no letter at all.</param>
    /// <param name="animals">Names that are the herd's: nobody speaks by them.</param>
    public static TypedLine Read(string line, string last, IReadOnlyCollection<string> people, IReadOnlyCollection<string> animals)
    {
        var (name, text) = Split(line.Trim(), people, animals);
        var by = name ?? last;
        if (text.Length == 0)
        {
            return name is null ? new Nothing(by) : new Named(by);
        }
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words[0].ToUpperInvariant() switch
        {
            "/QUIT" when words.Length == 1 => new Quit(by),
            "/TIME" when words.Length == 1 => new Time(by),
            "/HELP" when words.Length == 1 => new Help(by),
            "/TAP" => Tap(by, words, people),
            _ => new Said(by, text),
        };
    }

    private static TypedLine Tap(string by, string[] words, IReadOnlyCollection<string> people) => words switch
    {
        [_, var number] when Button(number) is { } pressed => new Tapped(by, by, pressed),
        [_, var number, var @as, .. var name] when Button(number) is { } pressed && name.Length > 0 && @as.Equals("as", StringComparison.OrdinalIgnoreCase)
            => new Tapped(by, Known(string.Join(' ', name), people) ?? string.Join(' ', name), pressed),
        _ => new Unclear(by),
    };

    private static int? Button(string number) =>
        int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var pressed) ? pressed : null;

    private static (string? Name, string Text) Split(string line, IReadOnlyCollection<string> people, IReadOnlyCollection<string> animals)
    {
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        if (colon < 1)
        {
            return (null, line);
        }
        var (name, text) = (line[..colon].Trim(), line[(colon + 1)..]);
        if (Known(name, people) is { } known)
        {
            return (known, text.Trim());
        }
        return IsNewName(name) && Known(name, animals) is null && (text.Length == 0 || text[0] == ' ') ? (name, text.Trim()) : (null, line);
    }

    private static bool IsNewName(string name) =>
        name.Length is > 0 and <= LongestName && !char.IsLower(name[0]) && !char.IsDigit(name[0]) && name[0] != '/' && name.Any(char.IsLetter) && !name.Any(char.IsDigit);

    private static string? Known(string name, IReadOnlyCollection<string> names) =>
        names.FirstOrDefault(known => known.Equals(name, StringComparison.OrdinalIgnoreCase));
}

using Spectre.Console;

namespace HerdBot.Host.Terminal;

/// <summary>Some words in one style.</summary>
internal readonly record struct Ink(string Text, Style Style);

/// <summary>
/// Where the chat is written, line by line, above what is being typed. Words are only ever words: no character of them
/// is taken for markup or steers the terminal. Safe for several threads.
/// </summary>
/// <param name="console">The terminal, or a file.</param>
/// <param name="folds">Whether lines are folded to the terminal's width.</param>
internal sealed class Paper(IAnsiConsole console, bool folds)
{
    private const string Wipe = "\r\u001b[2K";
    private const int Narrowest = 24;
    private readonly Lock pen = new();
    private IReadOnlyList<Ink> typed = [];

    /// <summary>For a file or a pipe: plain text.</summary>
    /// <param name="output">Where to.</param>
    /// <param name="width">The columns to fold to; null where a line stays a line.</param>
    public static Paper Plain(TextWriter output, int? width = null)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = AnsiSupport.No,
            ColorSystem = ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(output),
        });
        console.Profile.Width = width ?? int.MaxValue / 2;
        return new Paper(console, folds: width is not null);
    }

    /// <summary>Writes lines.</summary>
    /// <param name="margin">What stands before the first line; the others are indented by as much.</param>
    /// <param name="text">The lines, parted by line feeds.</param>
    /// <param name="style">The style of the text.</param>
    public void Write(IReadOnlyList<Ink> margin, string text, Style style)
    {
        var indent = margin.Sum(ink => ink.Text.Length);
        var width = folds ? Math.Max(Narrowest, console.Profile.Width - indent - 1) : int.MaxValue;
        var lines = text.Split('\n').SelectMany(line => Fold(Clean(line), width)).ToList();
        lock (pen)
        {
            Lift();
            for (var number = 0; number < lines.Count; number++)
            {
                WriteLine([.. number == 0 ? margin : [new Ink(new string(' ', indent), Style.Plain)], new Ink(lines[number], style)]);
            }
            Lay();
        }
    }

    /// <summary>Shows what is being typed below all else, in place of what was shown before; nothing where it is empty.</summary>
    public void Type(params IReadOnlyList<Ink> inks)
    {
        lock (pen)
        {
            Lift();
            typed = inks;
            Lay();
        }
    }

    /// <summary>The columns there are.</summary>
    public int Width => console.Profile.Width;

    /// <summary>Words as they may be shown: what would steer a terminal is a gap.</summary>
    public static string Clean(string text) => string.Concat(text.Select(letter => char.IsControl(letter) ? ' ' : letter));

    private void Lift()
    {
        if (typed.Count > 0)
        {
            console.Write(new ControlCode(Wipe));
        }
    }

    private void Lay()
    {
        foreach (var ink in typed)
        {
            Put(ink);
        }
    }

    private void WriteLine(IReadOnlyList<Ink> inks)
    {
        var last = inks.ToList().FindLastIndex(ink => ink.Text.Trim().Length > 0);
        for (var number = 0; number <= last; number++)
        {
            Put(number == last ? inks[number] with { Text = inks[number].Text.TrimEnd() } : inks[number]);
        }
        console.WriteLine();
    }

    private void Put(Ink ink)
    {
        if (ink.Text.Length > 0)
        {
            console.Write(new Text(Clean(ink.Text), ink.Style));
        }
    }

    private static IEnumerable<string> Fold(string line, int width)
    {
        while (line.Length > width)
        {
            var gap = line.LastIndexOf(' ', width);
            var cut = gap > 0 ? gap : width;
            yield return line[..cut];
            line = line[cut..].TrimStart();
        }
        yield return line;
    }
}

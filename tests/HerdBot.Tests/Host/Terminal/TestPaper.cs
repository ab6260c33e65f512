using System.Text;
using HerdBot.Host.Terminal;
using Spectre.Console;

namespace HerdBot.Tests.Host.Terminal;

/// <summary>Paper to look at what was written on it.</summary>
internal sealed class TestPaper
{
    private readonly StringBuilder _written = new();

    private TestPaper(Func<TextWriter, Paper> make) => Paper = make(TextWriter.Synchronized(new StringWriter(_written)));

    public Paper Paper { get; }

    public string Text => _written.ToString();

    public string[] Lines => Text.TrimEnd('\n').Split('\n');

    public static TestPaper Plain() => new(output => Paper.Plain(output));

    public static TestPaper Terminal(int width) => new(output =>
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Ansi = AnsiSupport.Yes, ColorSystem = ColorSystemSupport.EightBit, Out = new AnsiConsoleOutput(output) });
        console.Profile.Width = width;
        return new Paper(console, folds: true);
    });
}

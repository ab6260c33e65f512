using HerdBot.Core.Herd;
using Spectre.Console;

namespace HerdBot.Host.Terminal;

/// <summary>The terminal this program sits at, or the pipes in its place.</summary>
/// <param name="Paper">Where to write.</param>
/// <param name="Lines">What is typed.</param>
/// <param name="Interactive">Whether somebody sits there: a screen to read from and keys to type on.</param>
internal sealed record TerminalSeat(Paper Paper, ITypedLines Lines, bool Interactive)
{
    /// <summary>Takes the seat.</summary>
    /// <param name="farm">The farm.</param>
    /// <param name="pipeWidth">The columns to fold to where the output is no terminal; null where a line stays a line.</param>
    public static TerminalSeat Take(Farm farm, int? pipeWidth = null)
    {
        if (Console.IsOutputRedirected)
        {
            return new TerminalSeat(Paper.Plain(new StreamWriter(Console.OpenStandardOutput()) { AutoFlush = true }, pipeWidth), new ReaderLines(Console.In), false);
        }
        var console = AnsiConsole.Create(new AnsiConsoleSettings());
        var paper = new Paper(console, folds: true);
        return Console.IsInputRedirected || !console.Profile.Capabilities.Ansi
            ? new TerminalSeat(paper, new ReaderLines(Console.In), false)
            : new TerminalSeat(paper, new KeyLines(paper, farm, KeyLines.Keyboard()), true);
    }
}

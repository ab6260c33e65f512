using System.CommandLine;
using HerdBot.Host.Composition;
using HerdBot.Host.Rehearsal;
using HerdBot.Host.Terminal;

namespace HerdBot.Demo;

/// <summary>Plays a night on the made-up farm, then hands the keyboard over.</summary>
internal static class DemoCommand
{
    private const string Transcript = "junipers-night.txt";
    private const int HandedOverSpeed = 60;
    private const int FileWidth = 100;
    private const string Opening = "A night on a made-up farm, played through the whole program on a clock that jumps.";

    private const string HandOver = """

        Now it is your turn: same farm, same data, and the clock goes on, a minute in a second.
        Write as Ines, or 'Wade: temp 100.4'. /tap 1 presses a button, /help explains, /quit ends.
        """;

    public static RootCommand Create()
    {
        var fast = new Option<bool>("--fast") { Description = "Plays without pauses for reading, and ends." };
        var transcript = new Option<string?>("--transcript") { HelpName = "FILE", Description = "Writes what is shown into this file, as plain text, and ends." };
        var command = new RootCommand("Plays a night on a made-up farm, then hands the keyboard over.") { fast, transcript };
        command.SetAction((parsed, stop) => RunAsync(parsed.GetValue(fast), parsed.GetValue(transcript), parsed.InvocationConfiguration.Error, stop));
        return command;
    }

    /// <summary>Plays the night.</summary>
    /// <param name="screen">Where it is seen.</param>
    /// <param name="data">The data file; it must not exist.</param>
    /// <param name="wall">The clock that people read by; null where nobody reads along.</param>
    /// <param name="faults">Sentences on what the transcript asks for and cannot be done.</param>
    /// <param name="stop">Ends it early.</param>
    public static async Task PlayAsync(ChatScreen screen, string data, TimeProvider? wall, TextWriter faults, CancellationToken stop)
    {
        screen.Announce(Opening);
        await RehearsalRun.PlayAsync(DemoScript.Load(Transcript), data, TextWriter.Null, faults, new DemoStage(screen, wall, stop));
    }

    /// <summary>A screen that is a file.</summary>
    public static ChatScreen FileScreen(TextWriter output) => new(Paper.Plain(output, FileWidth), TryFarm.Setup.Farm);

    private static async Task<int> RunAsync(bool fast, string? transcript, TextWriter error, CancellationToken stop)
    {
        var folder = Directory.CreateTempSubdirectory("herdbot-demo-");
        var data = Path.Combine(folder.FullName, "farm.db");
        try
        {
            return transcript is null ? await ShowAsync(fast, data, error, stop) : await WriteAsync(transcript, data, error, stop);
        }
        catch (OperationCanceledException)
        {
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task<int> ShowAsync(bool fast, string data, TextWriter error, CancellationToken stop)
    {
        var farm = TryFarm.Setup.Farm;
        var seat = TerminalSeat.Take(farm, FileWidth);
        var screen = new ChatScreen(seat.Paper, farm);
        var watched = seat.Interactive && !fast;
        await PlayAsync(screen, data, watched ? SystemClocks.Real : null, error, stop);
        var turn = new TryStart(TryFarm.Setup, data, HandedOverSpeed, DemoScript.Load(Transcript).Until, HandOver);
        return !watched || await TryRun.RunAsync(turn, SystemClocks.Real, screen, seat.Lines, stop) ? 0 : 1;
    }

    private static async Task<int> WriteAsync(string transcript, string data, TextWriter error, CancellationToken stop)
    {
        try
        {
            await using var output = new StreamWriter(transcript);
            await PlayAsync(FileScreen(output), data, wall: null, error, stop);
            return 0;
        }
        catch (Exception odd) when (odd is IOException or UnauthorizedAccessException)
        {
            await error.WriteLineAsync($"The file '{transcript}' cannot be written: {odd.Message} Name another.");
            return 2;
        }
    }
}

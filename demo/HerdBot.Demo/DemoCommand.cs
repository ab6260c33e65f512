using System.CommandLine;
using HerdBot.Host.Composition;
using HerdBot.Host.Rehearsal;
using HerdBot.Host.Terminal;

namespace HerdBot.Demo;

/// <summary>Plays a night on a made-up farm, then hands the keyboard over.</summary>
internal static class DemoCommand
{
    private const string Transcript = "junipers-night.txt";
    private const int HandedOverSpeed = 60;

    private const string Opening = """
        A night on a made-up farm, played through the whole program on a clock that jumps.
        """;

    private const string HandOver = """

        Now it is your turn: same farm, same data, and the clock goes on, a minute in a second.
        Write as Ines, or 'Wade: temp 100.4'. /tap 1 presses a button, /help explains, /quit ends.
        """;

    public static RootCommand Create()
    {
        var fast = new Option<bool>("--fast") { Description = "Plays without pauses for reading and ends." };
        var transcript = new Option<string?>("--transcript") { HelpName = "FILE", Description = "Writes what is shown into this file, as plain text, and ends." };
        var command = new RootCommand("Plays a night on a made-up farm, then hands the keyboard over.") { fast, transcript };
        command.SetAction(async (parsed, stop) => await RunAsync(parsed.GetValue(fast), parsed.GetValue(transcript), stop));
        return command;
    }

    /// <summary>Plays the night onto some paper.</summary>
    /// <param name="paper">Where to.</param>
    /// <param name="data">The data file; it must not exist.</param>
    /// <param name="wall">The clock that people read by; null where nobody reads along.</param>
    /// <returns>The screen, and where the farm's clock stands.</returns>
    public static async Task<ChatScreen> PlayAsync(Paper paper, string data, TimeProvider? wall)
    {
        var script = DemoScript.Load(Transcript);
        var screen = new ChatScreen(paper, script.Setup.Farm);
        screen.Announce(Opening);
        await RehearsalRun.PlayAsync(script, data, TextWriter.Null, Console.Error, new DemoStage(screen, wall));
        return screen;
    }

    private static async Task<int> RunAsync(bool fast, string? transcript, CancellationToken stop)
    {
        var folder = Directory.CreateTempSubdirectory("herdbot-demo-");
        var data = Path.Combine(folder.FullName, "farm.db");
        try
        {
            if (transcript is not null)
            {
                await using var output = new StreamWriter(transcript);
                await PlayAsync(Paper.Plain(output), data, wall: null);
                return 0;
            }
            var seat = TerminalSeat.Take(TryFarm.Setup.Farm);
            var screen = await PlayAsync(seat.Paper, data, fast || !seat.Interactive ? null : SystemClocks.Real).WaitAsync(stop);
            return fast || !seat.Interactive || await TryRun.RunAsync(new TryStart(TryFarm.Setup, data, HandedOverSpeed, DemoScript.Load(Transcript).Until, HandOver), SystemClocks.Real, screen, seat.Lines, stop) ? 0 : 1;
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
}

using System.CommandLine;
using System.Globalization;
using HerdBot.App.Messages;
using HerdBot.Core.Herd;
using HerdBot.Host.Composition;
using HerdBot.Host.LiteDb;
using HerdBot.Host.Terminal;
using NodaTime.Extensions;

namespace HerdBot.Host.Commands;

/// <summary>The verb "try".</summary>
public static class TryCommand
{
    private const int Fastest = 3600;

    public static Command Create()
    {
        var data = new Option<string?>("--data") { HelpName = "FILE", Description = "Keeps the chat in this data file and goes on with it next time. Without it nothing is kept." };
        var speed = new Option<string>("--speed") { HelpName = "N", Description = "How fast the farm's clock runs, 1 to 3600: with 60 a minute passes in a second.", DefaultValueFactory = _ => "1" };
        var command = new Command("try", "A chat in this terminal on a made-up farm: no account, no token, no network.") { data, speed };
        command.SetAction(async (parsed, cancellation) => await RunAsync(parsed.GetValue(data), parsed.GetValue(speed)!, cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string? data, string speed, CancellationToken stop)
    {
        if (!int.TryParse(speed, NumberStyles.None, CultureInfo.InvariantCulture, out var times) || times is < 1 or > Fastest)
        {
            await Console.Error.WriteLineAsync($"--speed is '{speed}'; it must be a whole number from 1 to 3600, like --speed 60.");
            return 2;
        }
        var folder = data is null ? Directory.CreateTempSubdirectory("herdbot-try-") : null;
        try
        {
            var file = data ?? Path.Combine(folder!.FullName, "farm.db");
            return await RunAsync(new TryStart(TryFarm.Setup, file, times, SystemClocks.Real.GetCurrentInstant(), Welcome(TryFarm.Setup)), stop);
        }
        catch (DataFileException odd)
        {
            await Console.Error.WriteLineAsync(odd.Message);
            return 2;
        }
        finally
        {
            folder?.Delete(recursive: true);
        }
    }

    private static async Task<int> RunAsync(TryStart start, CancellationToken stop)
    {
        var seat = TerminalSeat.Take(start.Setup.Farm);
        if (await TryRun.RunAsync(start, SystemClocks.Real, new ChatScreen(seat.Paper, start.Setup.Farm), seat.Lines, stop))
        {
            return 0;
        }
        await Console.Error.WriteLineAsync($"HerdBot had to stop: the data file {start.Data} could not be written. Look whether the disk is full, and start again.");
        return 1;
    }

    private static string Welcome(FarmSetup setup)
    {
        var people = setup.Farm.People;
        var dams = setup.Herd.Where(animal => animal.Role == HerdRole.Dam).Select(animal => animal.Name).ToList();
        return $"""
            A made-up farm: {string.Join(", ", people.SkipLast(1))} and {people[^1]}; the dams {string.Join(", ", dams.SkipLast(1))} and {dams[^1]}.
            Write as you would in the group: '{people[1]}: {dams[0]} had a girl 5:10, 24 lb'. /help explains, /quit ends.
            """;
    }
}

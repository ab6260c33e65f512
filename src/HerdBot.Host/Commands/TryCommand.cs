using System.CommandLine;
using System.Globalization;
using HerdBot.App.Messages;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using HerdBot.Core.Wording;
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
        var lang = new Option<string>("--lang") { HelpName = "en|es", Description = "The farm's language.", DefaultValueFactory = _ => "en" }.AcceptOnlyFromAmong("en", "es");
        var command = new Command("try", "A chat in this terminal on a made-up farm: no account, no token, no network.") { data, speed, lang };
        command.SetAction(async (parsed, cancellation) => await RunAsync(parsed.GetValue(data), parsed.GetValue(speed)!, TryFarm.In(parsed.GetValue(lang) == "es" ? Language.Spanish : Language.English), parsed.InvocationConfiguration.Error, cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string? data, string speed, FarmSetup setup, TextWriter error, CancellationToken stop)
    {
        if (!int.TryParse(speed, NumberStyles.None, CultureInfo.InvariantCulture, out var times) || times is < 1 or > Fastest)
        {
            await error.WriteLineAsync($"--speed is '{speed}'; it must be a whole number from 1 to 3600, like --speed 60.");
            return 2;
        }
        var folder = data is null ? Directory.CreateTempSubdirectory("herdbot-try-") : null;
        try
        {
            var file = data ?? Path.Combine(folder!.FullName, "farm.db");
            return await RunAsync(new TryStart(setup, file, times, SystemClocks.Real.GetCurrentInstant(), Welcome(setup)), error, stop);
        }
        catch (DataFileException odd)
        {
            await error.WriteLineAsync(odd.Message);
            return 2;
        }
        finally
        {
            folder?.Delete(recursive: true);
        }
    }

    private static async Task<int> RunAsync(TryStart start, TextWriter error, CancellationToken stop)
    {
        var seat = TerminalSeat.Take(start.Setup.Farm);
        if (await TryRun.RunAsync(start, SystemClocks.Real, new ChatScreen(seat.Paper, start.Setup.Farm), seat.Lines, stop))
        {
            return 0;
        }
        await error.WriteLineAsync($"HerdBot had to stop: the data file {start.Data} could not be written. Look whether the disk is full, and start again.");
        return 1;
    }

    private static string Welcome(FarmSetup setup)
    {
        var speaker = new Speaker(setup.Farm, SystemClocks.Real.GetCurrentInstant());
        var dams = setup.Herd.Where(animal => animal.Role == HerdRole.Dam).Select(animal => animal.Name).ToList();
        return speaker.Phrases.Say("try.welcome", ("people", speaker.List(setup.Farm.People)), ("dams", speaker.List(dams)), ("by", setup.Farm.People[1]), ("dam", dams[0]));
    }
}

using System.CommandLine;
using HerdBot.App.Access;
using HerdBot.App.Messages;
using HerdBot.App.Records;
using HerdBot.App.Settings;
using HerdBot.Core.Herd;
using HerdBot.Host.Calendar;
using HerdBot.Host.Composition;
using HerdBot.Host.LiteDb;
using NodaTime;

namespace HerdBot.Host.Commands;

/// <summary>The verb "export": the season's calendar as .ics and as a picture.</summary>
public static class ExportCommand
{
    public static Command Create()
    {
        var folder = new Argument<string>("DIR") { Description = "The folder to write into; it is made where it is missing." };
        var file = new Option<string>("--settings") { Description = "The settings file.", DefaultValueFactory = _ => SettingsFile.Usual };
        var command = new Command("export", "Writes the season's calendar as season.ics and season.png.") { folder, file };
        command.SetAction(async (parsed, _) => await RunAsync(parsed.GetValue(folder)!, parsed.GetValue(file)!, SystemClocks.Real, Console.Out, Console.Error));
        return command;
    }

    /// <summary>Writes the calendars of every group; 0 where it went well, 2 where settings, data file or folder cannot be used.</summary>
    public static async Task<int> RunAsync(string folder, string file, TimeProvider clock, TextWriter output, TextWriter faults)
    {
        ArgumentNullException.ThrowIfNull(clock);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(faults);
        if (await SettingsFile.ReadAsync(file, faults) is not { } settings)
        {
            return 2;
        }
        if (!File.Exists(settings.Data))
        {
            await faults.WriteLineAsync($"There is no data file {settings.Data}: nothing has been recorded yet. Check \"data\" in {file}.");
            return 2;
        }
        try
        {
            var states = await StatesAsync(settings);
            Directory.CreateDirectory(folder);
            for (var n = 0; n < states.Count; n++)
            {
                await WriteAsync(folder, n == 0 ? "season" : $"season-{n + 1}", states[n], settings, Instant.FromDateTimeOffset(clock.GetUtcNow()), output);
            }
            return 0;
        }
        catch (Exception odd) when (odd is DataFileException or InvalidDataException or IOException or UnauthorizedAccessException)
        {
            await faults.WriteLineAsync(odd.Message);
            return 2;
        }
    }

    private static async Task<IReadOnlyList<HerdState>> StatesAsync(BotSettings settings)
    {
        await using var store = LiteDbHerdStore.Open(settings.Data);
        var commits = await store.ReadAllAsync();
        return [.. commits.Select(stored => stored.Commit).Where(commit => commit.Group != AccessState.BotStream && commit.Group != Pipeline.Aside)
            .GroupBy(commit => commit.Group).Select(group => HerdState.Empty.Apply(group.SelectMany(commit => commit.Events).Select(EventCodec.Read)))];
    }

    private static async Task WriteAsync(string folder, string name, HerdState state, BotSettings settings, Instant now, TextWriter output)
    {
        var farm = settings.Setup.Farm;
        await File.WriteAllTextAsync(Path.Combine(folder, $"{name}.ics"), SeasonCalendar.Write(state, farm, now));
        var awaited = state.Due(farm).Awaited(farm.Clock.Day(now)).Count;
        if (SeasonPicture.Draw(state, farm, now) is { } picture)
        {
            await File.WriteAllBytesAsync(Path.Combine(folder, $"{name}.png"), picture);
        }
        await output.WriteLineAsync(awaited == 0 ? $"Nobody is awaited: {name}.ics is empty, and there is no picture." : $"Wrote {name}.ics and {name}.png: {awaited} dams.");
    }
}

using System.CommandLine;
using HerdBot.App.Settings;
using HerdBot.Host.Composition;
using HerdBot.Host.Copies;
using HerdBot.Host.LiteDb;

namespace HerdBot.Host.Commands;

/// <summary>The verbs "backup" and "restore".</summary>
public static class CopyCommands
{
    public static Command Backup()
    {
        var (file, settings) = (new Argument<string>("file") { Description = "Where the backup goes." }, SettingsOption());
        var command = new Command("backup", "Copies the data file, opens the copy and counts it. While the bot runs it makes one a day itself.") { file, settings };
        command.SetAction(async (parsed, cancellation) => await RunAsync(parsed.GetValue(settings)!, Console.Error, async known =>
        {
            await using var store = LiteDbHerdStore.Open(known.Data);
            var backup = await DailyBackups.MakeAsync(store, Path.GetFullPath(parsed.GetValue(file)!), cancellation);
            await Console.Out.WriteLineAsync($"{backup.Path}: {backup.Events} events in {backup.Commits} commits, opened and counted.");
        }));
        return command;
    }

    public static Command Restore()
    {
        var from = new Argument<string>("from") { Description = "A backup, or the folder of the events-….jsonl files to rebuild from." };
        var (replace, settings) = (new Option<bool>("--replace") { Description = "Moves a data file that is there aside." }, SettingsOption());
        var command = new Command("restore", "Puts the data file in place again, and says what was done.") { from, replace, settings };
        command.SetAction(async (parsed, cancellation) => await RunAsync(parsed.GetValue(settings)!, Console.Error, known =>
            Copies.Restore.RunAsync(parsed.GetValue(from)!, known.Data, parsed.GetValue(replace), SystemClocks.Real, Console.Out, cancellation)));
        return command;
    }

    private static Option<string> SettingsOption() => new("--settings") { Description = "The settings file.", DefaultValueFactory = _ => SettingsFile.Usual };

    private static async Task<int> RunAsync(string file, TextWriter faults, Func<BotSettings, Task> work)
    {
        if (await SettingsFile.ReadAsync(file, faults) is not { } settings)
        {
            return 2;
        }
        try
        {
            await work(settings);
            return 0;
        }
        catch (DataFileException odd)
        {
            await faults.WriteLineAsync(odd.Message);
            return 2;
        }
    }
}

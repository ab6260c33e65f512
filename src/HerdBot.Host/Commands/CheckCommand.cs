using System.CommandLine;
using System.Globalization;
using HerdBot.App.Ports;
using HerdBot.App.Records;
using HerdBot.Core.Care;
using HerdBot.Core.Herd;
using HerdBot.Host.LiteDb;
using HerdBot.Host.Telegram;

namespace HerdBot.Host.Commands;

/// <summary>The verb "check".</summary>
public static class CheckCommand
{
    public static Command Create()
    {
        var file = new Option<string>("--settings") { Description = "The settings file.", DefaultValueFactory = _ => SettingsFile.Usual };
        var command = new Command("check", "Checks settings, care table and data file; lists every problem at once.") { file };
        command.SetAction(async (parsed, cancellation) => await RunAsync(parsed.GetValue(file)!, Console.Out, Console.Error));
        return command;
    }

    /// <summary>Checks; 0 where nothing is wrong, 2 where something is.</summary>
    public static async Task<int> RunAsync(string file, TextWriter output, TextWriter faults)
    {
        ArgumentNullException.ThrowIfNull(output);
        if (await SettingsFile.ReadAsync(file, faults) is not { } settings)
        {
            return 2;
        }
        var problems = new List<string>();
        var token = TelegramOptions.TokenFrom(settings.Token, Environment.GetEnvironmentVariable);
        if (token is not null && !TelegramOptions.IsToken(token))
        {
            problems.Add("The token has not the shape '123456:letters'. Copy it whole from BotFather.");
        }
        var events = await CountAsync(settings.Data, problems);
        foreach (var problem in problems)
        {
            await faults.WriteLineAsync(problem);
        }
        foreach (var warning in settings.Warnings().Concat(token is null ? [$"There is no token: write it into the settings, or into the environment as {TelegramOptions.TokenVariable}."] : []))
        {
            await output.WriteLineAsync($"Mind: {warning}");
        }
        foreach (var number in VetsNumbers(settings.Setup.Farm))
        {
            await output.WriteLineAsync(number);
        }
        if (problems.Count == 0)
        {
            await output.WriteLineAsync($"Settings and care table are in order. {events}");
        }
        return problems.Count == 0 ? 0 : 2;
    }

    /// <summary>The numbers of the care table that the farm's vet wants otherwise, each with whose it is.</summary>
    private static IEnumerable<string> VetsNumbers(Farm farm) => farm.Tables.Values.Take(1).SelectMany(table => table.OfTheVet.Select(name => CareKeys.All.First(key => key.Name == name))
        .Select(key => string.Create(CultureInfo.InvariantCulture, $"By {table.Source(key)}: {key.Name} is {table.Number(key)} {CareTable.UnitWord(key.Unit)}.")));

    private static async Task<string> CountAsync(string data, List<string> problems)
    {
        if (!File.Exists(data))
        {
            return $"There is no data file yet; it will be {data}.";
        }
        try
        {
            await using var store = LiteDbHerdStore.Open(data);
            var commits = await store.ReadAllAsync();
            foreach (var record in commits.Where(commit => IsFarm(commit.Commit.Group)).SelectMany(commit => commit.Commit.Events))
            {
                EventCodec.Read(record);
            }
            return $"The data file {data} holds {commits.Sum(commit => commit.Commit.Events.Length)} events.";
        }
        catch (Exception odd) when (odd is DataFileException or InvalidDataException)
        {
            problems.Add(odd.Message);
            return "";
        }
    }

    private static bool IsFarm(GroupId group) => group != App.Access.AccessState.BotStream && group != App.Messages.Pipeline.Aside;
}

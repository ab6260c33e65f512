using System.CommandLine;
using HerdBot.Host.Health;

namespace HerdBot.Host.Commands;

/// <summary>The verb "health": asks the running bot how it is.</summary>
public static class HealthCommand
{
    public static Command Create()
    {
        var file = new Option<string>("--settings") { Description = "The settings file.", DefaultValueFactory = _ => SettingsFile.Usual };
        var command = new Command("health", "Asks the running bot how it is: status 0 where all is well, 1 where something is wrong, 2 where it does not answer.") { file };
        command.SetAction(async (parsed, cancellation) => await RunAsync(parsed.GetValue(file)!, Console.Out, Console.Error, cancellation));
        return command;
    }

    /// <summary>Asks; 0 where all is well, 1 where something is wrong, 2 where nobody answers.</summary>
    public static async Task<int> RunAsync(string file, TextWriter output, TextWriter faults, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(faults);
        if (await SettingsFile.ReadAsync(file, faults) is not { } settings)
        {
            return 2;
        }
        if (settings.HealthPort is not { } port)
        {
            await faults.WriteLineAsync($"There is no \"healthPort\" in {file}: the bot answers nobody.");
            return 2;
        }
        using var client = new HttpClient { Timeout = TimeSpan.FromSeconds(10) };
        try
        {
            using var answer = await client.GetAsync(new Uri(HealthPage.Address(port)), cancellation);
            await output.WriteLineAsync(await answer.Content.ReadAsStringAsync(cancellation));
            return answer.IsSuccessStatusCode ? 0 : 1;
        }
        catch (Exception silent) when (silent is HttpRequestException or TaskCanceledException)
        {
            await faults.WriteLineAsync($"Nobody answers at {HealthPage.Address(port)}: the bot does not run, or runs with other settings.");
            return 2;
        }
    }
}

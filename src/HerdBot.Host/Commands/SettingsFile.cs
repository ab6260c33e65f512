using HerdBot.App.Settings;

namespace HerdBot.Host.Commands;

/// <summary>Finds and reads the settings file.</summary>
internal static class SettingsFile
{
    /// <summary>Where it is looked for when nothing is said.</summary>
    public const string Usual = "bot.settings.json";

    /// <summary>The settings; null, after every problem as a plain sentence, where they cannot be used.</summary>
    public static async Task<BotSettings?> ReadAsync(string file, TextWriter faults)
    {
        string text;
        try
        {
            text = await File.ReadAllTextAsync(file);
        }
        catch (Exception odd) when (odd is IOException or UnauthorizedAccessException)
        {
            await faults.WriteLineAsync($"The settings file '{file}' cannot be read: {odd.Message} Copy bot.settings.example.json to {Usual} and fill it in.");
            return null;
        }
        var (settings, problems) = BotSettings.Read(text);
        foreach (var problem in problems)
        {
            await faults.WriteLineAsync($"{file}: {problem}");
        }
        return settings;
    }
}

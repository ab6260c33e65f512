using System.Text.Json;
using HerdBot.App.Messages;
using HerdBot.Core.Herd;

namespace HerdBot.App.Settings;

/// <summary>The settings file.</summary>
/// <param name="Setup">The farm, its care part and the animals it names.</param>
public sealed record BotSettings(FarmSetup Setup)
{
    /// <summary>The bot account's token; null where it comes from the environment.</summary>
    public string? Token { get; init; }
    /// <summary>The data file; its folder must exist.</summary>
    public string Data { get; init; } = "herdbot.db";
    /// <summary>The folder for the second copy of all events and for daily backups, best on another disk; null where none are made.</summary>
    public string? Copies { get; init; }
    /// <summary>The port on the loopback address at which a monitor may ask how the bot is; null where none may.</summary>
    public int? HealthPort { get; init; }
    /// <summary>Another server that speaks the Bot API; null for Telegram's own.</summary>
    public string? Server { get; init; }

    /// <summary>Reads a settings file.</summary>
    /// <param name="text">Its text.</param>
    /// <returns>The settings, or null and every problem at once, each a plain sentence.</returns>
    public static (BotSettings? Settings, IReadOnlyList<string> Problems) Read(string text)
    {
        JsonDocument json;
        try
        {
            json = JsonDocument.Parse(text, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        }
        catch (JsonException broken)
        {
            return (null, [$"The settings file is not whole JSON: line {broken.LineNumber + 1}, place {broken.BytePositionInLine + 1}. A brace, a quote or a comma is missing there or just before."]);
        }
        using (json)
        {
            if (json.RootElement.ValueKind != JsonValueKind.Object)
            {
                return (null, ["The settings file must hold one object in braces."]);
            }
            var problems = new List<string>();
            var settings = Read(new JsonReader(json.RootElement, "", problems));
            return problems.Count == 0 ? (settings, []) : (null, problems);
        }
    }

    /// <summary>What is allowed and still better mended: said by check, and no reason not to start.</summary>
    public IEnumerable<string> Warnings()
    {
        if (Setup.Farm.VetPhone is null)
        {
            yield return "care.vetPhone is missing: alarms will say 'phone the vet' without a number.";
        }
        if (Setup.Farm.VetPhoneNight is null)
        {
            yield return "care.vetPhoneNight is missing: at night alarms show the day number.";
        }
        if (Setup.Herd.All(animal => animal.Role != HerdRole.Dam))
        {
            yield return "farm.herd names no dam: add them here, or in the chat when they are first spoken of.";
        }
    }

    private static BotSettings? Read(JsonReader root)
    {
        var (token, data, server, copies) = (root.Text("token"), root.Text("data", "herdbot.db"), root.Text("server"), root.Text("copies", "copies"));
        var healthPort = root.Has("healthPort") ? root.Whole("healthPort", 0, 1, 65535) : (int?)null;
        var (farm, care) = (root.Part("farm"), root.Part("care"));
        if (!root.Has("farm"))
        {
            root.Problem("farm", "is missing");
        }
        if (server is not null && !(Uri.TryCreate(server, UriKind.Absolute, out var uri) && (uri.Scheme is "http" or "https")))
        {
            root.Problem("server", "must be an address like \"http://127.0.0.1:8081\"");
        }
        var setup = farm is null ? null : FarmReader.Read(farm, care);
        farm?.Done();
        root.Done();
        return setup is null ? null : new BotSettings(setup)
        {
            Token = string.IsNullOrWhiteSpace(token) ? null : token,
            Data = string.IsNullOrWhiteSpace(data) ? "herdbot.db" : data,
            Server = server,
            HealthPort = healthPort,
            Copies = string.IsNullOrWhiteSpace(copies) ? null : copies,
        };
    }
}

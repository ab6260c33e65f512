namespace HerdBot.Host.Telegram;

/// <summary>What the adapter must know to talk to Telegram. A class, not a record, so that nothing prints the token.</summary>
public sealed class TelegramOptions
{
    /// <summary>The environment variable that holds the token where the settings hold none.</summary>
    public const string TokenVariable = "HERDBOT_TOKEN";

    /// <summary>The bot's token, "digits:secret".</summary>
    public required string Token { get; init; }

    /// <summary>Another Bot API server, "http://127.0.0.1:8081"; null for Telegram's own.</summary>
    public string? BaseUrl { get; init; }

    /// <summary>How long Telegram may hold a poll. Its server cuts this at 50 seconds.</summary>
    public TimeSpan PollTime { get; init; } = TimeSpan.FromSeconds(50);

    /// <summary>How much longer than the poll time we wait for its answer.</summary>
    public TimeSpan PollGrace { get; init; } = TimeSpan.FromSeconds(15);

    /// <summary>How long a send may take before its outcome counts as unknown.</summary>
    public TimeSpan SendTime { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>How long a connection may take to come about; past it, nothing was sent.</summary>
    public TimeSpan ConnectTime { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>The token from the settings, else from the environment; null where neither has one.</summary>
    public static string? TokenFrom(string? setting, Func<string, string?> environment)
    {
        ArgumentNullException.ThrowIfNull(environment);
        var token = string.IsNullOrWhiteSpace(setting) ? environment(TokenVariable) : setting;
        return string.IsNullOrWhiteSpace(token) ? null : token.Trim();
    }

    /// <summary>True where the token has the shape "digits:secret".</summary>
    public static bool IsToken(string token)
    {
        ArgumentNullException.ThrowIfNull(token);
        var colon = token.IndexOf(':', StringComparison.Ordinal);
        return colon is >= 1 and <= 16
            && token.AsSpan(0, colon).ContainsAnyExceptInRange('0', '9') is false
            && token.Length - colon > 10
            && token.AsSpan(colon + 1).ContainsAny(' ', '/', '\t') is false;
    }
}

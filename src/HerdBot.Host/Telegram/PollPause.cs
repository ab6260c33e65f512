using Telegram.Bot.Exceptions;

namespace HerdBot.Host.Telegram;

/// <summary>How long to wait after a poll that failed.</summary>
public static class PollPause
{
    /// <summary>The longest pause, and the pause where trying sooner cannot help.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromMinutes(1);

    /// <summary>The pause after a poll that brought us no further.</summary>
    public static readonly TimeSpan Shortest = TimeSpan.FromSeconds(1);

    /// <summary>1, 2, 4 … 60 seconds by the number of failures in a row; what Telegram asks for where it does.</summary>
    public static TimeSpan After(Exception failure, int failuresInRow) => failure switch
    {
        ApiRequestException { ErrorCode: 429, Parameters.RetryAfter: > 0 and var seconds } => TimeSpan.FromSeconds(seconds),
        ApiRequestException { ErrorCode: 401 or 403 or 404 or 409 } => Longest,
        _ => Doubled(failuresInRow),
    };

    /// <summary>What is the matter, where it is something that a person has to mend.</summary>
    public static string? Advice(Exception failure) => failure switch
    {
        ApiRequestException { ErrorCode: 401 or 404 } => "Telegram does not know this token; was it revoked? Give the bot a valid one.",
        ApiRequestException { ErrorCode: 403 } => "Telegram does not let this bot receive; look it up at @BotFather.",
        ApiRequestException { ErrorCode: 409 } => "Another program receives with this token; stop it, or its webhook.",
        _ => null,
    };

    private static TimeSpan Doubled(int failuresInRow)
    {
        var seconds = 1 << Math.Clamp(failuresInRow - 1, 0, 6);
        return TimeSpan.FromSeconds(Math.Min(seconds, Longest.TotalSeconds));
    }
}

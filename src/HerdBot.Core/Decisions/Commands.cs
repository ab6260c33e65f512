using HerdBot.Core.Wording;

namespace HerdBot.Core.Decisions;

/// <summary>The few commands: each has plain words that do the same.</summary>
internal static class Commands
{
    /// <summary>The plain words of a command; any other text as it is.</summary>
    public static string Plain(string text) => Word(text) switch
    {
        "/open" => "what's open",
        "/due" => "who is due next",
        "/undo" => "scratch that",
        _ => text,
    };

    /// <summary>The help text for /help and /start; null for any other text.</summary>
    public static string? Of(string text, Phrases phrases) => Word(text) is "/help" or "/start" ? phrases.Say("reply.help") : null;

    private static string Word(string text) => text.Trim().ToLowerInvariant();
}

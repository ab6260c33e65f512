using HerdBot.Core.Facts;
using HerdBot.Core.Wording;

namespace HerdBot.Core.Decisions;

/// <summary>The few commands: each has plain words that do the same.</summary>
internal static class Commands
{
    /// <summary>What a command says; null for any other text. "/due Sage" is about one animal.</summary>
    public static Fact? Fact(string text) => Words(text) switch
    {
        ["/open"] => new Fact(FactKind.QuestionTasks),
        ["/due"] => new Fact(FactKind.QuestionDue),
        ["/due", var animal] => new Fact(FactKind.QuestionDue) { Animal = animal },
        ["/undo"] => new Fact(FactKind.Undo),
        _ => null,
    };

    /// <summary>The help text for /help and /start; null for any other text.</summary>
    public static string? Help(string text, Phrases phrases) => Words(text) is ["/help"] or ["/start"] ? phrases.Say("reply.help") : null;

    private static string[] Words(string text) => text.Trim().Split(' ', 2, StringSplitOptions.TrimEntries) is [var command, .. var rest] ? [command.ToLowerInvariant(), .. rest] : [];
}

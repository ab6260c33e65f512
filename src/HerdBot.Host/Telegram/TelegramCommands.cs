using HerdBot.Core.Reading;
using HerdBot.Core.Wording;
using Telegram.Bot.Requests;
using Telegram.Bot.Types;

namespace HerdBot.Host.Telegram;

/// <summary>The few commands that Telegram offers in its menu. Plain words do the same.</summary>
public static class TelegramCommands
{
    /// <summary>One request for each language; the first is for everybody else.</summary>
    public static IEnumerable<SetMyCommandsRequest> Requests() => [In(Language.English, null), In(Language.Spanish, "es")];

    private static SetMyCommandsRequest In(Language language, string? code)
    {
        var phrases = Phrases.Of(language);
        return new SetMyCommandsRequest
        {
            LanguageCode = code,
            Commands =
            [
                new BotCommand("open", phrases.Say("menu.open")),
                new BotCommand("due", phrases.Say("menu.due")),
                new BotCommand("help", phrases.Say("menu.help")),
                new BotCommand("undo", phrases.Say("menu.undo")),
            ],
        };
    }
}

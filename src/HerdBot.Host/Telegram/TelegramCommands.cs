using Telegram.Bot.Requests;
using Telegram.Bot.Types;

namespace HerdBot.Host.Telegram;

/// <summary>The few commands that Telegram offers in its menu. Plain words do the same.</summary>
public static class TelegramCommands
{
    /// <summary>One request for each language; the first is for everybody else.</summary>
    public static IEnumerable<SetMyCommandsRequest> Requests() =>
    [
        new SetMyCommandsRequest
        {
            Commands =
            [
                new BotCommand("open", "What is still open"),
                new BotCommand("due", "What is due next"),
                new BotCommand("help", "How to write to me"),
                new BotCommand("undo", "Take back the last record"),
            ],
        },
        new SetMyCommandsRequest
        {
            LanguageCode = "es",
            Commands =
            [
                new BotCommand("open", "Lo que sigue pendiente"),
                new BotCommand("due", "Lo que toca ahora"),
                new BotCommand("help", "Cómo escribirme"),
                new BotCommand("undo", "Deshacer el último registro"),
            ],
        },
    ];
}

using HerdBot.App.Ports;
using NodaTime;
using Telegram.Bot.Exceptions;

namespace HerdBot.Host.Telegram;

/// <summary>What an exception from the library says about a send: Telegram's own word, a dead line, or nothing at all.</summary>
public static class SendFailure
{
    // Where Telegram asks for a pause and does not say how long.
    private static readonly Duration UnsaidPause = Duration.FromSeconds(30);

    /// <summary>True for the exceptions by which the library tells that a request failed.</summary>
    public static bool IsOne(Exception exception) =>
        exception is RequestException or HttpRequestException or TaskCanceledException;

    /// <summary>What may be told to the outbox.</summary>
    /// <param name="failure">What was thrown.</param>
    /// <param name="why">Its words without the token.</param>
    public static SendResult Of(Exception failure, string why) => failure switch
    {
        ApiRequestException said => ByTelegram(said, why),
        _ when NeverConnected(failure) => new SendResult.NotSent(why),
        _ => new SendResult.Unknown(why),
    };

    /// <summary>True where Telegram refuses the message for what it replies to, and would take it without.</summary>
    public static bool IsAboutReply(Exception failure) => Says(failure,
        "message to be replied not found", "replied message not found", "REPLY_MESSAGE_ID_INVALID",
        "message thread not found", "TOPIC_CLOSED", "TOPIC_DELETED");

    /// <summary>True where an edit would change nothing.</summary>
    public static bool IsUnchanged(Exception failure) => Says(failure, "message is not modified");

    /// <summary>True where the message to edit is no longer there to be edited.</summary>
    public static bool IsGone(Exception failure) => Says(failure,
        "message to edit not found", "message can't be edited", "MESSAGE_ID_INVALID", "message identifier is not specified");

    private static SendResult ByTelegram(ApiRequestException said, string why) => said switch
    {
        { ErrorCode: 429 } => new SendResult.Wait(
            said.Parameters?.RetryAfter is > 0 and var seconds ? Duration.FromSeconds(seconds) : UnsaidPause),
        { Parameters.MigrateToChatId: { } chat } => new SendResult.Moved(TelegramIds.GroupOf(chat)),
        { ErrorCode: >= 500 } => new SendResult.Unknown(why),
        // Not this chat's doing: the token. Nothing was sent, and once it is mended all of it can be.
        { ErrorCode: 401 or 404 } => new SendResult.NotSent(why),
        _ => new SendResult.Refused(why),
    };

    private static bool NeverConnected(Exception failure)
    {
        for (var e = failure; e is not null; e = e.InnerException)
        {
            if (e is HttpRequestException
                {
                    HttpRequestError: HttpRequestError.NameResolutionError or HttpRequestError.ConnectionError
                        or HttpRequestError.SecureConnectionError or HttpRequestError.ProxyTunnelError
                })
                return true;
        }
        return false;
    }

    private static bool Says(Exception failure, params ReadOnlySpan<string> words)
    {
        if (failure is not ApiRequestException { ErrorCode: 400 } said)
            return false;
        foreach (var word in words)
        {
            if (said.Message.Contains(word, StringComparison.OrdinalIgnoreCase))
                return true;
        }
        return false;
    }
}

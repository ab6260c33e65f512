using System.Text.Json;
using Telegram.Bot.Requests;

namespace HerdBot.Host.Telegram;

/// <summary>
/// Asks for updates as raw JSON. The library's own request reads a batch whole, so that one update of a kind it does
/// not know would keep all others from us.
/// </summary>
public sealed class GetRawUpdates() : RequestBase<JsonElement[]>("getUpdates")
{
    /// <summary>Every kind we read. Sent with each call: Telegram remembers what another program asked for last.</summary>
    public static readonly string[] Wanted = ["message", "edited_message", "callback_query", "my_chat_member"];

    /// <summary>The last update's number and one; null to be told from the first one that waits.</summary>
    public long? Offset { get; init; }

    public int Limit { get; init; } = 100;

    public int Timeout { get; init; }

    public IEnumerable<string> AllowedUpdates { get; init; } = Wanted;
}

using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace HerdBot.Host.Telegram;

/// <summary>
/// The inbox key of a raw update, the same for the same thing however often and under whatever update id it comes.
/// Reads as little as it can, so that an update nobody understands has a key too.
/// </summary>
public static class TelegramKeys
{
    private const int LongestId = 100;

    public static string Of(long bot, JsonElement update)
    {
        if (Message(update, "message") is { } message)
            return message;
        if (Message(update, "edited_message") is { } edited)
            return edited;
        if (CallbackId(update) is { Length: <= LongestId } tap)
            return $"tgc:{tap}";
        return UpdateId(update) is { } id ? Text($"tgu:{bot}:{id}") : $"tgx:{Digest(update.GetRawText())}";
    }

    /// <summary>The update's number; null where it has none that Telegram could have given.</summary>
    public static long? UpdateId(JsonElement update) => Long(Part(update, "update_id")) is >= 0 and <= int.MaxValue and var id ? id : null;

    /// <summary>The id of a press, by which it is answered.</summary>
    public static string? CallbackId(JsonElement update) => String(Part(Part(update, "callback_query"), "id"));

    private static string? Message(JsonElement update, string kind)
    {
        var message = Part(update, kind);
        if (Long(Part(Part(message, "chat"), "id")) is not { } chat || Long(Part(message, "message_id")) is not { } id)
            return null;
        var edited = Long(Part(message, "edit_date")) ?? 0;
        // Two edits within one second share the date; their words tell them apart.
        var words = edited == 0 ? "" : ":" + Digest(String(Part(message, "text")) ?? String(Part(message, "caption")) ?? "")[..8];
        return Text($"tgm:{chat}:{id}:{edited}") + words;
    }

    private static JsonElement? Part(JsonElement? of, string name) =>
        of is { ValueKind: JsonValueKind.Object } element && element.TryGetProperty(name, out var part) ? part : null;

    private static long? Long(JsonElement? element) =>
        element is { ValueKind: JsonValueKind.Number } number && number.TryGetInt64(out var value) ? value : null;

    private static string? String(JsonElement? element) =>
        element is { ValueKind: JsonValueKind.String } text ? Unpaired(text) : null;

    // A string with half a surrogate pair cannot be turned into text; its raw form serves as well.
    private static string Unpaired(JsonElement text)
    {
        try
        {
            return text.GetString()!;
        }
        catch (InvalidOperationException)
        {
            return text.GetRawText();
        }
    }

    private static string Digest(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

using System.Text;
using System.Text.Json.Nodes;

namespace HerdBot.Tests.Support.FakeBotApi;

/// <summary>What Telegram looks at before it takes a message.</summary>
internal static class FakeChecks
{
    public static string Text(JsonObject body, string field, int limit)
    {
        var text = (string?)body[field] ?? "";
        if (string.IsNullOrWhiteSpace(text))
            throw FakeError.Bad($"{(field == "text" ? "message text" : field)} is empty");
        if (Encoding.UTF8.GetByteCount(text) > 32_768)
            throw FakeError.Bad("text is too long");
        if (text.EnumerateRunes().Count() > limit)
            throw FakeError.Bad(field == "text" ? "message is too long" : "message caption is too long");
        foreach (var entity in body["entities"] as JsonArray ?? [])
        {
            var (offset, length) = ((int)entity!["offset"]!, (int)entity["length"]!);
            if (offset < 0 || length < 1 || offset + length > text.Length)
                throw FakeError.Bad("an entity lies outside of the text");
        }
        return text;
    }

    public static void Keyboard(JsonObject body)
    {
        foreach (var button in body["reply_markup"]?["inline_keyboard"] is JsonArray rows ? rows.SelectMany(row => row!.AsArray()) : [])
        {
            if (string.IsNullOrEmpty((string?)button!["text"]))
                throw FakeError.Bad("text buttons are unallowed in the inline keyboard");
            if (Encoding.UTF8.GetByteCount((string?)button["callback_data"] ?? "") is < 1 or > 64)
                throw FakeError.Bad("BUTTON_DATA_INVALID");
        }
    }

    public static void Topic(FakeChat chat, JsonObject body)
    {
        if ((int?)body["message_thread_id"] is not { } topic)
            return;
        if (!chat.Topics.TryGetValue(topic, out var open))
            throw FakeError.Bad("message thread not found");
        if (!open)
            throw FakeError.Bad("TOPIC_CLOSED");
    }

    public static int? Reply(FakeChat chat, JsonObject body)
    {
        if (body["reply_parameters"] is not { } reply)
            return null;
        var id = (int?)reply["message_id"] ?? throw FakeError.Bad("message to be replied not found");
        if (chat.Messages.ContainsKey(id))
            return id;
        return (bool?)reply["allow_sending_without_reply"] == true ? null : throw FakeError.Bad("message to be replied not found");
    }
}

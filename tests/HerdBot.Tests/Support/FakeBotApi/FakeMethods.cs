using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace HerdBot.Tests.Support.FakeBotApi;

/// <summary>What the server does with each call but the poll. Stricter than the real one: a parameter it does not know is refused.</summary>
internal sealed partial class FakeMethods(FakeServerState state)
{
    private const int GroupPostsPerMinute = 20;

    // A few of Telegram's; the list in full is checked against the published types.
    private static readonly string[] Reactions = ["👍", "👌", "👀", "✍", "🙏", "❤"];

    private static readonly Dictionary<string, string[]> Parameters = new()
    {
        ["getMe"] = [],
        ["deleteWebhook"] = ["drop_pending_updates"],
        ["setWebhook"] = ["url"],
        ["setMyCommands"] = ["commands", "scope", "language_code"],
        ["sendMessage"] = ["chat_id", "text", "entities", "link_preview_options", "reply_parameters", "reply_markup", "message_thread_id", "disable_notification"],
        ["sendPhoto"] = ["chat_id", "photo", "caption", "caption_entities", "reply_parameters", "reply_markup", "message_thread_id", "disable_notification"],
        ["editMessageText"] = ["chat_id", "message_id", "text", "entities", "link_preview_options", "reply_markup"],
        ["setMessageReaction"] = ["chat_id", "message_id", "reaction", "is_big"],
        ["answerCallbackQuery"] = ["callback_query_id", "text", "show_alert", "cache_time"],
    };

    public JsonNode Call(string method, JsonObject body)
    {
        if (!Parameters.TryGetValue(method, out var known))
            throw new FakeError(404, "Not Found");
        if (body.FirstOrDefault(field => !known.Contains(field.Key)) is { Key: { } unknown })
            throw FakeError.Bad($"{method} has no parameter '{unknown}'");
        return method switch
        {
            "getMe" => Me(),
            "deleteWebhook" => DeleteWebhook(body),
            "setWebhook" => SetWebhook(body),
            "setMyCommands" => SetMyCommands(body),
            "sendMessage" => Send(body, "text", 4096),
            "sendPhoto" => Send(body, "caption", 1024),
            "editMessageText" => Edit(body),
            "setMessageReaction" => React(body),
            _ => Answer(body),
        };
    }

    private JsonObject Me() => new()
    {
        ["id"] = state.BotId,
        ["is_bot"] = true,
        ["first_name"] = "Herd",
        ["username"] = FakeServerState.BotName,
        ["can_join_groups"] = true,
        ["can_read_all_group_messages"] = state.ReadsAll,
        ["supports_inline_queries"] = false,
    };

    private JsonNode DeleteWebhook(JsonObject body)
    {
        state.Webhook = null;
        if ((bool?)body["drop_pending_updates"] == true)
            state.Queue.Clear();
        return true;
    }

    private JsonNode SetWebhook(JsonObject body)
    {
        state.Webhook = (string?)body["url"] is { Length: > 0 } url ? url : null;
        return true;
    }

    private JsonNode SetMyCommands(JsonObject body)
    {
        var commands = body["commands"] as JsonArray ?? throw FakeError.Bad("can't parse bot commands");
        if (commands.Count > 100)
            throw FakeError.Bad("BOT_COMMANDS_TOO_MUCH");
        foreach (var command in commands)
        {
            if (!CommandName().IsMatch((string?)command!["command"] ?? ""))
                throw FakeError.Bad("BOT_COMMAND_INVALID");
            if ((string?)command["description"] is not { Length: >= 1 and <= 256 })
                throw FakeError.Bad("BOT_COMMAND_DESCRIPTION_INVALID");
        }
        state.Commands[(string?)body["language_code"] ?? ""] = [.. commands.Select(command => (string)command!["command"]!)];
        return true;
    }

    private JsonObject Send(JsonObject body, string words, int limit)
    {
        var chat = state.Writable(body);
        var text = FakeChecks.Text(body, words, limit);
        FakeChecks.Keyboard(body);
        FakeChecks.Topic(chat, body);
        var replied = FakeChecks.Reply(chat, body);
        Pace(chat, chat.Sends);

        var message = NewMessage(chat, words, text, body);
        if (replied is { } to)
            message.Json["reply_to_message"] = new JsonObject { ["message_id"] = to, ["date"] = state.Seconds, ["chat"] = chat.Json() };
        state.Posts.Add(new FakePost(chat.Id, message.Id, text, [.. message.ButtonData()], replied, body));
        return (JsonObject)message.Json.DeepClone();
    }

    private FakeMessage NewMessage(FakeChat chat, string words, string text, JsonObject body)
    {
        var json = new JsonObject
        {
            ["message_id"] = chat.NextMessage(),
            ["from"] = new JsonObject { ["id"] = state.BotId, ["is_bot"] = true, ["first_name"] = "Herd" },
            ["chat"] = chat.Json(),
            ["date"] = state.Seconds,
            [words] = text,
        };
        foreach (var part in new[] { "entities", "reply_markup" })
        {
            if (body[part] is { } value)
                json[part] = value.DeepClone();
        }
        var message = new FakeMessage((int)json["message_id"]!, json, byBot: true);
        chat.Messages[message.Id] = message;
        return message;
    }

    private JsonObject Edit(JsonObject body)
    {
        var chat = state.Writable(body);
        var text = FakeChecks.Text(body, "text", 4096);
        FakeChecks.Keyboard(body);
        var message = Find(chat, body, "message to edit not found");
        if (!message.ByBot)
            throw FakeError.Bad("message can't be edited");
        if (Same(message, body, text))
            throw FakeError.Bad("message is not modified: specified new message content and reply markup are exactly the same " +
                "as a current content and reply markup of the message");
        Pace(chat, chat.Edits);
        message.Json["text"] = text;
        foreach (var part in new[] { "entities", "reply_markup" })
            message.Json[part] = body[part]?.DeepClone();
        message.Json["edit_date"] = state.Seconds;
        return (JsonObject)message.Json.DeepClone();
    }

    private static bool Same(FakeMessage message, JsonObject body, string text) =>
        (string?)message.Json["text"] == text
        && JsonNode.DeepEquals(message.Json["entities"], body["entities"])
        && JsonNode.DeepEquals(message.Json["reply_markup"], body["reply_markup"]);

    private JsonNode React(JsonObject body)
    {
        var chat = state.Writable(body);
        var message = Find(chat, body, "message to react not found");
        var emoji = body["reaction"] is JsonArray list ? list.Select(one => (string?)one!["emoji"]).ToList() : [];
        if (emoji.Exists(one => !Reactions.Contains(one)))
            throw FakeError.Bad("REACTION_INVALID");
        message.Reactions.Clear();
        message.Reactions.AddRange(emoji!);
        return true;
    }

    private JsonNode Answer(JsonObject body)
    {
        if (((string?)body["text"])?.Length > 200)
            throw FakeError.Bad("MESSAGE_TOO_LONG");
        var id = (string?)body["callback_query_id"] ?? "";
        if (!state.Presses.TryGetValue(id, out var at) || state.Now - at > TimeSpan.FromSeconds(15))
            throw FakeError.Bad("query is too old and response timeout expired or query ID is invalid");
        state.Answered.Add(id);
        return true;
    }

    private static FakeMessage Find(FakeChat chat, JsonObject body, string otherwise) =>
        chat.Messages.GetValueOrDefault((int?)body["message_id"] ?? throw FakeError.Bad("message identifier is not specified"))
            ?? throw FakeError.Bad(otherwise);

    private void Pace(FakeChat chat, List<DateTimeOffset> past)
    {
        if (chat.IsPrivate)
            return;
        past.RemoveAll(at => state.Now - at >= TimeSpan.FromMinutes(1));
        if (past.Count >= GroupPostsPerMinute)
            throw FakeError.TooMany((int)Math.Ceiling((past[0] + TimeSpan.FromMinutes(1) - state.Now).TotalSeconds));
        past.Add(state.Now);
    }

    [GeneratedRegex("^[a-z0-9_]{1,32}$")]
    private static partial Regex CommandName();
}

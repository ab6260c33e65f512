using System.Text.Json.Nodes;

namespace HerdBot.Tests.Support.FakeBotApi;

/// <summary>Somebody in a chat.</summary>
internal sealed record FakePerson(long Id, string FirstName, string? LastName = null, string? UserName = null)
{
    public JsonObject Json()
    {
        var json = new JsonObject { ["id"] = Id, ["is_bot"] = false, ["first_name"] = FirstName };
        if (LastName is not null)
            json["last_name"] = LastName;
        if (UserName is not null)
            json["username"] = UserName;
        return json;
    }
}

/// <summary>How the bot stands in a chat.</summary>
internal enum BotStanding
{
    Member,
    Administrator,
    /// <summary>In the chat, without the right to write.</summary>
    Muted,
    Kicked,
    NotMember,
    /// <summary>The chat is gone.</summary>
    Deleted,
    /// <summary>A person who never wrote to the bot.</summary>
    NeverStarted,
    /// <summary>A person who blocked the bot.</summary>
    Blocked,
}

/// <summary>A message as the server keeps it.</summary>
internal sealed class FakeMessage(int id, JsonObject json, bool byBot)
{
    public int Id { get; } = id;
    public JsonObject Json { get; } = json;
    public bool ByBot { get; } = byBot;
    public List<string> Reactions { get; } = [];

    public IEnumerable<string> ButtonData() =>
        Json["reply_markup"]?["inline_keyboard"] is JsonArray rows
            ? rows.SelectMany(row => row!.AsArray()).Select(button => (string?)button!["callback_data"]).OfType<string>()
            : [];
}

/// <summary>A chat on the fake server.</summary>
internal sealed class FakeChat(long id, string type, string title)
{
    private int _lastMessage;

    public long Id { get; } = id;
    public string Type { get; } = type;
    public string Title { get; } = title;
    public BotStanding Standing { get; set; } = BotStanding.Member;
    public long? MovedTo { get; set; }
    public Dictionary<int, FakeMessage> Messages { get; } = [];

    /// <summary>The topics by number; true for an open one. Number 1, the general one, is never among them.</summary>
    public Dictionary<int, bool> Topics { get; } = [];

    public List<DateTimeOffset> Sends { get; } = [];
    public List<DateTimeOffset> Edits { get; } = [];

    public bool IsPrivate => Type == "private";

    public int NextMessage() => ++_lastMessage;

    public JsonObject Json() => IsPrivate
        ? new() { ["id"] = Id, ["type"] = Type, ["first_name"] = Title }
        : new() { ["id"] = Id, ["type"] = Type, ["title"] = Title };

    /// <summary>Refuses, in Telegram's words, where the bot may not write.</summary>
    public void CheckStanding()
    {
        var kind = Type == "supergroup" ? "supergroup" : "group";
        if (MovedTo is { } to)
            throw new FakeError(400, "Bad Request: group chat was upgraded to a supergroup chat", new JsonObject { ["migrate_to_chat_id"] = to });
        var refusal = Standing switch
        {
            BotStanding.Muted => FakeError.Bad("not enough rights to send text messages to the chat"),
            BotStanding.Kicked => FakeError.Forbidden($"bot was kicked from the {kind} chat"),
            BotStanding.NotMember => FakeError.Forbidden($"bot is not a member of the {kind} chat"),
            BotStanding.Deleted => FakeError.Forbidden("the group chat was deleted"),
            BotStanding.NeverStarted => FakeError.Forbidden("bot can't initiate conversation with a user"),
            BotStanding.Blocked => FakeError.Forbidden("bot was blocked by the user"),
            _ => null,
        };
        if (refusal is not null)
            throw refusal;
    }
}

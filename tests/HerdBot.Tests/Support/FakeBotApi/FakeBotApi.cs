using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.Extensions.Time.Testing;

namespace HerdBot.Tests.Support.FakeBotApi;

/// <summary>
/// A strict stand-in for Telegram's Bot API on the loopback address, driven by a test. It keeps, forgets, refuses and
/// breaks things as the real one does; its time is a test's.
/// </summary>
/// <remarks>
/// Source: the Bot API's documentation (10.3) and its server's source (tdlib/telegram-bot-api), as read in 2026. Not
/// modelled: the 3 s wait for a repeated offset, the 4 MiB limit of an answer, markup, files.
/// </remarks>
internal sealed class FakeBotApi : IAsyncDisposable
{
    private readonly FakeGate _gate = new();
    private readonly FakeServerState _state;
    private readonly FakeWire _wire;
    private long _lastGroup;
    private long _lastPress = 4_382_000_000_000_000_000;

    private readonly TimeProvider _time;

    private FakeBotApi(string token, TimeProvider time)
    {
        Token = token;
        _time = time;
        _state = new FakeServerState(time, long.Parse(token.Split(':')[0], CultureInfo.InvariantCulture));
        _wire = new FakeWire(_gate, _state, time, token);
    }

    /// <param name="token">The one token it lets in.</param>
    /// <param name="time">Its time; null for a clock of its own that a test moves.</param>
    public static async Task<FakeBotApi> StartAsync(string token = "700100200:FAKE-canary-secret-0123456789abcdef", TimeProvider? time = null)
    {
        var fake = new FakeBotApi(token, time ?? new FakeTimeProvider(new DateTimeOffset(2026, 5, 2, 4, 30, 0, TimeSpan.Zero)));
        await fake._wire.OpenAsync();
        return fake;
    }

    public string Token { get; }

    public string Url => _wire.Url;

    /// <summary>The server's time. Moving it lets polls run out and updates be forgotten.</summary>
    public FakeTimeProvider Clock => (FakeTimeProvider)_time;

    /// <summary>What the bot sent, in order, without what was refused.</summary>
    public IReadOnlyList<FakePost> Sent => _gate.Read(() => _state.Posts.ToList());

    /// <summary>Every call the bot made, in order.</summary>
    public IReadOnlyList<FakeRequest> Requests => _gate.Read(() => _state.Requests.ToList());

    /// <summary>The presses the bot answered in time.</summary>
    public IReadOnlyList<string> Answered => _gate.Read(() => _state.Answered.ToList());

    /// <summary>The kinds of updates the bot asked for last.</summary>
    public IReadOnlyCollection<string> Allowed => _gate.Read(() => _state.Queue.Allowed.ToList());

    /// <summary>How many updates wait to be confirmed.</summary>
    public int Unconfirmed => _gate.Read(() => _state.Queue.Count);

    public IReadOnlyDictionary<string, string[]> Commands => _gate.Read(() => _state.Commands.ToDictionary());

    public string? Webhook
    {
        get => _gate.Read(() => _state.Webhook);
        set => _gate.Change(() => _state.Webhook = value);
    }

    public bool ReadsAll
    {
        set => _gate.Change(() => _state.ReadsAll = value);
    }

    /// <summary>True while a poll waits for something to come.</summary>
    public bool Polled => _wire.Polled;

    /// <summary>The calls of one method, in order.</summary>
    public IReadOnlyList<JsonObject> CallsOf(string method) => [.. Requests.Where(request => request.Method == method).Select(request => request.Body)];

    public FakeChat Group(string title = "Willow Bend", string type = "supergroup") => _gate.Change(() =>
    {
        var number = ++_lastGroup;
        var chat = new FakeChat(type == "supergroup" ? -1_001_700_000_000 - number : -4_100_000 - number, type, title);
        _state.Chats[chat.Id] = chat;
        return chat;
    });

    public FakeChat Private(FakePerson person, BotStanding standing = BotStanding.Member) => _gate.Change(() =>
    {
        var chat = new FakeChat(person.Id, "private", person.FirstName) { Standing = standing };
        _state.Chats[chat.Id] = chat;
        return chat;
    });

    public string TextOf(FakePost post) => _gate.Read(() => (string)_state.Chats[post.Chat].Messages[post.MessageId].Json["text"]!);

    public IReadOnlyList<string> ReactionsOn(FakeChat chat, int message) => _gate.Read(() => chat.Messages[message].Reactions.ToList());

    /// <summary>Somebody writes. Returns the message's number.</summary>
    public int Say(FakeChat chat, FakePerson from, string text, int? replyTo = null) =>
        Say(chat, from, message =>
        {
            message["text"] = text;
            if (replyTo is { } to)
                message["reply_to_message"] = chat.Messages[to].Json.DeepClone();
        });

    /// <summary>Somebody sends a message of any kind: the rest of it is filled in by the caller.</summary>
    public int Say(FakeChat chat, FakePerson from, Action<JsonObject> fill, TimeSpan age = default) => _gate.Change(() =>
    {
        var json = new JsonObject
        {
            ["message_id"] = chat.NextMessage(),
            ["from"] = from.Json(),
            ["chat"] = chat.Json(),
            ["date"] = (_state.Now - age).ToUnixTimeSeconds(),
        };
        fill(json);
        var message = new FakeMessage((int)json["message_id"]!, json, byBot: false);
        chat.Messages[message.Id] = message;
        _state.Queue.Add("message", json, _state.Now - age);
        return message.Id;
    });

    public void Edit(FakeChat chat, int message, string text) => _gate.Change(() =>
    {
        var json = chat.Messages[message].Json;
        json["text"] = text;
        json["edit_date"] = _state.Seconds;
        return _state.Queue.Add("edited_message", json, _state.Now);
    });

    /// <summary>Somebody presses a button, which must be there. Returns the id of the press.</summary>
    public string Press(FakeChat chat, int message, string data, FakePerson from) => _gate.Change(() =>
    {
        if (!chat.Messages[message].ButtonData().Contains(data))
            throw new InvalidOperationException($"Message {message} has no button with the data '{data}'.");
        var id = (++_lastPress).ToString(CultureInfo.InvariantCulture);
        _state.Presses[id] = _state.Now;
        _state.Queue.Add("callback_query", new JsonObject
        {
            ["id"] = id,
            ["from"] = from.Json(),
            ["message"] = chat.Messages[message].Json.DeepClone(),
            ["chat_instance"] = "1",
            ["data"] = data,
        }, _state.Now);
        return id;
    });

    /// <summary>Somebody adds the bot to a chat, or takes it out.</summary>
    public void SetMember(FakeChat chat, FakePerson by, BotStanding standing) => _gate.Change(() =>
    {
        chat.Standing = standing;
        return _state.Queue.Add("my_chat_member", new JsonObject
        {
            ["chat"] = chat.Json(),
            ["from"] = by.Json(),
            ["date"] = _state.Seconds,
            ["old_chat_member"] = Member("left"),
            ["new_chat_member"] = Member(standing switch
            {
                BotStanding.Member => "member",
                BotStanding.Administrator => "administrator",
                BotStanding.Muted => "restricted",
                BotStanding.Kicked or BotStanding.Blocked => "kicked",
                _ => "left",
            }),
        }, _state.Now);
    });

    public void Add(FakeChat chat, FakePerson by) => SetMember(chat, by, BotStanding.Member);

    /// <summary>Makes a supergroup of a group, under a new id; both chats are told.</summary>
    public FakeChat Migrate(FakeChat chat, FakePerson by, bool tell = true)
    {
        var next = Group(chat.Title);
        _gate.Change(() => chat.MovedTo = next.Id);
        if (tell)
        {
            Say(chat, by, message => message["migrate_to_chat_id"] = next.Id);
            Say(next, by, message => message["migrate_from_chat_id"] = chat.Id);
        }
        return next;
    }

    /// <summary>Adds an update of any shape.</summary>
    public void Deliver(string kind, JsonNode content, long? id = null) => _gate.Change(() => _state.Queue.Add(kind, content, _state.Now, id));

    /// <summary>Delivers a message a second time, under another number.</summary>
    public void DeliverAgain(FakeChat chat, int message) => Deliver("message", chat.Messages[message].Json);

    public void CountUpdatesFrom(long id) => _gate.Change(() => _state.Queue.CountOnFrom(id));

    /// <summary>A call to come, of this method or of any, goes wrong.</summary>
    public void Break(string? method, Fault fault, int times = 1) => _wire.Break(method, fault, times);

    /// <summary>Waits until something is so; fails where it never comes about, with what there was instead.</summary>
    public async Task WaitForAsync(Func<FakeBotApi, bool> isSo)
    {
        if (await _gate.WaitForAsync(() => isSo(this)))
            return;
        var calls = string.Join('\n', Requests.Select(request => $"{request.Method} {request.Body.ToJsonString()}"));
        throw new TimeoutException($"It never came about. The bot called:\n{calls}");
    }

    public ValueTask DisposeAsync() => _wire.DisposeAsync();

    private JsonObject Member(string status)
    {
        var json = new JsonObject { ["status"] = status, ["user"] = new JsonObject { ["id"] = _state.BotId, ["is_bot"] = true, ["first_name"] = "Herd" } };
        if (status == "restricted")
            json["is_member"] = true;
        return json;
    }
}

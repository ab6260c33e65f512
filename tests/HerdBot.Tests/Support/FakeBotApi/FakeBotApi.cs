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
internal sealed partial class FakeBotApi : IAsyncDisposable
{
    private readonly Lock _gate = new();
    private readonly FakeServerState _state;
    private readonly FakeMethods _methods;
    private readonly List<(string? Method, Fault Fault)> _faults = [];
    private TaskCompletionSource _changed = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private long _lastGroup;
    private long _lastPress = 4_382_000_000_000_000_000;

    private FakeBotApi(string token)
    {
        Token = token;
        Clock = new FakeTimeProvider(new DateTimeOffset(2026, 5, 2, 4, 30, 0, TimeSpan.Zero));
        _state = new FakeServerState(Clock, long.Parse(token.Split(':')[0], System.Globalization.CultureInfo.InvariantCulture));
        _methods = new FakeMethods(_state);
    }

    public string Token { get; }

    /// <summary>The server's time. Moving it lets polls run out and updates be forgotten.</summary>
    public FakeTimeProvider Clock { get; }

    /// <summary>What the bot sent, in order, without what was refused.</summary>
    public IReadOnlyList<FakePost> Sent => Locked(() => _state.Posts.ToList());

    /// <summary>Every call the bot made, in order.</summary>
    public IReadOnlyList<FakeRequest> Requests => Locked(() => _state.Requests.ToList());

    /// <summary>The presses the bot answered in time.</summary>
    public IReadOnlyList<string> Answered => Locked(() => _state.Answered.ToList());

    /// <summary>The kinds of updates the bot asked for last.</summary>
    public IReadOnlyCollection<string> Allowed => Locked(() => _state.Queue.Allowed.ToList());

    /// <summary>How many updates wait to be confirmed.</summary>
    public int Unconfirmed => Locked(() => _state.Queue.Count);

    public IReadOnlyDictionary<string, string[]> Commands => Locked(() => _state.Commands.ToDictionary());

    public string? Webhook
    {
        get => Locked(() => _state.Webhook);
        set => Change(() => _state.Webhook = value);
    }

    public bool ReadsAll
    {
        set => Change(() => _state.ReadsAll = value);
    }

    /// <summary>True while a poll waits for something to come.</summary>
    public bool Polled => Locked(() => _poller is not null);

    /// <summary>The calls of one method, in order.</summary>
    public IReadOnlyList<JsonObject> CallsOf(string method) => [.. Requests.Where(request => request.Method == method).Select(request => request.Body)];

    public FakeChat Group(string title = "Willow Bend", string type = "supergroup") => Change(() =>
    {
        var number = ++_lastGroup;
        var chat = new FakeChat(type == "supergroup" ? -1_001_700_000_000 - number : -4_100_000 - number, type, title);
        _state.Chats[chat.Id] = chat;
        return chat;
    });

    public FakeChat Private(FakePerson person, BotStanding standing = BotStanding.Member) => Change(() =>
    {
        var chat = new FakeChat(person.Id, "private", person.FirstName) { Standing = standing };
        _state.Chats[chat.Id] = chat;
        return chat;
    });

    public string TextOf(FakePost post) => Locked(() => (string)_state.Chats[post.Chat].Messages[post.MessageId].Json["text"]!);

    public IReadOnlyList<string> ReactionsOn(FakeChat chat, int message) => Locked(() => chat.Messages[message].Reactions.ToList());

    /// <summary>Somebody writes. Returns the message's number.</summary>
    public int Say(FakeChat chat, FakePerson from, string text, int? replyTo = null) =>
        Say(chat, from, message =>
        {
            message["text"] = text;
            if (replyTo is { } to)
                message["reply_to_message"] = chat.Messages[to].Json.DeepClone();
        });

    /// <summary>Somebody sends a message of any kind: the rest of it is filled in by the caller.</summary>
    public int Say(FakeChat chat, FakePerson from, Action<JsonObject> fill, TimeSpan age = default) => Change(() =>
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

    public void Edit(FakeChat chat, int message, string text) => Change(() =>
    {
        var json = chat.Messages[message].Json;
        json["text"] = text;
        json["edit_date"] = _state.Seconds;
        return _state.Queue.Add("edited_message", json, _state.Now);
    });

    /// <summary>Somebody presses a button, which must be there. Returns the id of the press.</summary>
    public string Press(FakeChat chat, int message, string data, FakePerson from) => Change(() =>
    {
        if (!chat.Messages[message].ButtonData().Contains(data))
            throw new InvalidOperationException($"Message {message} has no button with the data '{data}'.");
        var id = (++_lastPress).ToString(System.Globalization.CultureInfo.InvariantCulture);
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
    public void SetMember(FakeChat chat, FakePerson by, BotStanding standing) => Change(() =>
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
        Change(() => chat.MovedTo = next.Id);
        if (tell)
        {
            Say(chat, by, message => message["migrate_to_chat_id"] = next.Id);
            Say(next, by, message => message["migrate_from_chat_id"] = chat.Id);
        }
        return next;
    }

    /// <summary>Adds an update of any shape.</summary>
    public void Deliver(string kind, JsonNode content, long? id = null) => Change(() => _state.Queue.Add(kind, content, _state.Now, id));

    /// <summary>Delivers a message a second time, under another number.</summary>
    public void DeliverAgain(FakeChat chat, int message) => Deliver("message", chat.Messages[message].Json);

    public void CountUpdatesFrom(long id) => Change(() => _state.Queue.CountOnFrom(id));

    /// <summary>A call to come, of this method or of any, goes wrong.</summary>
    public void Break(string? method, Fault fault, int times = 1) =>
        Change(() => _faults.AddRange(Enumerable.Repeat((method, fault), times)));

    public void Mend() => Change(_faults.Clear);

    /// <summary>Waits until something is so; fails after ten seconds with what there was instead.</summary>
    public async Task WaitForAsync(Func<FakeBotApi, bool> isSo)
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(10));
        while (true)
        {
            var changed = Locked(() => _changed.Task);
            if (isSo(this))
                return;
            try
            {
                await changed.WaitAsync(limit.Token);
            }
            catch (OperationCanceledException)
            {
                var calls = string.Join('\n', Requests.Select(request => $"{request.Method} {request.Body.ToJsonString()}"));
                throw new TimeoutException($"It never came about. The bot called:\n{calls}");
            }
        }
    }

    private JsonObject Member(string status)
    {
        var json = new JsonObject { ["status"] = status, ["user"] = new JsonObject { ["id"] = _state.BotId, ["is_bot"] = true, ["first_name"] = "Herd" } };
        if (status == "restricted")
            json["is_member"] = true;
        return json;
    }

    private T Locked<T>(Func<T> read)
    {
        lock (_gate)
            return read();
    }

    private void Change(Action change) => Change(() =>
    {
        change();
        return 0;
    });

    private T Change<T>(Func<T> change)
    {
        TaskCompletionSource before;
        T result;
        lock (_gate)
        {
            result = change();
            (before, _changed) = (_changed, new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously));
        }
        before.SetResult();
        return result;
    }
}

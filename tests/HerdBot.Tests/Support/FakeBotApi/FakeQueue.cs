using System.Text.Json.Nodes;

namespace HerdBot.Tests.Support.FakeBotApi;

/// <summary>
/// The server's queue of updates for one bot: what is kept, for how long, and what an offset does to it.
/// </summary>
internal sealed class FakeQueue(TimeProvider clock)
{
    private static readonly TimeSpan Day = TimeSpan.FromHours(24);
    private static readonly TimeSpan PressLife = TimeSpan.FromSeconds(150);

    // As listed in the Bot API; the last three are sent only where they are asked for by name.
    private static readonly string[] Kinds =
    [
        "message", "edited_message", "channel_post", "edited_channel_post", "callback_query", "inline_query",
        "my_chat_member", "poll", "poll_answer", "chat_join_request",
        "chat_member", "message_reaction", "message_reaction_count",
    ];

    private readonly List<(long Id, DateTimeOffset Until, JsonObject Json)> _waiting = [];
    private HashSet<string> _allowed = Default();
    private long _lastId = 7000;
    private (long From, long Below) _swallow;

    public IReadOnlyCollection<string> Allowed => _allowed;

    public int Count
    {
        get
        {
            Forget();
            return _waiting.Count;
        }
    }

    /// <summary>The number the next update bears; after a quiet week Telegram picks any.</summary>
    public void CountOnFrom(long id) => _lastId = id - 1;

    /// <summary>Adds an update. False where nobody asked for its kind: then it is never delivered.</summary>
    /// <param name="kind">The name of its part.</param>
    /// <param name="content">The part itself, of any shape.</param>
    /// <param name="dated">The date by which its life is counted.</param>
    /// <param name="id">A number of its own; null for the next.</param>
    public bool Add(string kind, JsonNode content, DateTimeOffset dated, long? id = null)
    {
        if (Kinds.Contains(kind) && !_allowed.Contains(kind))
            return false;
        var until = dated + (kind == "callback_query" ? PressLife : Day);
        if (until <= clock.GetUtcNow())
            return false;
        _lastId = id ?? _lastId + 1;
        if (_lastId < _swallow.From || _lastId >= _swallow.Below)
            _waiting.Add((_lastId, until, new JsonObject { ["update_id"] = _lastId, [kind] = content.DeepClone() }));
        return true;
    }

    /// <summary>Remembers what is asked for, as Telegram does: null leaves all as it was.</summary>
    public void Allow(IReadOnlyList<string>? kinds)
    {
        if (kinds is null)
            return;
        var known = kinds.Where(kind => Kinds.Contains(kind)).ToHashSet();
        _allowed = known.Count > 0 ? known : Default();
    }

    /// <summary>Confirms by the offset and returns what waits.</summary>
    public JsonArray Read(long offset, int limit)
    {
        Forget();
        if (offset < 0)
            KeepLast((int)-offset);
        else if (offset > 0)
            Confirm(offset);
        return new JsonArray([.. _waiting.Take(limit).Select(update => update.Json.DeepClone())]);
    }

    public void Clear() => _waiting.Clear();

    private void Confirm(long offset)
    {
        var tail = _lastId + 1;
        var head = _waiting.Count > 0 ? _waiting[0].Id : tail;
        // Too far ahead, or behind: not believed, and the queue is served from its head.
        if (offset > tail + 10 || offset <= head)
            return;
        _waiting.RemoveAll(update => update.Id < offset);
        // A little ahead is believed, and eats what comes next.
        _swallow = (tail, offset);
    }

    private void KeepLast(int count) => _waiting.RemoveRange(0, Math.Max(0, _waiting.Count - count));

    private void Forget() => _waiting.RemoveAll(update => update.Until <= clock.GetUtcNow());

    private static HashSet<string> Default() => [.. Kinds[..^3]];
}

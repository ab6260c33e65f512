using System.Diagnostics;
using System.Text.Json;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using NodaTime;

namespace HerdBot.App.Access;

/// <summary>How access events are written in the bot's own history.</summary>
public static class AccessEventFormat
{
    private const int Version = 1;

    /// <summary>The event as it is stored.</summary>
    public static EventRecord Write(AccessEvent accessEvent) => accessEvent switch
    {
        AccessEvent.OwnerKnown e => Record("owner_known", new Owner(e.Person.Key, e.Person.Name, e.Chat.Value, e.At.ToUnixTimeMilliseconds())),
        AccessEvent.GroupWaiting e => Record("group_waiting", new Waiting(e.Group.Value, e.Title, e.By)),
        AccessEvent.GroupApproved e => Record("group_approved", new Approved(e.Group.Value, e.Title)),
        AccessEvent.GroupRefused e => Record("group_refused", new Chat(e.Group.Value)),
        AccessEvent.GroupMoved e => Record("group_moved", new Move(e.From.Value, e.To.Value)),
        AccessEvent.OutsiderTold e => Record("outsider_told", new Chat(e.Chat.Value)),
        _ => throw new UnreachableException(),
    };

    /// <summary>The event that was stored; null for a type that does not concern access.</summary>
    /// <exception cref="FormatException">It is of a version or shape that this program does not know.</exception>
    public static AccessEvent? Read(EventRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return record.Type switch
        {
            "owner_known" when Data<Owner>(record) is var d =>
                new AccessEvent.OwnerKnown(new Person(d.Person, d.Name), new(d.Chat), Instant.FromUnixTimeMilliseconds(d.At)),
            "group_waiting" when Data<Waiting>(record) is var d => new AccessEvent.GroupWaiting(new(d.Group), d.Title, d.By),
            "group_approved" when Data<Approved>(record) is var d => new AccessEvent.GroupApproved(new(d.Group), d.Title),
            "group_refused" when Data<Chat>(record) is var d => new AccessEvent.GroupRefused(new(d.Group)),
            "group_moved" when Data<Move>(record) is var d => new AccessEvent.GroupMoved(new(d.From), new(d.To)),
            "outsider_told" when Data<Chat>(record) is var d => new AccessEvent.OutsiderTold(new(d.Group)),
            _ => null,
        };
    }

    private static readonly JsonSerializerOptions Json = new(JsonSerializerOptions.Default)
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    private static EventRecord Record<T>(string type, T data) => new(type, Version, JsonSerializer.Serialize(data, Json));

    private static T Data<T>(EventRecord record)
    {
        if (record.Version != Version)
            throw new FormatException($"'{record.Type}' of version {record.Version} is not known here.");
        try
        {
            return JsonSerializer.Deserialize<T>(record.Data, Json)
                ?? throw new FormatException($"'{record.Type}' holds nothing.");
        }
        catch (JsonException e)
        {
            throw new FormatException($"'{record.Type}' cannot be read: {e.Message}", e);
        }
    }

    private sealed record Owner(string Person, string Name, string Chat, long At);

    private sealed record Waiting(string Group, string Title, string By);

    private sealed record Approved(string Group, string Title);

    private sealed record Move(string From, string To);

    private sealed record Chat(string Group);
}

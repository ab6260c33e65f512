using System.Text.Json;
using System.Text.Json.Serialization;

namespace HerdBot.Host.Telegram;

/// <summary>
/// The few fields of an update that mean something to us. Read by these and not by the library's types, which refuse a
/// whole message for one part of a kind they do not know (the origin of a forward, say), words and all.
/// </summary>
public sealed record WireUpdate
{
    public static readonly JsonSerializerOptions Options = new(JsonSerializerOptions.Default)
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        RespectNullableAnnotations = true,
    };

    public WireMessage? Message { get; init; }
    public WireMessage? EditedMessage { get; init; }
    public WireTap? CallbackQuery { get; init; }
    public WireMembership? MyChatMember { get; init; }
}

public sealed record WireMessage
{
    public required long MessageId { get; init; }
    public required long Date { get; init; }
    public required WireChat Chat { get; init; }
    public long? EditDate { get; init; }
    public WireUser? From { get; init; }
    public WireChat? SenderChat { get; init; }
    public string? AuthorSignature { get; init; }
    public WireUser? ViaBot { get; init; }
    public bool IsAutomaticForward { get; init; }
    public WireOrigin? ForwardOrigin { get; init; }
    public string? Text { get; init; }
    public string? Caption { get; init; }
    public WireReply? ReplyToMessage { get; init; }
    public bool IsTopicMessage { get; init; }
    public long? MessageThreadId { get; init; }
    public string? MediaGroupId { get; init; }
    public long? MigrateToChatId { get; init; }
    public long? MigrateFromChatId { get; init; }

    /// <summary>All else, for the names of what a message without words is.</summary>
    [JsonExtensionData]
    public IDictionary<string, JsonElement>? Rest { get; init; }
}

public sealed record WireReply
{
    public required long MessageId { get; init; }
}

public sealed record WireOrigin
{
    public WireUser? SenderUser { get; init; }
}

public sealed record WireTap
{
    public required string Id { get; init; }
    public required WireUser From { get; init; }
    public WireTapMessage? Message { get; init; }
    public string? Data { get; init; }
}

/// <summary>The message a button belongs to. Telegram tells no more of an old one than this.</summary>
public sealed record WireTapMessage
{
    public required WireChat Chat { get; init; }
}

public sealed record WireMembership
{
    public required WireChat Chat { get; init; }
    public required WireUser From { get; init; }
    public required long Date { get; init; }
    public required WireMember NewChatMember { get; init; }
}

public sealed record WireMember
{
    public required string Status { get; init; }
    public bool IsMember { get; init; }
}

public sealed record WireChat
{
    public required long Id { get; init; }
    public string? Type { get; init; }
    public string? Title { get; init; }
    public string? FirstName { get; init; }
    public string? LastName { get; init; }
}

public sealed record WireUser
{
    public required long Id { get; init; }
    public bool IsBot { get; init; }
    public string? FirstName { get; init; }
    public string? LastName { get; init; }
    public string? Username { get; init; }
}

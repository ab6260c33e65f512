using System.Text.Json;
using System.Text.RegularExpressions;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using NodaTime;

namespace HerdBot.Host.Telegram;

/// <summary>What a raw update means. Every update is read alone, long after it was stored.</summary>
public sealed partial class TelegramInbound(TelegramPresence presence) : IInboundFormat
{
    private static readonly string[] Wordless =
    [
        // An animation comes with a document of the same content, hence its place before it.
        "voice", "video_note", "video", "audio", "sticker", "animation", "photo", "document",
        "location", "contact", "poll", "dice",
    ];

    /// <inheritdoc/>
    public Inbound? Read(InboxEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        try
        {
            return JsonSerializer.Deserialize<WireUpdate>(entry.Raw, WireUpdate.Options) switch
            {
                { Message: { } message } => Message(entry, message),
                { EditedMessage: { } message } => Edit(entry, message),
                { CallbackQuery: { } tap } => Tap(entry, tap),
                { MyChatMember: { } change } => Membership(entry, change),
                _ => null,
            };
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or ArgumentOutOfRangeException)
        {
            throw new FormatException($"Update {entry.Key} cannot be read: {e.Message}", e);
        }
    }

    private Inbound? Message(InboxEntry entry, WireMessage message)
    {
        if (Moved(entry, message) is { } moved)
            return moved;
        if (!Counts(message))
            return null;
        var id = TelegramIds.MessageOf(message.Chat.Id, message.MessageId);
        var from = TelegramNames.Sender(message);
        var at = Instant.FromUnixTimeSeconds(message.Date);
        var group = TelegramIds.GroupOf(message.Chat.Id);
        if ((message.Text ?? message.Caption) is { Length: > 0 } text)
            return ForUs(text) is { } words
                ? new Inbound.Line(entry.Key, group, from, at, id, words, ReplyTo(message)) { Private = IsPrivate(message.Chat) }
                : null;
        return What(message) is { } what
            ? new Inbound.Wordless(entry.Key, group, from, at, id, what) { Private = IsPrivate(message.Chat) }
            : null;
    }

    private Inbound.Edit? Edit(InboxEntry entry, WireMessage message)
    {
        if (!Counts(message) || (message.Text ?? message.Caption) is not { Length: > 0 } text || ForUs(text) is not { } words)
            return null;
        return new Inbound.Edit(
            entry.Key, TelegramIds.GroupOf(message.Chat.Id), TelegramNames.Sender(message),
            Instant.FromUnixTimeSeconds(message.EditDate ?? message.Date),
            TelegramIds.MessageOf(message.Chat.Id, message.MessageId), words)
        { Private = IsPrivate(message.Chat) };
    }

    private static Inbound.Tap? Tap(InboxEntry entry, WireTap tap) =>
        tap is { Message: { } message, Data: { } data }
            // A press bears no time of its own.
            ? new Inbound.Tap(entry.Key, TelegramIds.GroupOf(message.Chat.Id), TelegramNames.Of(tap.From), entry.ReceivedAt, data)
            { Private = IsPrivate(message.Chat) }
            : null;

    private static Inbound.Membership? Membership(InboxEntry entry, WireMembership change)
    {
        if (change.Chat.Type == "channel")
            return null;
        var member = change.NewChatMember.Status switch
        {
            "creator" or "administrator" or "member" => true,
            "restricted" => change.NewChatMember.IsMember,
            "left" or "kicked" => false,
            var unknown => throw new FormatException($"Update {entry.Key} tells of an unknown standing, '{unknown}'."),
        };
        return new Inbound.Membership(
            entry.Key, TelegramIds.GroupOf(change.Chat.Id), TelegramNames.Of(change.From),
            Instant.FromUnixTimeSeconds(change.Date), TelegramNames.Title(change.Chat), member)
        { Private = IsPrivate(change.Chat) };
    }

    // Both chats are told of a move: the old one where it went, the new one whence it came.
    private static Inbound.Moved? Moved(InboxEntry entry, WireMessage message)
    {
        var (old, to) = message switch
        {
            { MigrateToChatId: { } target } => (message.Chat.Id, target),
            { MigrateFromChatId: { } source } => (source, message.Chat.Id),
            _ => (0, 0),
        };
        return to == 0
            ? null
            : new Inbound.Moved(
                entry.Key, TelegramIds.GroupOf(old), TelegramNames.Sender(message),
                Instant.FromUnixTimeSeconds(message.Date), TelegramIds.GroupOf(to));
    }

    // Neither other bots nor our own words, brought back by somebody's forwarding, may record anything.
    private static bool Counts(WireMessage message) => message switch
    {
        { Chat.Type: "channel" } or { IsAutomaticForward: true } or { ViaBot: not null } => false,
        { ForwardOrigin.SenderUser.IsBot: true } => false,
        { SenderChat: null, From.IsBot: true } => false,
        _ => true,
    };

    // The words as typed, less the bot's own name after a command; null where the command is for another bot.
    private string? ForUs(string text)
    {
        if (AddressedCommand().Match(text) is not { Success: true } command)
            return text;
        var named = command.Groups["bot"].Value;
        if (presence.UserName is { } ours && !named.Equals(ours, StringComparison.OrdinalIgnoreCase))
            return null;
        return command.Groups["command"].Value + text[command.Length..];
    }

    // In a topic, a message that replies to nothing still points at the topic's first message.
    private static string? ReplyTo(WireMessage message) => message switch
    {
        { IsTopicMessage: true, ReplyToMessage.MessageId: var first, MessageThreadId: { } topic } when first == topic => null,
        { ReplyToMessage.MessageId: var id } => TelegramIds.MessageOf(message.Chat.Id, id),
        _ => null,
    };

    // The other pictures of an album have no caption of their own and say nothing.
    private static string? What(WireMessage message) => message.MediaGroupId is not null
        ? null
        : Array.Find(Wordless, name => message.Rest?.ContainsKey(name) == true);

    private static bool IsPrivate(WireChat chat) => chat.Type == "private";

    [GeneratedRegex("^(?<command>/[A-Za-z0-9_]{1,32})@(?<bot>[A-Za-z0-9_]{1,64})", RegexOptions.CultureInvariant)]
    private static partial Regex AddressedCommand();
}

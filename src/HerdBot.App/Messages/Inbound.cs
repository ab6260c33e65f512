using HerdBot.App.Ports;
using NodaTime;

namespace HerdBot.App.Messages;

/// <summary>Somebody in a chat.</summary>
/// <param name="Key">Names the person for good, "tg:4711" or "name:Ana".</param>
/// <param name="Name">What the group calls them.</param>
public sealed record Person(string Key, string Name);

/// <summary>What came in from a chat, without any vendor's type. A closed set.</summary>
/// <param name="Key">The inbox entry's key.</param>
/// <param name="Group">The chat it came from; for a private chat, the person's own.</param>
/// <param name="From">Who sent it.</param>
/// <param name="At">When the chat's server took it, or when it was taken in.</param>
public abstract record Inbound(string Key, GroupId Group, Person From, Instant At)
{
    /// <summary>True where it came from a private chat with one person.</summary>
    public bool Private { get; init; }

    /// <summary>A message with words.</summary>
    /// <param name="Key">The inbox entry's key.</param>
    /// <param name="Group">The chat.</param>
    /// <param name="From">Who wrote it.</param>
    /// <param name="At">When.</param>
    /// <param name="MessageId">The chat's own id of the message.</param>
    /// <param name="Text">What was typed; a photo's caption counts.</param>
    /// <param name="ReplyTo">The chat's id of the message it replies to.</param>
    public sealed record Line(string Key, GroupId Group, Person From, Instant At, string MessageId, string Text, string? ReplyTo)
        : Inbound(Key, Group, From, At);

    /// <summary>An earlier message with new words.</summary>
    /// <param name="Key">The inbox entry's key.</param>
    /// <param name="Group">The chat.</param>
    /// <param name="From">Who wrote it.</param>
    /// <param name="At">When it was edited.</param>
    /// <param name="MessageId">The chat's own id of the message.</param>
    /// <param name="Text">What it says now.</param>
    public sealed record Edit(string Key, GroupId Group, Person From, Instant At, string MessageId, string Text)
        : Inbound(Key, Group, From, At);

    /// <summary>A press on a button of one of the bot's posts.</summary>
    /// <param name="Key">The inbox entry's key.</param>
    /// <param name="Group">The chat.</param>
    /// <param name="From">Who pressed.</param>
    /// <param name="At">When.</param>
    /// <param name="Data">What the button carries, as it was sent.</param>
    public sealed record Tap(string Key, GroupId Group, Person From, Instant At, string Data)
        : Inbound(Key, Group, From, At);

    /// <summary>A voice note, sticker, video or the like without words.</summary>
    /// <param name="Key">The inbox entry's key.</param>
    /// <param name="Group">The chat.</param>
    /// <param name="From">Who sent it.</param>
    /// <param name="At">When.</param>
    /// <param name="MessageId">The chat's own id of the message.</param>
    /// <param name="What">What it is, in the chat's word.</param>
    public sealed record Wordless(string Key, GroupId Group, Person From, Instant At, string MessageId, string What)
        : Inbound(Key, Group, From, At);

    /// <summary>The bot was added to a chat, or removed from it.</summary>
    /// <param name="Key">The inbox entry's key.</param>
    /// <param name="Group">The chat.</param>
    /// <param name="From">Who did it.</param>
    /// <param name="At">When.</param>
    /// <param name="Title">The chat's title.</param>
    /// <param name="Member">True where the bot is in the chat now.</param>
    public sealed record Membership(string Key, GroupId Group, Person From, Instant At, string Title, bool Member)
        : Inbound(Key, Group, From, At);

    /// <summary>Nothing could be heard for so long that the chat's server has forgotten what was written meanwhile.</summary>
    /// <param name="Key">Names it for good.</param>
    /// <param name="Group">The group.</param>
    /// <param name="From">Nobody in particular.</param>
    /// <param name="At">When it was noticed.</param>
    /// <param name="Since">When the bot heard last.</param>
    public sealed record Missed(string Key, GroupId Group, Person From, Instant At, Instant Since)
        : Inbound(Key, Group, From, At);

    /// <summary>The chat goes on under a new id.</summary>
    /// <param name="Key">The inbox entry's key.</param>
    /// <param name="Group">The old chat.</param>
    /// <param name="From">Who caused it.</param>
    /// <param name="At">When.</param>
    /// <param name="To">The new chat.</param>
    public sealed record Moved(string Key, GroupId Group, Person From, Instant At, GroupId To)
        : Inbound(Key, Group, From, At);
}

using HerdBot.App.Messages;
using HerdBot.App.Ports;
using NodaTime;

namespace HerdBot.App.Access;

/// <summary>What is remembered of who may use the bot and where. A closed set.</summary>
public abstract record AccessEvent
{
    private AccessEvent() { }

    /// <summary>Somebody gave the set-up code and owns the bot from now on.</summary>
    /// <param name="Person">The owner.</param>
    /// <param name="Chat">The private chat with them.</param>
    /// <param name="At">When.</param>
    public sealed record OwnerKnown(Person Person, GroupId Chat, Instant At) : AccessEvent;

    /// <summary>The bot is in a group that nobody has agreed to yet; it was told so.</summary>
    /// <param name="Group">The group.</param>
    /// <param name="Title">Its title; empty where not known.</param>
    /// <param name="By">Who brought the bot there or wrote first.</param>
    public sealed record GroupWaiting(GroupId Group, string Title, string By) : AccessEvent;

    /// <summary>The bot works in this group.</summary>
    /// <param name="Group">The group.</param>
    /// <param name="Title">Its title; empty where not known.</param>
    public sealed record GroupApproved(GroupId Group, string Title) : AccessEvent;

    /// <summary>The bot stays silent in this group.</summary>
    /// <param name="Group">The group.</param>
    public sealed record GroupRefused(GroupId Group) : AccessEvent;

    /// <summary>A group goes on under a new id. Its history keeps the old name.</summary>
    /// <param name="From">The old chat.</param>
    /// <param name="To">The new chat.</param>
    public sealed record GroupMoved(GroupId From, GroupId To) : AccessEvent;

    /// <summary>Somebody who has no business here was told so, and need not be told again.</summary>
    /// <param name="Chat">The private chat.</param>
    public sealed record OutsiderTold(GroupId Chat) : AccessEvent;
}

using System.Collections.Immutable;
using NodaTime;

namespace HerdBot.App.Ports;

/// <summary>A button under a post.</summary>
/// <param name="Label">What it says: the whole answer.</param>
/// <param name="Data">What a press brings back, at most 64 bytes in UTF-8.</param>
public sealed record PostButton(string Label, string Data);

/// <summary>What the chat is asked to do.</summary>
public enum OutgoingKind
{
    /// <summary>Send a new message.</summary>
    Send,
    /// <summary>Put new words and buttons into an earlier message of ours.</summary>
    Edit,
    /// <summary>Set a mark on somebody's message.</summary>
    Mark,
}

/// <summary>One thing to be sent. Plain text; the chat adds no meaning to any character of it.</summary>
/// <param name="Group">Where to.</param>
/// <param name="Number">The post's number in its group: its key for good.</param>
/// <param name="Kind">What to do.</param>
/// <param name="Text">What it says; the mark itself for <see cref="OutgoingKind.Mark"/>.</param>
public sealed record Outgoing(GroupId Group, int Number, OutgoingKind Kind, string Text)
{
    /// <summary>The person meant where it is not the whole group, by name.</summary>
    public string? ToPerson { get; init; }
    /// <summary>An alarm: it may ring.</summary>
    public bool Loud { get; init; }
    /// <summary>Buttons, at most three.</summary>
    public ImmutableArray<PostButton> Buttons { get; init; } = [];
    /// <summary>A picture in PNG that goes with the words; empty for none.</summary>
    public ReadOnlyMemory<byte> Picture { get; init; }
    /// <summary>The chat's id of the message it replies to, is set on (a mark), or changes (an edit).</summary>
    public string? Target { get; init; }
}

/// <summary>What came of sending. A closed set.</summary>
public abstract record SendResult
{
    private SendResult() { }

    /// <summary>The chat has it.</summary>
    /// <param name="MessageId">The chat's id of the message.</param>
    public sealed record Sent(string MessageId) : SendResult;

    /// <summary>The chat wants a pause; nothing was sent.</summary>
    /// <param name="Pause">How long.</param>
    public sealed record Wait(Duration Pause) : SendResult;

    /// <summary>It was certainly not sent, and may be tried again: the line is down.</summary>
    /// <param name="Why">For the log.</param>
    public sealed record NotSent(string Why) : SendResult;

    /// <summary>It may or may not have been sent.</summary>
    /// <param name="Why">For the log.</param>
    public sealed record Unknown(string Why) : SendResult;

    /// <summary>The chat says no for now: rights removed, kicked, message gone. What is due stays due.</summary>
    /// <param name="Why">The chat's own words, for the log and the owner.</param>
    public sealed record Refused(string Why) : SendResult;

    /// <summary>The chat goes on under a new id; send again there.</summary>
    /// <param name="To">The new chat.</param>
    public sealed record Moved(GroupId To) : SendResult;
}

/// <summary>Sends to a chat. Never throws for what the chat or the line does.</summary>
public interface IChat
{
    /// <summary>How many posts one group takes in a minute; null where it takes any number.</summary>
    int? MostAMinute { get; }

    /// <summary>Sends one thing, once.</summary>
    Task<SendResult> SendAsync(Outgoing outgoing, CancellationToken cancellation = default);
}

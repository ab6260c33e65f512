using System.Collections.Immutable;
using HerdBot.App.Ports;

namespace HerdBot.App.Access;

/// <summary>Something the bot has to say about access.</summary>
/// <param name="Chat">The chat it goes to, as the chat is called today.</param>
/// <param name="Text">What it says.</param>
public sealed record AccessPost(GroupId Chat, string Text)
{
    /// <summary>Buttons under it.</summary>
    public ImmutableArray<PostButton> Buttons { get; init; } = [];
}

/// <summary>What becomes of something that came in, as far as access goes. A closed set.</summary>
public abstract record AccessDecision
{
    private AccessDecision() { }

    /// <summary>It may go on to this history.</summary>
    /// <param name="Stream">The history it belongs to, whatever the chat is called today.</param>
    public sealed record Pass(GroupId Stream) : AccessDecision;

    /// <summary>It ends here, with events for the bot's own history and perhaps something to say.</summary>
    /// <param name="Events">To be written in one commit; may be empty.</param>
    /// <param name="Posts">To be said once they are written.</param>
    public sealed record Settle(ImmutableArray<AccessEvent> Events, ImmutableArray<AccessPost> Posts) : AccessDecision;

    /// <summary>It ends here, in silence.</summary>
    public sealed record Ignore : AccessDecision;
}

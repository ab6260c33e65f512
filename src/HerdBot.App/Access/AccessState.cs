using System.Collections.Immutable;
using System.Diagnostics;
using HerdBot.App.Messages;
using HerdBot.App.Ports;

namespace HerdBot.App.Access;

/// <summary>How the bot stands with a group.</summary>
public enum Standing
{
    /// <summary>The owner has not said yet.</summary>
    Waiting,
    /// <summary>The bot works there.</summary>
    Approved,
    /// <summary>The bot stays silent there.</summary>
    Refused,
}

/// <summary>A group the bot knows of.</summary>
/// <param name="Stream">The name of its history: the chat's first id.</param>
/// <param name="Standing">How the bot stands with it.</param>
/// <param name="Title">Its title; empty where not known.</param>
/// <param name="By">Who brought the bot there; empty where not known.</param>
public sealed record KnownGroup(GroupId Stream, Standing Standing, string Title, string By);

/// <summary>Who may use the bot and where; follows from the bot's own history alone.</summary>
public sealed record AccessState
{
    /// <summary>The history that holds the access events.</summary>
    public static readonly GroupId BotStream = new("bot");

    /// <summary>Before anything happened.</summary>
    public static AccessState Empty { get; } = new();

    /// <summary>The owner; null until somebody gave the set-up code.</summary>
    public AccessEvent.OwnerKnown? Owner { get; private init; }

    /// <summary>Every group the bot has been in, in the order it came to know them. None is ever removed.</summary>
    public ImmutableList<KnownGroup> Groups { get; private init; } = [];

    private ImmutableHashSet<GroupId> Told { get; init; } = [];

    private ImmutableDictionary<GroupId, GroupId> Streams { get; init; } = ImmutableDictionary<GroupId, GroupId>.Empty;

    private ImmutableDictionary<GroupId, GroupId> Chats { get; init; } = ImmutableDictionary<GroupId, GroupId>.Empty;

    /// <summary>What follows from a history, passing over events that do not concern access.</summary>
    public static AccessState Fold(IEnumerable<EventRecord> history)
    {
        ArgumentNullException.ThrowIfNull(history);
        return history.Select(AccessEventFormat.Read).OfType<AccessEvent>().Aggregate(Empty, (state, e) => state.Apply(e));
    }

    /// <summary>The state after one more event.</summary>
    public AccessState Apply(AccessEvent accessEvent) => accessEvent switch
    {
        AccessEvent.OwnerKnown e => this with { Owner = e },
        AccessEvent.GroupWaiting e => With(new KnownGroup(StreamOf(e.Group), Standing.Waiting, e.Title, e.By)),
        AccessEvent.GroupApproved e => With(Known(e.Group, e.Title) with { Standing = Standing.Approved }),
        AccessEvent.GroupRefused e => With(Known(e.Group) with { Standing = Standing.Refused }),
        AccessEvent.GroupMoved e => this with
        {
            Streams = Streams.SetItem(e.To, StreamOf(e.From)),
            Chats = Chats.SetItem(StreamOf(e.From), e.To),
        },
        AccessEvent.OutsiderTold e => this with { Told = Told.Add(e.Chat) },
        _ => throw new UnreachableException(),
    };

    /// <summary>The history a chat belongs to: its own, or that of the chat it once was.</summary>
    public GroupId StreamOf(GroupId chat) => Streams.GetValueOrDefault(chat, chat);

    /// <summary>The chat in which a history goes on today.</summary>
    public GroupId ChatOf(GroupId stream) => Chats.GetValueOrDefault(stream, stream);

    /// <summary>The group that a chat is; null where the bot has not heard of it.</summary>
    public KnownGroup? Find(GroupId chat) => Groups.Find(group => group.Stream == StreamOf(chat));

    /// <summary>True where this person owns the bot.</summary>
    public bool IsOwner(Person person)
    {
        ArgumentNullException.ThrowIfNull(person);
        return Owner?.Person.Key == person.Key;
    }

    /// <summary>True where a private chat was told that nothing is done there.</summary>
    public bool WasTold(GroupId chat) => Told.Contains(chat);

    /// <summary>The one group the bot works in; null where there is none or more than one.</summary>
    public GroupId? OnlyGroup
    {
        get
        {
            var approved = Groups.FindAll(group => group.Standing == Standing.Approved);
            return approved.Count == 1 ? approved[0].Stream : null;
        }
    }

    private KnownGroup Known(GroupId chat, string title = "")
    {
        var known = Find(chat) ?? new KnownGroup(StreamOf(chat), Standing.Waiting, "", "");
        return title.Length > 0 ? known with { Title = title } : known;
    }

    private AccessState With(KnownGroup group)
    {
        var index = Groups.FindIndex(known => known.Stream == group.Stream);
        return this with { Groups = index < 0 ? Groups.Add(group) : Groups.SetItem(index, group) };
    }
}

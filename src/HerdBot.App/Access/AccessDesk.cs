using System.Collections.Immutable;
using System.Globalization;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Reading;
using HerdBot.Core.Wording;
using NodaTime;

namespace HerdBot.App.Access;

/// <summary>Decides who is heard. Pure: the state, what came in and the time give the decision.</summary>
/// <param name="language">The farm's language.</param>
/// <param name="code">The set-up code on the console; null where none was made.</param>
public sealed class AccessDesk(Language language, SetUpCode? code)
{
    private const string Yes = "access:yes:";
    private const string No = "access:no:";

    private readonly Phrases phrases = Phrases.Of(language);

    /// <summary>What becomes of something that came in.</summary>
    /// <param name="state">Who may use the bot and where.</param>
    /// <param name="inbound">What came in.</param>
    /// <param name="now">The present.</param>
    /// <param name="home">For a private chat: the history in which this person is known; null where in none.</param>
    public AccessDecision Decide(AccessState state, Inbound inbound, Instant now, GroupId? home = null)
    {
        ArgumentNullException.ThrowIfNull(state);
        return inbound switch
        {
            Inbound.Moved move => Moved(state, move.Group, move.To),
            { Private: true } => InPrivate(state, inbound, now, home),
            Inbound.Membership change => InGroup(state, inbound, change.Title, added: change.Member),
            _ => InGroup(state, inbound, "", added: false),
        };
    }

    /// <summary>What becomes of the news that a chat goes on under a new id, however it came. The same news twice does nothing.</summary>
    /// <param name="state">Who may use the bot and where.</param>
    /// <param name="from">The old chat.</param>
    /// <param name="to">The new chat.</param>
    public static AccessDecision Moved(AccessState state, GroupId from, GroupId to)
    {
        ArgumentNullException.ThrowIfNull(state);
        var known = state.Find(from) is not null && from != to;
        return known && state.StreamOf(to) != state.StreamOf(from)
            ? Settle([new AccessEvent.GroupMoved(from, to)])
            : new AccessDecision.Ignore();
    }

    /// <summary>The owner is told in private that a group's posts do not get through.</summary>
    /// <param name="state">Who may use the bot and where.</param>
    /// <param name="stream">The group's history.</param>
    /// <param name="since">Since when, as the farm says hours.</param>
    /// <param name="why">The chat's or the line's words.</param>
    /// <param name="posts">How many posts wait.</param>
    public AccessDecision Stuck(AccessState state, GroupId stream, string since, string why, int posts) => ToOwner(state, phrases.Say("door.stuck",
        ("group", TitleOf(state, stream)), ("since", since), ("why", why), ("n", posts.ToString(CultureInfo.InvariantCulture))));

    /// <summary>The owner is told in private that a group's posts get through again.</summary>
    /// <param name="state">Who may use the bot and where.</param>
    /// <param name="stream">The group's history.</param>
    public AccessDecision Unstuck(AccessState state, GroupId stream) => ToOwner(state, phrases.Say("door.unstuck", ("group", TitleOf(state, stream))));

    private static AccessDecision ToOwner(AccessState state, string text)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state.Owner is { } owner ? Settle([], [new AccessPost(owner.Chat, text)]) : new AccessDecision.Ignore();
    }

    private AccessDecision InGroup(AccessState state, Inbound inbound, string title, bool added)
    {
        var group = state.Find(inbound.Group);
        if (group?.Standing == Standing.Approved)
            return new AccessDecision.Pass(group.Stream);
        if (added && state.IsOwner(inbound.From))
            return Approve(state, inbound.Group, title);
        var leaving = inbound is Inbound.Membership && !added;
        return group is null && !leaving ? Wait(state, inbound, title) : new AccessDecision.Ignore();
    }

    private AccessDecision.Settle Wait(AccessState state, Inbound inbound, string title)
    {
        var waiting = new AccessEvent.GroupWaiting(inbound.Group, title, inbound.From.Name);
        var next = state.Apply(waiting);
        ImmutableArray<AccessPost> asked = state.Owner is { } owner ? [Question(owner, next, next.Find(inbound.Group)!)] : [];
        return Settle([waiting], [new AccessPost(inbound.Group, phrases.Say("door.waits")), .. asked]);
    }

    private AccessDecision.Settle Approve(AccessState state, GroupId chat, string title) =>
        Settle([new AccessEvent.GroupApproved(state.StreamOf(chat), title)], [new AccessPost(state.ChatOf(state.StreamOf(chat)), phrases.Say("door.begins"))]);

    private AccessDecision InPrivate(AccessState state, Inbound inbound, Instant now, GroupId? home) => inbound switch
    {
        Inbound.Membership => new AccessDecision.Ignore(),
        Inbound.Line line when Code(line.Text) is { } typed && code?.Opens(typed, now, state.Owner?.At) == true
            => Own(state, line, now),
        Inbound.Line line when Code(line.Text) is not null && state.Owner is null
            => Settle([], [new AccessPost(line.Group, phrases.Say("door.bad_code"))]),
        Inbound.Tap tap when Asked(state, tap.Data) is { } group => state.IsOwner(tap.From)
            ? Answered(state, tap, group)
            : new AccessDecision.Ignore(),
        // A button in a private chat was posted there by the bot, for just this person.
        Inbound.Tap => Into(home ?? state.OnlyGroup),
        _ when home is { } stream => new AccessDecision.Pass(stream),
        _ when state.IsOwner(inbound.From) => OwnersWords(state, inbound),
        _ => Outsider(state, inbound),
    };

    private AccessDecision.Settle Own(AccessState state, Inbound.Line line, Instant now)
    {
        var owner = new AccessEvent.OwnerKnown(line.From, line.Group, now);
        var waiting = state.Groups.FindAll(group => group.Standing == Standing.Waiting);
        return Settle([owner], [new AccessPost(line.Group, phrases.Say("door.welcome")), .. waiting.Select(group => Question(owner, state, group))]);
    }

    private AccessDecision OwnersWords(AccessState state, Inbound inbound)
    {
        if (state.OnlyGroup is { } stream)
            return new AccessDecision.Pass(stream);
        var several = state.Groups.Exists(group => group.Standing == Standing.Approved);
        return Settle([], [new AccessPost(inbound.Group, several ? phrases.Say("door.which_group") : phrases.Say("door.add_me"))]);
    }

    private AccessDecision Outsider(AccessState state, Inbound inbound) => state.WasTold(inbound.Group)
        ? new AccessDecision.Ignore()
        : Settle([new AccessEvent.OutsiderTold(inbound.Group)], [new AccessPost(inbound.Group, phrases.Say("door.outsider"))]);

    private AccessDecision Answered(AccessState state, Inbound.Tap tap, KnownGroup group)
    {
        var (standing, said) = tap.Data.StartsWith(Yes, StringComparison.Ordinal)
            ? (Standing.Approved, "door.approved")
            : (Standing.Refused, "door.refused");
        if (group.Standing == standing)
            return new AccessDecision.Ignore();
        var answer = new AccessPost(tap.Group, phrases.Say(said, ("group", Title(group))));
        return standing == Standing.Refused
            ? Settle([new AccessEvent.GroupRefused(group.Stream)], [answer])
            : Settle([new AccessEvent.GroupApproved(group.Stream, "")], [answer, new AccessPost(state.ChatOf(group.Stream), phrases.Say("door.begins"))]);
    }

    private AccessPost Question(AccessEvent.OwnerKnown owner, AccessState state, KnownGroup group)
    {
        // The group's place in the list, which never changes, keeps the data short whatever the group is called.
        var number = state.Groups.IndexOf(group).ToString(CultureInfo.InvariantCulture);
        return new AccessPost(owner.Chat, phrases.Say("door.may_i", ("group", Title(group)), ("by", group.By)))
        {
            Buttons = [new PostButton(phrases.Say("door.approve"), Yes + number), new PostButton(phrases.Say("door.refuse"), No + number)],
        };
    }

    private static KnownGroup? Asked(AccessState state, string data)
    {
        var number = data.StartsWith(Yes, StringComparison.Ordinal) ? data[Yes.Length..]
            : data.StartsWith(No, StringComparison.Ordinal) ? data[No.Length..]
            : "";
        return int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var index) && index < state.Groups.Count
            ? state.Groups[index]
            : null;
    }

    private static string? Code(string text) =>
        text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries) is ["/start", var typed] ? typed : null;

    private static AccessDecision Into(GroupId? stream) =>
        stream is { } known ? new AccessDecision.Pass(known) : new AccessDecision.Ignore();

    private string TitleOf(AccessState state, GroupId stream) => state.Find(stream) is { } group ? Title(group) : phrases.Say("door.some_group");

    private string Title(KnownGroup group) => group.Title.Length > 0 ? $"'{group.Title}'" : phrases.Say("door.some_group");

    private static AccessDecision.Settle Settle(ImmutableArray<AccessEvent> events, ImmutableArray<AccessPost> posts = default) =>
        new(events, posts.IsDefault ? [] : posts);
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace HerdBot.App.Access;

/// <summary>The door of a bot that anybody can write to: what it decides and what it says is in the bot's own history.</summary>
/// <param name="store">Where that history is.</param>
/// <param name="desk">Decides.</param>
/// <param name="chat">Where it answers.</param>
/// <param name="time">The clock.</param>
/// <param name="log">For what goes wrong.</param>
public sealed partial class AccessDoor(IHerdStore store, AccessDesk desk, IChat chat, TimeProvider time, ILogger<AccessDoor> log) : IDoor, IDisposable
{
    private const string PostType = "door_post";
    private const string SentType = "door_post_sent";
    private static readonly Duration Shortest = Duration.FromSeconds(5);
    private static readonly Duration Longest = Duration.FromMinutes(5);

    // What comes in is decided while what was decided is being sent: each changes the history in its turn.
    private readonly SemaphoreSlim lane = new(1, 1);
    private ImmutableSortedDictionary<int, AccessPost> unsent = ImmutableSortedDictionary<int, AccessPost>.Empty;
    private AccessState state = AccessState.Empty;
    private long version;
    private int posts;
    private Instant notBefore = Instant.MinValue;
    private Duration pause = Shortest;

    /// <summary>Whether somebody owns the bot already.</summary>
    public bool HasOwner => state.Owner is not null;

    /// <inheritdoc/>
    public async Task<IReadOnlyList<GroupId>> KnownAsync(CancellationToken cancellation = default)
    {
        await lane.InTurnAsync(async () =>
        {
            foreach (var stored in await store.ReadGroupAsync(AccessState.BotStream, version, cancellation))
            {
                Apply(stored.Commit.Events);
                version = stored.Version;
            }
        }, cancellation);
        return [.. state.Groups.Where(group => group.Standing == Standing.Approved).Select(group => group.Stream)];
    }

    /// <inheritdoc/>
    public async Task<GroupId?> AdmitAsync(Inbound inbound, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(inbound);
        return await SettleAsync(() => desk.Decide(state, inbound, Now()), () => inbound.Key, cancellation) is AccessDecision.Pass pass ? pass.Stream : null;
    }

    /// <inheritdoc/>
    public GroupId ChatOf(GroupId group) => state.ChatOf(group);

    /// <inheritdoc/>
    public Task MovedAsync(GroupId from, GroupId to, CancellationToken cancellation = default) =>
        SettleAsync(() => AccessDesk.Moved(state, from, to), () => OwnKey("moved"), cancellation);

    /// <summary>Tells the owner in private that a group's posts do not get through; sent with what else is to be said at the door.</summary>
    public Task TellStuckAsync(GroupId group, string since, string why, int posts, CancellationToken cancellation = default) =>
        SettleAsync(() => desk.Stuck(state, group, since, why, posts), () => OwnKey("stuck"), cancellation);

    /// <summary>Tells the owner in private that a group's posts get through again.</summary>
    public Task TellUnstuckAsync(GroupId group, CancellationToken cancellation = default) =>
        SettleAsync(() => desk.Unstuck(state, group), () => OwnKey("unstuck"), cancellation);

    /// <inheritdoc/>
    public void Dispose() => lane.Dispose();

    /// <inheritdoc/>
    public async Task<Instant?> DeliverAsync(CancellationToken cancellation = default)
    {
        while (unsent is { Count: > 0 } waiting)
        {
            if (Now() < notBefore)
            {
                return notBefore;
            }
            var (number, post) = waiting.First();
            // Where the chat has gone on under a new id since, the post follows it.
            var where = state.ChatOf(state.StreamOf(post.Chat));
            var result = await chat.SendAsync(new Outgoing(where, number, OutgoingKind.Send, post.Text) { Buttons = post.Buttons }, cancellation);
            switch (result)
            {
                case SendResult.Moved moved when state.Find(where) is not null:
                    await MovedAsync(where, moved.To, cancellation);
                    break;
                case SendResult.Moved moved:
                    LogRefused(number, $"gone to {moved.To}");
                    await NoteAsync(number, "gone", cancellation);
                    continue;
                case SendResult.Sent:
                    await NoteAsync(number, "", cancellation);
                    continue;
                case SendResult.Refused refused:
                    LogRefused(number, refused.Why);
                    await NoteAsync(number, refused.Why, cancellation);
                    continue;
                case SendResult.Wait wait:
                    return notBefore = Now() + wait.Pause;
            }
            pause = Duration.Min(pause * 2, Longest);
            return notBefore = Now() + pause;
        }
        pause = Shortest;
        return null;
    }

    private async Task<AccessDecision> SettleAsync(Func<AccessDecision> decide, Func<string> key, CancellationToken cancellation)
    {
        AccessDecision? decision = null;
        await lane.InTurnAsync(async () =>
        {
            decision = decide();
            if (decision is AccessDecision.Settle settle)
            {
                var said = settle.Posts.Select((post, index) => Written(posts + index + 1, post));
                await AppendAsync(key(), [.. settle.Events.Select(AccessEventFormat.Write), .. said], cancellation);
            }
        }, cancellation);
        return decision!;
    }

    private Task NoteAsync(int number, string why, CancellationToken cancellation) => lane.InTurnAsync(() =>
        AppendAsync(OwnKey("sent"), [new EventRecord(SentType, 1, JsonSerializer.Serialize(new Sent(number, why)))], cancellation), cancellation);

    private async Task AppendAsync(string key, ImmutableArray<EventRecord> events, CancellationToken cancellation)
    {
        if (events.IsEmpty)
        {
            return;
        }
        try
        {
            await store.AppendAsync(new Commit(AccessState.BotStream, version, key, Now(), events), cancellation);
        }
        catch (StoreDuplicateException)
        {
            return;
        }
        version++;
        Apply(events);
    }

    private void Apply(ImmutableArray<EventRecord> events)
    {
        foreach (var record in events)
        {
            switch (record.Type)
            {
                case PostType:
                    var waiting = JsonSerializer.Deserialize<Waiting>(record.Data)!;
                    posts = waiting.Number;
                    unsent = unsent.SetItem(waiting.Number, new AccessPost(new GroupId(waiting.Chat), waiting.Text) { Buttons = waiting.Buttons });
                    break;
                case SentType:
                    unsent = unsent.Remove(JsonSerializer.Deserialize<Sent>(record.Data)!.Number);
                    break;
                default:
                    state = AccessEventFormat.Read(record) is { } known ? state.Apply(known) : state;
                    break;
            }
        }
    }

    private static EventRecord Written(int number, AccessPost post) =>
        new(PostType, 1, JsonSerializer.Serialize(new Waiting(number, post.Chat.Value, post.Text, post.Buttons)));

    private string OwnKey(string what) => string.Create(CultureInfo.InvariantCulture, $"bot/{version + 1}/{what}");

    private Instant Now() => Instant.FromDateTimeOffset(time.GetUtcNow());

    [LoggerMessage(2201, LogLevel.Warning, "A word at the door, number {Number}, was refused: {Why}")]
    private partial void LogRefused(int number, string why);

    private sealed record Waiting(int Number, string Chat, string Text, ImmutableArray<PostButton> Buttons);

    private sealed record Sent(int Number, string Why);
}

using System.Collections.Immutable;
using System.Globalization;
using HerdBot.App.Herds;
using HerdBot.App.Ports;
using HerdBot.App.Records;
using HerdBot.Core.Decisions;
using HerdBot.Core.Events;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using NodaTime;

namespace HerdBot.App.Messages;

/// <summary>
/// One group's history and state. Every decision is made here, one at a time, and is on the disk before it counts.
/// </summary>
public sealed class GroupDesk : IDisposable
{
    private readonly IHerdStore store;
    private readonly SemaphoreSlim lane = new(1, 1);
    private long version;
    private Instant? offSince;

    private GroupDesk(GroupId group, Farm farm, IHerdStore store) => (Group, Farm, this.store) = (group, farm, store);

    /// <summary>Whose history it is.</summary>
    public GroupId Group { get; }

    /// <summary>The farm's settings.</summary>
    public Farm Farm { get; }

    /// <summary>What the history comes to. Replaced by each commit, never changed.</summary>
    public HerdState State { get; private set; } = HerdState.Empty;

    /// <summary>Reads a group's history, and adds the animals of the settings and of imported lists that it does not know yet.</summary>
    /// <param name="group">Whose.</param>
    /// <param name="farm">The farm's settings.</param>
    /// <param name="herd">The animals that the settings name.</param>
    /// <param name="store">Where the history is.</param>
    /// <param name="now">When.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<GroupDesk> OpenAsync(
        GroupId group, Farm farm, IEnumerable<Animal> herd, IHerdStore store, Instant now, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        var desk = new GroupDesk(group, farm, store);
        foreach (var stored in await store.ReadGroupAsync(group, 0, cancellation))
        {
            desk.State = desk.State.Apply(stored.Commit.Events.Select(EventCodec.Read));
            desk.version = stored.Version;
        }
        desk.offSince = desk.State.LastAt;
        // Whoever was added here already, or goes by such a name, is not added again.
        var known = desk.State.Added.Select(added => added.Animal.Id).ToHashSet();
        var added = herd.Concat(await HerdImport.ReadAsync(store, cancellation)).Where(animal => desk.State.Named(animal.Name) is null && known.Add(animal.Id))
            .Select(animal => (HerdEvent)new HerdEvent.AnimalAdded(animal)).ToImmutableArray();
        await desk.CommitAsync(desk.OwnKey("herd"), added, now, cancellation);
        return desk;
    }

    /// <summary>Works on what came in. Passed over where it was worked on before.</summary>
    /// <param name="inbound">What came in.</param>
    /// <param name="now">The instant that counts as its coming.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>A fault of our own that kept it from being worked on, which the sender is told of; null where there is none.</returns>
    public async Task<Exception?> HandleAsync(Inbound inbound, Instant now, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(inbound);
        Exception? fault = null;
        await lane.InTurnAsync(async () =>
        {
            try
            {
                await CommitAsync(inbound.Key, DecideSafely(inbound, now, out fault), now, cancellation);
            }
            catch (StoreDuplicateException)
            {
                // It was worked on before: the same update twice is one message.
            }
        }, cancellation);
        return fault;
    }

    /// <summary>Queues what is due.</summary>
    /// <returns>When to look again; null where nothing can fall due.</returns>
    public async Task<Instant?> RemindAsync(Instant now, CancellationToken cancellation = default)
    {
        Instant? next = null;
        await lane.InTurnAsync(async () =>
        {
            (var events, next) = Remind.At(State, Farm, now, offSince);
            offSince = null;
            await CommitAsync(OwnKey("due"), events, now, cancellation);
        }, cancellation);
        return next;
    }

    /// <summary>Notes how a post fares on its way to the chat.</summary>
    public Task NoteAsync(HerdEvent fared, Instant now, CancellationToken cancellation = default) =>
        lane.InTurnAsync(() => CommitAsync(OwnKey("post"), [fared], now, cancellation), cancellation);

    /// <inheritdoc/>
    public void Dispose() => lane.Dispose();

    /// <summary>The message boundary: one message that we cannot work on must not stop all that come after it.</summary>
    private ImmutableArray<HerdEvent> DecideSafely(Inbound inbound, Instant now, out Exception? fault)
    {
        try
        {
            fault = null;
            return Decide(inbound, now);
        }
        catch (Exception odd)
        {
            fault = odd;
            return Hear.Failed(State, Farm, now, (inbound as Inbound.Line)?.MessageId ?? (inbound as Inbound.Edit)?.MessageId);
        }
    }

    private ImmutableArray<HerdEvent> Decide(Inbound inbound, Instant now) => inbound switch
    {
        Inbound.Line line => Hear.Line(State, Farm, now, line.From.Name, line.MessageId, line.Text, line.ReplyTo),
        Inbound.Edit edit => Hear.Edit(State, Farm, now, edit.From.Name, edit.MessageId, edit.Text),
        Inbound.Wordless wordless => Hear.Wordless(State, Farm, now, wordless.From.Name, wordless.MessageId, wordless.What),
        Inbound.Tap tap when ButtonData.TryRead(tap.Data, out var post, out var verb, out var index) =>
            Press.Button(State, Farm, now, tap.From.Name, post, verb, index),
        _ => [new HerdEvent.WordlessHeard(inbound.From.Name, inbound.GetType().Name, now, false)],
    };

    private string OwnKey(string what) => string.Create(CultureInfo.InvariantCulture, $"{Group.Value}/{version + 1}/{what}");

    private async Task CommitAsync(string key, ImmutableArray<HerdEvent> events, Instant now, CancellationToken cancellation)
    {
        if (events.IsEmpty)
        {
            return;
        }
        await store.AppendAsync(new Commit(Group, version, key, now, [.. events.Select(EventCodec.Write)]), cancellation);
        version++;
        State = State.Apply(events);
    }
}

/// <summary>What a button carries: a version, what it does, the post's number, which task or choice.</summary>
public static class ButtonData
{
    /// <summary>The data of a button; well under 64 bytes.</summary>
    public static string Write(int post, Button button)
    {
        ArgumentNullException.ThrowIfNull(button);
        return string.Create(CultureInfo.InvariantCulture, $"1|{(int)button.Verb}|{post}|{button.Index}");
    }

    /// <summary>What some data say; false where they are not ours.</summary>
    public static bool TryRead(string data, out int post, out ButtonVerb verb, out int index)
    {
        ArgumentNullException.ThrowIfNull(data);
        (post, verb, index) = (0, default, 0);
        var parts = data.Split('|');
        if (parts is not ["1", var word, var number, var place] || !int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var doing)
            || !Enum.IsDefined((ButtonVerb)doing) || !int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out post)
            || !int.TryParse(place, NumberStyles.None, CultureInfo.InvariantCulture, out index))
        {
            return false;
        }
        verb = (ButtonVerb)doing;
        return true;
    }
}

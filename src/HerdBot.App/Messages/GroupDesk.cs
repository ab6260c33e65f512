using System.Collections.Immutable;
using System.Globalization;
using HerdBot.App.Herds;
using HerdBot.App.Outbox;
using HerdBot.App.Ports;
using HerdBot.App.Records;
using HerdBot.Core.Decisions;
using HerdBot.Core.Events;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using NodaTime;

namespace HerdBot.App.Messages;

/// <summary>What came of a turn at a desk.</summary>
/// <param name="Next">When to look again; null where nothing can fall due.</param>
/// <param name="Faults">Faults of our own that kept a message from being worked on, by its key; the sender is told of them.</param>
public sealed record Worked(Instant? Next, ImmutableArray<(string Key, Exception Fault)> Faults);

/// <summary>
/// One group's history and state. Every decision is made here, one turn at a time. What is decided in a turn builds on
/// what was decided before it; it counts, and can be seen, when all of the turn is on the disk.
/// </summary>
public sealed class GroupDesk : IDisposable
{
    private readonly IHerdStore store;
    private readonly IHandOver handOver;
    private readonly SemaphoreSlim lane = new(1, 1);
    private Standing now = new(HerdState.Empty, 0, null, 0);

    private GroupDesk(GroupId group, Farm farm, IHerdStore store, IHandOver handOver) => (Group, Farm, this.store, this.handOver) = (group, farm, store, handOver);

    /// <summary>Whose history it is.</summary>
    public GroupId Group { get; }

    /// <summary>The farm's settings.</summary>
    public Farm Farm { get; }

    /// <summary>What the history comes to, as far as it is on the disk. Replaced after each turn, never changed.</summary>
    public HerdState State { get; private set; } = HerdState.Empty;

    /// <summary>Reads a group's history, and adds the animals of the settings and of imported lists that it does not know yet.</summary>
    /// <param name="group">Whose.</param>
    /// <param name="farm">The farm's settings.</param>
    /// <param name="herd">The animals that the settings name.</param>
    /// <param name="store">Where the history is.</param>
    /// <param name="handOver">Takes what is to be sent.</param>
    /// <param name="at">When.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<GroupDesk> OpenAsync(
        GroupId group, Farm farm, IEnumerable<Animal> herd, IHerdStore store, IHandOver handOver, Instant at, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(handOver);
        var desk = new GroupDesk(group, farm, store, handOver);
        await desk.CatchUpAsync(cancellation);
        desk.now = desk.now with { OffSince = desk.now.State.LastAt };
        // Whoever was added here already, or goes by such a name, is not added again.
        var known = desk.now.State.Added.Select(added => added.Animal.Id).ToHashSet();
        var added = herd.Concat(await HerdImport.ReadAsync(store, cancellation)).Where(animal => desk.now.State.Named(animal.Name) is null && known.Add(animal.Id))
            .Select(animal => (HerdEvent)new HerdEvent.AnimalAdded(animal)).ToImmutableArray();
        await desk.Commit(desk.OwnKey("herd"), added, at, cancellation);
        desk.State = desk.now.State;
        return desk;
    }

    /// <summary>Works on what came in, in its order, and queues what is due. What was worked on before is passed over.</summary>
    /// <param name="heard">What came in; may be nothing.</param>
    /// <param name="at">The instant that counts as its coming.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<Worked> WorkAsync(IReadOnlyList<Inbound> heard, Instant at, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(heard);
        Worked? worked = null;
        await lane.InTurnAsync(async () =>
        {
            try
            {
                worked = await TogetherAsync(heard, at, cancellation);
            }
            catch (StoreDuplicateException)
            {
                worked = await OneByOneAsync(heard, at, cancellation);
            }
        }, cancellation);
        return worked!;
    }

    /// <summary>Notes how posts fare on their way to the chat, and which is handed over next.</summary>
    /// <param name="fared">What came of one that was handed over; may be nothing.</param>
    /// <param name="at">When.</param>
    /// <param name="cancellation">Gives up.</param>
    public Task NoteAsync(ImmutableArray<HerdEvent> fared, Instant at, CancellationToken cancellation = default) =>
        lane.InTurnAsync(() => TurnAsync(() => [Commit(OwnKey("post"), fared, at, cancellation)]), cancellation);

    /// <inheritdoc/>
    public void Dispose() => lane.Dispose();

    /// <summary>Decides all of it, each building on the one before, and writes it side by side: the store keeps the order.</summary>
    private async Task<Worked> TogetherAsync(IReadOnlyList<Inbound> heard, Instant at, CancellationToken cancellation)
    {
        var faults = ImmutableArray.CreateBuilder<(string, Exception)>();
        Instant? next = null;
        await TurnAsync(() =>
        {
            var written = new List<Task>();
            foreach (var inbound in heard)
            {
                written.Add(Commit(inbound.Key, DecideSafely(inbound, at, out var fault), at, cancellation));
                if (fault is not null)
                {
                    faults.Add((inbound.Key, fault));
                }
            }
            (var due, next) = Remind.At(now.State, Farm, at, now.OffSince);
            now = now with { OffSince = null };
            written.Add(Commit(OwnKey("due"), due, at, cancellation));
            return written;
        });
        return new Worked(next, faults.ToImmutable());
    }

    /// <summary>One of them was worked on before. Whatever was decided on top of it has been refused too, and is decided anew.</summary>
    private async Task<Worked> OneByOneAsync(IReadOnlyList<Inbound> heard, Instant at, CancellationToken cancellation)
    {
        var faults = ImmutableArray<(string, Exception)>.Empty;
        await CatchUpAsync(cancellation);
        foreach (var inbound in heard)
        {
            try
            {
                faults = faults.AddRange((await TogetherAsync([inbound], at, cancellation)).Faults);
            }
            catch (StoreDuplicateException)
            {
                await CatchUpAsync(cancellation);
            }
        }
        return (await TogetherAsync([], at, cancellation)) with { Faults = faults };
    }

    /// <summary>Decides, waits for the disk, and shows the outcome; where the store refuses, nothing has happened.</summary>
    private async Task TurnAsync(Func<IReadOnlyList<Task>> decide)
    {
        var before = now;
        try
        {
            await Task.WhenAll(decide());
            State = now.State;
        }
        catch
        {
            if (now.Handed != before.Handed)
            {
                handOver.TakeBack(Group);
            }
            now = before;
            throw;
        }
    }

    /// <summary>Learns what is in the history and not yet in the state.</summary>
    private async Task CatchUpAsync(CancellationToken cancellation)
    {
        foreach (var stored in await store.ReadGroupAsync(Group, now.Version, cancellation))
        {
            now = now with { State = now.State.Apply(stored.Commit.Events.Select(EventCodec.Read)), Version = stored.Version };
        }
        State = now.State;
    }

    /// <summary>The message boundary: one message that we cannot work on must not stop all that come after it.</summary>
    private ImmutableArray<HerdEvent> DecideSafely(Inbound inbound, Instant at, out Exception? fault)
    {
        try
        {
            fault = null;
            return Decide(inbound, at);
        }
        catch (Exception odd)
        {
            fault = odd;
            return Hear.Failed(now.State, Farm, at, (inbound as Inbound.Line)?.MessageId ?? (inbound as Inbound.Edit)?.MessageId);
        }
    }

    private ImmutableArray<HerdEvent> Decide(Inbound inbound, Instant at) => inbound switch
    {
        Inbound.Line line => Hear.Line(now.State, Farm, at, line.From.Name, line.MessageId, line.Text, line.ReplyTo),
        Inbound.Edit edit => Hear.Edit(now.State, Farm, at, edit.From.Name, edit.MessageId, edit.Text),
        Inbound.Wordless wordless => Hear.Wordless(now.State, Farm, at, wordless.From.Name, wordless.MessageId, wordless.What),
        Inbound.Missed missed => Hear.Missed(now.State, Farm, at, missed.Since),
        Inbound.Tap tap when ButtonData.TryRead(tap.Data, out var post, out var verb, out var index) =>
            Press.Button(now.State, Farm, at, tap.From.Name, post, verb, index),
        _ => [new HerdEvent.WordlessHeard(inbound.From.Name, inbound.GetType().Name, at, false)],
    };

    private string OwnKey(string what) => string.Create(CultureInfo.InvariantCulture, $"{Group.Value}/{now.Version + 1}/{what}");

    /// <summary>Hands events to the store, and with them the note that a post is handed over, where one is.</summary>
    private Task Commit(string key, ImmutableArray<HerdEvent> events, Instant at, CancellationToken cancellation)
    {
        var after = now.State.Apply(events);
        if (handOver.Next(Group, after, at) is { } handed)
        {
            events = events.Add(handed);
            after = after.Apply(handed);
            now = now with { Handed = now.Handed + 1 };
        }
        if (events.IsEmpty)
        {
            return Task.CompletedTask;
        }
        var written = store.AppendAsync(new Commit(Group, now.Version, key, at, [.. events.Select(EventCodec.Write)]), cancellation);
        now = now with { State = after, Version = now.Version + 1 };
        return written;
    }

    /// <summary>How things stand in a turn.</summary>
    /// <param name="State">What the decisions so far come to.</param>
    /// <param name="Version">How many commits there are.</param>
    /// <param name="OffSince">Before the first look after a start: when the bot was last seen alive.</param>
    /// <param name="Handed">How many posts were handed over.</param>
    private sealed record Standing(HerdState State, long Version, Instant? OffSince, int Handed);
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

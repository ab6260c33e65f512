using System.Collections.Concurrent;
using System.Threading.Channels;
using HerdBot.App.Outbox;
using HerdBot.App.Ports;
using HerdBot.Core.Herd;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace HerdBot.App.Messages;

/// <summary>Gives a farm for a group.</summary>
/// <param name="Farm">Its settings.</param>
/// <param name="Herd">The animals that the settings name.</param>
public sealed record FarmSetup(Farm Farm, IReadOnlyList<Animal> Herd);

/// <summary>Posts of a group that wait to be sent.</summary>
/// <param name="Group">Whose.</param>
/// <param name="Since">When the oldest was decided.</param>
/// <param name="Count">How many.</param>
/// <param name="Why">Why they do not get through, in the line's or the chat's words; null where nothing is wrong.</param>
public sealed record Waiting(GroupId Group, Instant Since, int Count, string? Why);

/// <summary>
/// The one way through the house: taken in durably, read, decided, committed, sent; and, woken by the clock, what is due.
/// </summary>
public sealed partial class Pipeline : IIntake, IDisposable
{
    private const int MostAtOnce = 64;

    private readonly IHerdStore store;
    private readonly IInboundFormat format;
    private readonly IDoor door;
    private readonly Outlook outlook;
    private readonly OutboxRun outbox;
    private readonly FarmSetup setup;
    private readonly TimeProvider time;
    private readonly ILogger<Pipeline> log;
    private readonly Channel<InboxEntry> waiting = Channel.CreateUnbounded<InboxEntry>();
    private readonly ConcurrentDictionary<GroupId, GroupDesk> desks = [];
    private readonly ConcurrentDictionary<GroupId, Instant> looks = [];
    private readonly SendLanes lanes;
    private readonly TaskCompletionSource broken = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource running = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly SemaphoreSlim turn = new(1, 1);
    private CancellationToken sending = new(canceled: true);
    private int underWay;
    private TaskCompletionSource idle = Completed();

    /// <summary>Puts the parts together; nothing runs before <see cref="RunAsync"/>.</summary>
    public Pipeline(IHerdStore store, IInboundFormat format, IDoor door, IWakeUp wakeUp, OutboxRun outbox, FarmSetup setup, TimeProvider time, ILogger<Pipeline> log)
    {
        (this.store, this.format, this.door, outlook, this.outbox, this.setup, this.time, this.log) = (store, format, door, new Outlook(wakeUp), outbox, setup, time, log);
        lanes = new SendLanes(at => outlook.SendAtAsync(at, sending), Broke);
    }

    private void Broke(Exception fault)
    {
        if (fault is not OperationCanceledException || !sending.IsCancellationRequested)
        {
            broken.TrySetException(fault);
        }
    }

    /// <summary>What a group's history comes to; empty where it has none.</summary>
    public HerdState StateOf(GroupId group) => desks.GetValueOrDefault(group)?.State ?? HerdState.Empty;

    /// <inheritdoc/>
    public async Task TakeInAsync(IReadOnlyList<InboxEntry> entries, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(entries);
        // Side by side: the store keeps the order, and writes all of them at once.
        var taken = entries.Select(async entry => await store.TakeInAsync(entry, cancellation)).ToList();
        try
        {
            await Task.WhenAll(taken);
        }
        finally
        {
            foreach (var (entry, isNew) in entries.Zip(taken))
            {
                if (isNew is { IsCompletedSuccessfully: true, Result: true })
                {
                    Enqueue(entry);
                }
            }
        }
    }

    /// <summary>Works on whatever comes in and sends whatever waits, side by side, until it is told to stop.</summary>
    public async Task RunAsync(CancellationToken stopping)
    {
        using var either = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        sending = either.Token;
        running.TrySetResult();
        Send(desks.Keys);
        var hearing = HearLoopAsync(either.Token);
        var ended = await Task.WhenAny(hearing, broken.Task);
        await either.CancelAsync();
        await lanes.QuietAsync();
        await ended;
        await hearing;
    }

    private async Task HearLoopAsync(CancellationToken stopping)
    {
        var batch = new List<InboxEntry>();
        while (await waiting.Reader.WaitToReadAsync(stopping))
        {
            while (batch.Count < MostAtOnce && waiting.Reader.TryRead(out var entry))
            {
                batch.Add(entry);
            }
            await turn.InTurnAsync(() => HearAsync(batch, stopping), stopping);
            Finish(batch.Count);
            batch.Clear();
        }
    }

    /// <summary>Opens the known groups' histories and takes up what was taken in and not worked on.</summary>
    public async Task StartAsync(CancellationToken cancellation = default)
    {
        await turn.InTurnAsync(() => OpenKnownAsync(cancellation), cancellation);
        var left = await store.ReadWaitingAsync(cancellation);
        foreach (var entry in left)
        {
            Enqueue(entry);
        }
        if (left.IsEmpty)
        {
            await RemindAsync(cancellation);
        }
    }

    /// <summary>Posts what is due in every group, sends what waits, and sets the clock for the next time. Does no harm however often it is asked.</summary>
    /// <remarks>Ends when everything that the chat takes now has been sent; needs <see cref="RunAsync"/> to run.</remarks>
    public async Task LookAsync(CancellationToken cancellation = default)
    {
        await RemindAsync(cancellation);
        await running.Task.WaitAsync(cancellation);
        Send(desks.Values.Where(desk => !desk.State.Unsent.IsEmpty).Select(desk => desk.Group));
        await lanes.QuietAsync().WaitAsync(cancellation);
    }

    /// <summary>Tells every group that what was written since an instant may be lost. Told once, however often it is asked.</summary>
    /// <param name="since">When the bot heard last.</param>
    /// <param name="cancellation">Gives up.</param>
    public Task TellMissedAsync(Instant since, CancellationToken cancellation = default) => turn.InTurnAsync(async () =>
    {
        var missed = new Dictionary<GroupId, List<Inbound>>();
        foreach (var group in await door.KnownAsync(cancellation))
        {
            missed[group] = [new Inbound.Missed($"missed/{group}/{since.ToUnixTimeMilliseconds()}", group, new Person("", ""), Now(), since)];
        }
        await WorkAsync(missed, cancellation);
    }, cancellation);

    /// <summary>What waits to be sent, by group: since when, and how many posts.</summary>
    public IReadOnlyList<Waiting> Unsent => [.. desks.Values.Select(desk => (desk.Group, desk.State)).Where(desk => !desk.State.Unsent.IsEmpty)
        .Select(desk => new Waiting(desk.Group, desk.State.Posts[desk.State.Unsent.Min].Post.At, desk.State.Unsent.Count, outbox.TroubleOf(desk.Group)))];

    /// <summary>When anything falls due next, or is to be sent again; null where nothing can.</summary>
    public Instant? NextLook => outlook.Next;

    /// <summary>Looks at the groups in which something may be due.</summary>
    private Task RemindAsync(CancellationToken cancellation) => turn.InTurnAsync(() => WorkAsync([], cancellation), cancellation);

    /// <summary>Ends when everything taken in so far has been worked on.</summary>
    public Task IdleAsync()
    {
        lock (waiting)
        {
            return idle.Task;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        turn.Dispose();
        outlook.Dispose();
        foreach (var desk in desks.Values)
        {
            desk.Dispose();
        }
    }

    /// <summary>Takes each to where it belongs, and lets each group work on its own, in the order they came.</summary>
    private async Task HearAsync(List<InboxEntry> batch, CancellationToken cancellation)
    {
        var heard = new Dictionary<GroupId, List<Inbound>>();
        foreach (var entry in batch)
        {
            if (await AdmitAsync(entry, cancellation) is var (group, inbound))
            {
                heard.TryAdd(group, []);
                heard[group].Add(inbound);
            }
        }
        await WorkAsync(heard, cancellation);
    }

    private async Task<(GroupId Group, Inbound Inbound)?> AdmitAsync(InboxEntry entry, CancellationToken cancellation)
    {
        Inbound? inbound;
        try
        {
            inbound = format.Read(entry);
        }
        catch (FormatException odd)
        {
            LogSetAside(entry.Key, odd.Message);
            await SetAsideAsync(entry, odd.Message, cancellation);
            return null;
        }
        if (inbound is not null && await door.AdmitAsync(inbound, cancellation) is { } group)
        {
            return (group, inbound);
        }
        await SetAsideAsync(entry, "", cancellation);
        // The door may just have let a group in: what its history already asks for is due from now on.
        await OpenKnownAsync(cancellation);
        return null;
    }

    /// <summary>Lets groups work on what was heard, and those in which something may be due look.</summary>
    private async Task WorkAsync(Dictionary<GroupId, List<Inbound>> heard, CancellationToken cancellation)
    {
        var now = Now();
        foreach (var due in looks.Where(look => look.Value <= now))
        {
            heard.TryAdd(due.Key, []);
        }
        await Task.WhenAll(heard.Select(async group =>
        {
            var desk = await DeskAsync(group.Key, cancellation);
            var worked = await desk.WorkAsync(group.Value, now, cancellation);
            foreach (var (key, fault) in worked.Faults)
            {
                LogFault(key, fault);
            }
            if (worked.Next is { } next)
            {
                looks[group.Key] = next;
            }
            else
            {
                looks.TryRemove(group.Key, out _);
            }
        }));
        await outlook.DueAtAsync(looks.Values.Cast<Instant?>().Aggregate((Instant?)null, Outlook.Earlier), cancellation);
        Send(heard.Keys);
    }

    /// <summary>Lets the groups send, and the door.</summary>
    private void Send(IEnumerable<GroupId> groups)
    {
        var stopping = sending;
        if (stopping.IsCancellationRequested)
        {
            return;
        }
        foreach (var group in groups)
        {
            var desk = desks[group];
            lanes.Send(group, () => outbox.SendAsync(desk, Now, stopping));
        }
        lanes.Send(Aside, () => door.DeliverAsync(stopping));
    }

    /// <summary>Marks an entry that reaches no group as worked on; the entry itself stays in the inbox for good.</summary>
    private async Task SetAsideAsync(InboxEntry entry, string why, CancellationToken cancellation)
    {
        try
        {
            var version = (await store.ReadGroupAsync(Aside, asideVersion, cancellation)).Select(stored => stored.Version).LastOrDefault(asideVersion);
            var data = System.Text.Json.JsonSerializer.Serialize(new { key = entry.Key, why });
            await store.AppendAsync(new Commit(Aside, version, entry.Key, Now(), [new EventRecord("set_aside", 1, data)]), cancellation);
            asideVersion = version + 1;
        }
        catch (StoreDuplicateException)
        {
            // The door has marked it as worked on with events of its own.
        }
    }

    /// <summary>The history that marks what reached no group.</summary>
    public static GroupId Aside { get; } = new("aside");

    private long asideVersion;

    private async Task OpenKnownAsync(CancellationToken cancellation)
    {
        foreach (var group in await door.KnownAsync(cancellation))
        {
            await DeskAsync(group, cancellation);
        }
    }

    private async Task<GroupDesk> DeskAsync(GroupId group, CancellationToken cancellation)
    {
        if (!desks.TryGetValue(group, out var desk))
        {
            desk = await GroupDesk.OpenAsync(group, setup.Farm, setup.Herd, store, outbox, Now(), cancellation);
            desks[group] = desk;
            // Nobody knows yet what is due there: it is looked at next.
            looks[group] = Instant.MinValue;
        }
        return desk;
    }

    private void Enqueue(InboxEntry entry)
    {
        lock (waiting)
        {
            if (underWay++ == 0)
            {
                idle = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            }
        }
        waiting.Writer.TryWrite(entry);
    }

    private void Finish(int count)
    {
        lock (waiting)
        {
            if ((underWay -= count) == 0)
            {
                idle.SetResult();
            }
        }
    }

    private Instant Now() => Instant.FromDateTimeOffset(time.GetUtcNow());

    private static TaskCompletionSource Completed()
    {
        var source = new TaskCompletionSource();
        source.SetResult();
        return source;
    }

    [LoggerMessage(2002, LogLevel.Error, "Update {Key} could not be worked on; nothing of it is recorded")]
    private partial void LogFault(string key, Exception fault);

    [LoggerMessage(2001, LogLevel.Warning, "Update {Key} cannot be read and is set aside: {Why}")]
    private partial void LogSetAside(string key, string why);
}

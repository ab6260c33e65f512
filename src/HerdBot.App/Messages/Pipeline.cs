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

/// <summary>
/// The one way through the house: taken in durably, read, decided, committed, sent; and, woken by the clock, what is due.
/// </summary>
public sealed partial class Pipeline : IIntake, IDisposable
{
    private readonly IHerdStore store;
    private readonly IInboundFormat format;
    private readonly IDoor door;
    private readonly Outlook outlook;
    private readonly OutboxRun outbox;
    private readonly FarmSetup setup;
    private readonly TimeProvider time;
    private readonly ILogger<Pipeline> log;
    private readonly Channel<InboxEntry> waiting = Channel.CreateUnbounded<InboxEntry>();
    private readonly Channel<TaskCompletionSource> toSend = Channel.CreateUnbounded<TaskCompletionSource>();
    private readonly ConcurrentDictionary<GroupId, GroupDesk> desks = [];
    private readonly SemaphoreSlim turn = new(1, 1);
    private int underWay;
    private TaskCompletionSource idle = Completed();

    /// <summary>Puts the parts together; nothing runs before <see cref="RunAsync"/>.</summary>
    public Pipeline(IHerdStore store, IInboundFormat format, IDoor door, IWakeUp wakeUp, OutboxRun outbox, FarmSetup setup, TimeProvider time, ILogger<Pipeline> log) =>
        (this.store, this.format, this.door, outlook, this.outbox, this.setup, this.time, this.log) = (store, format, door, new Outlook(wakeUp), outbox, setup, time, log);

    /// <summary>What a group's history comes to; empty where it has none.</summary>
    public HerdState StateOf(GroupId group) => desks.GetValueOrDefault(group)?.State ?? HerdState.Empty;

    /// <inheritdoc/>
    public async Task TakeInAsync(IReadOnlyList<InboxEntry> entries, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(entries);
        foreach (var entry in entries)
        {
            if (await store.TakeInAsync(entry, cancellation))
            {
                Enqueue(entry);
            }
        }
    }

    /// <summary>Works on whatever comes in and sends whatever waits, side by side, until it is told to stop.</summary>
    public async Task RunAsync(CancellationToken stopping)
    {
        using var either = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        var loops = new[] { HearLoopAsync(either.Token), SendLoopAsync(either.Token) };
        var ended = await Task.WhenAny(loops);
        await either.CancelAsync();
        await ended;
        await Task.WhenAll(loops);
    }

    private async Task HearLoopAsync(CancellationToken stopping)
    {
        await foreach (var entry in waiting.Reader.ReadAllAsync(stopping))
        {
            await turn.InTurnAsync(() => HandleAsync(entry, stopping), stopping);
            await RemindAsync(stopping);
            toSend.Writer.TryWrite(new TaskCompletionSource());
            Finish();
        }
    }

    /// <summary>Slow or broken lines hold up nothing but themselves: what comes in meanwhile is recorded.</summary>
    private async Task SendLoopAsync(CancellationToken stopping)
    {
        var asked = new List<TaskCompletionSource>();
        try
        {
            while (await toSend.Reader.WaitToReadAsync(stopping))
            {
                asked.AddRange(TakeAsked());
                var pauses = await Task.WhenAll(desks.Values.Select(desk => outbox.SendAsync(desk, Now, stopping)).Append(door.DeliverAsync(stopping)));
                await outlook.SendAtAsync(pauses.Aggregate(Outlook.Earlier), stopping);
                asked.ForEach(one => one.TrySetResult());
                asked.Clear();
            }
        }
        finally
        {
            // Whoever still waits for a look, Quartz's job perhaps, must not hold the stop up.
            toSend.Writer.TryComplete();
            asked.Concat(TakeAsked()).ToList().ForEach(one => one.TrySetCanceled(stopping));
        }
    }

    private IEnumerable<TaskCompletionSource> TakeAsked()
    {
        while (toSend.Reader.TryRead(out var one))
        {
            yield return one;
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
            toSend.Writer.TryWrite(new TaskCompletionSource());
        }
    }

    /// <summary>Posts what is due in every group, sends what waits, and sets the clock for the next time. Does no harm however often it is asked.</summary>
    /// <remarks>Ends when everything that the chat takes now has been sent; needs <see cref="RunAsync"/> to run.</remarks>
    public async Task LookAsync(CancellationToken cancellation = default)
    {
        await RemindAsync(cancellation);
        var sent = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        if (toSend.Writer.TryWrite(sent))
        {
            await sent.Task.WaitAsync(cancellation);
        }
    }

    /// <summary>When anything falls due next, or is to be sent again; null where nothing can.</summary>
    public Instant? NextLook => outlook.Next;

    private Task RemindAsync(CancellationToken cancellation) => turn.InTurnAsync(async () =>
    {
        Instant? next = null;
        foreach (var desk in desks.Values)
        {
            next = Outlook.Earlier(next, await desk.RemindAsync(Now(), cancellation));
        }
        await outlook.DueAtAsync(next, cancellation);
    }, cancellation);

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

    private async Task HandleAsync(InboxEntry entry, CancellationToken cancellation)
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
            return;
        }
        if (inbound is null || await door.AdmitAsync(inbound, cancellation) is not { } group)
        {
            await SetAsideAsync(entry, "", cancellation);
            // The door may just have let a group in: what its history already asks for is due from now on.
            await OpenKnownAsync(cancellation);
            return;
        }
        var desk = await DeskAsync(group, cancellation);
        if (await desk.HandleAsync(inbound, Now(), cancellation) is { } fault)
        {
            LogFault(entry.Key, fault);
        }
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
            desk = await GroupDesk.OpenAsync(group, setup.Farm, setup.Herd, store, Now(), cancellation);
            desks[group] = desk;
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

    private void Finish()
    {
        lock (waiting)
        {
            if (--underWay == 0)
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

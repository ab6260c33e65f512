using System.Collections.Concurrent;
using HerdBot.App.Ports;
using NodaTime;

namespace HerdBot.App.Messages;

/// <summary>
/// Sends for each group on its own: a chat whose line is slow or broken holds up nothing but itself. Asked to send while
/// a group's sending is under way, it goes on once more after that.
/// </summary>
/// <param name="goOn">Is told when sending goes on somewhere, where a pause is wanted; null where none is.</param>
/// <param name="failed">Is told of a fault; nothing more is to be expected then.</param>
internal sealed class SendLanes(Func<Instant?, Task> goOn, Action<Exception> failed)
{
    private readonly ConcurrentDictionary<GroupId, Lane> lanes = [];

    /// <summary>Sends what a group has waiting, in the background.</summary>
    /// <param name="group">Whose.</param>
    /// <param name="send">Sends, and tells when to go on; null where all is sent.</param>
    public void Send(GroupId group, Func<Task<Instant?>> send)
    {
        var lane = lanes.GetOrAdd(group, _ => new Lane());
        lock (lane)
        {
            lane.Again = true;
            if (lane.Running.IsCompleted)
            {
                lane.Running = Task.Run(() => RunAsync(lane, send));
            }
        }
    }

    /// <summary>Ends when what is being sent now has been.</summary>
    public Task QuietAsync() => Task.WhenAll(lanes.Values.Select(lane =>
    {
        lock (lane)
        {
            return lane.Running;
        }
    }));

    private async Task RunAsync(Lane lane, Func<Task<Instant?>> send)
    {
        try
        {
            while (TakeUp(lane))
            {
                var later = await send();
                lock (lane)
                {
                    lane.GoOn = later;
                }
                await goOn(lanes.Values.Select(GoOnOf).Aggregate(Outlook.Earlier));
            }
        }
        catch (Exception fault)
        {
            failed(fault);
        }
    }

    private static Instant? GoOnOf(Lane lane)
    {
        lock (lane)
        {
            return lane.GoOn;
        }
    }

    private static bool TakeUp(Lane lane)
    {
        lock (lane)
        {
            (var again, lane.Again) = (lane.Again, false);
            if (!again)
            {
                lane.Running = Task.CompletedTask;
            }
            return again;
        }
    }

    private sealed class Lane
    {
        public bool Again { get; set; }
        public Instant? GoOn { get; set; }
        public Task Running { get; set; } = Task.CompletedTask;
    }
}

using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Host.Rehearsal;
using HerdBot.Host.Terminal;

namespace HerdBot.Demo;

/// <summary>A screen that gives people the time to read what has come up on it.</summary>
/// <param name="screen">The screen.</param>
/// <param name="wall">The clock that people read by; null where nobody reads along.</param>
/// <param name="stop">Breaks off.</param>
internal sealed class DemoStage(ChatScreen screen, TimeProvider? wall, CancellationToken stop) : IAudience
{
    private static readonly TimeSpan Breath = TimeSpan.FromMilliseconds(500);
    private static readonly TimeSpan Letter = TimeSpan.FromMilliseconds(9);
    private int unread;

    public int? MostAMinute => screen.MostAMinute;

    public void Follow(TimeProvider clock) => screen.Follow(clock);

    public void Hear(Inbound inbound)
    {
        screen.Hear(inbound);
        unread += inbound is Inbound.Line line ? line.Text.Length : 1;
    }

    public Task<SendResult> SendAsync(Outgoing outgoing, CancellationToken cancellation = default)
    {
        unread += outgoing.Text.Length;
        return screen.SendAsync(outgoing, cancellation);
    }

    public async Task RestAsync()
    {
        stop.ThrowIfCancellationRequested();
        if (wall is not null && unread > 0)
        {
            await Task.Delay(Breath + Letter * unread, wall, stop);
        }
        unread = 0;
    }
}

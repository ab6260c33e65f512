using HerdBot.App.Ports;
using NodaTime;

namespace HerdBot.App.Messages;

/// <summary>
/// When to look again: for what falls due, and for what is to be sent again. The two are found out side by side; the
/// clock is set by one at a time, so that an older outlook never takes the place of a newer one.
/// </summary>
/// <param name="wakeUp">The clock.</param>
internal sealed class Outlook(IWakeUp wakeUp) : IDisposable
{
    private readonly Lock gate = new();
    private readonly SemaphoreSlim arming = new(1, 1);
    private Instant? due;
    private Instant? send;

    /// <summary>The earlier of the two; null where there is nothing to look for.</summary>
    public Instant? Next
    {
        get
        {
            lock (gate)
            {
                return Earlier(due, send);
            }
        }
    }

    /// <summary>Sets when anything falls due next.</summary>
    public Task DueAtAsync(Instant? at, CancellationToken cancellation) => ArmAsync(() => due = at, cancellation);

    /// <summary>Sets when sending goes on.</summary>
    public Task SendAtAsync(Instant? at, CancellationToken cancellation) => ArmAsync(() => send = at, cancellation);

    /// <summary>The earlier of two instants, either of which may be missing.</summary>
    public static Instant? Earlier(Instant? one, Instant? other) => one is null ? other : other is null ? one : Instant.Min(one.Value, other.Value);

    /// <inheritdoc/>
    public void Dispose() => arming.Dispose();

    private async Task ArmAsync(Action change, CancellationToken cancellation)
    {
        await arming.WaitAsync(cancellation);
        try
        {
            lock (gate)
            {
                change();
            }
            await wakeUp.ArmAsync(Next, cancellation);
        }
        finally
        {
            arming.Release();
        }
    }
}

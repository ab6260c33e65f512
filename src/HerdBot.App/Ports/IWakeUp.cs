using NodaTime;

namespace HerdBot.App.Ports;

/// <summary>Wakes the bot when something falls due. Idempotent: an early, late or double ring does no harm.</summary>
public interface IWakeUp
{
    /// <summary>Rings at this instant, in place of whatever was set before; null where nothing is due.</summary>
    Task ArmAsync(Instant? at, CancellationToken cancellation = default);
}

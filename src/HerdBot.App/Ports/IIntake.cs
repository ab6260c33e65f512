namespace HerdBot.App.Ports;

/// <summary>Where a channel hands over what came in.</summary>
public interface IIntake
{
    /// <summary>
    /// Takes raw updates in, durably and in order; returns when the disk has them. They are worked on afterwards,
    /// in the background. An update that was taken in before is passed over.
    /// </summary>
    Task TakeInAsync(IReadOnlyList<InboxEntry> entries, CancellationToken cancellation = default);
}

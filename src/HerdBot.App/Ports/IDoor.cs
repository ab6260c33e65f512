using HerdBot.App.Messages;
using NodaTime;

namespace HerdBot.App.Ports;

/// <summary>Decides whose words reach a farm's desk.</summary>
public interface IDoor
{
    /// <summary>The group whose history the words belong to; null where they were dealt with at the door.</summary>
    Task<GroupId?> AdmitAsync(Inbound inbound, CancellationToken cancellation = default);

    /// <summary>The groups that are let in, known from earlier days.</summary>
    Task<IReadOnlyList<GroupId>> KnownAsync(CancellationToken cancellation = default);

    /// <summary>The chat in which a group is met now.</summary>
    GroupId ChatOf(GroupId group);

    /// <summary>Says what is to be said at the door.</summary>
    /// <returns>When to go on, where the chat or the line wants a pause; null where all is said.</returns>
    Task<Instant?> DeliverAsync(CancellationToken cancellation = default);

    /// <summary>A chat goes on under a new id.</summary>
    Task MovedAsync(GroupId from, GroupId to, CancellationToken cancellation = default);
}

/// <summary>Lets everybody in: for a terminal or a script, where whoever types belongs to the farm.</summary>
/// <param name="group">The one group.</param>
public sealed class OpenDoor(GroupId group) : IDoor
{
    /// <inheritdoc/>
    public Task<GroupId?> AdmitAsync(Inbound inbound, CancellationToken cancellation = default) => Task.FromResult<GroupId?>(group);

    /// <inheritdoc/>
    public Task<IReadOnlyList<GroupId>> KnownAsync(CancellationToken cancellation = default) => Task.FromResult<IReadOnlyList<GroupId>>([group]);

    /// <inheritdoc/>
    public GroupId ChatOf(GroupId group) => group;

    /// <inheritdoc/>
    public Task<Instant?> DeliverAsync(CancellationToken cancellation = default) => Task.FromResult<Instant?>(null);

    /// <inheritdoc/>
    public Task MovedAsync(GroupId from, GroupId to, CancellationToken cancellation = default) => Task.CompletedTask;
}

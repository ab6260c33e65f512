using System.Collections.Immutable;
using NodaTime;

namespace HerdBot.App.Ports;

/// <summary>Names one group's history. Nothing spans two groups.</summary>
/// <param name="Value">Not empty, at most 100 characters.</param>
public readonly record struct GroupId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

/// <summary>A raw update as it came, before anything was made of it.</summary>
/// <param name="Key">Unique for good, at most 200 bytes in UTF-8; the same update twice has the same key.</param>
/// <param name="ReceivedAt">When it was taken in.</param>
/// <param name="Raw">The update, word for word.</param>
public sealed record InboxEntry(string Key, Instant ReceivedAt, string Raw);

/// <summary>One event as it is written: a type, a version of its shape, and JSON.</summary>
/// <param name="Type">The event's word.</param>
/// <param name="Version">The version of its JSON shape, from 1.</param>
/// <param name="Data">JSON.</param>
public sealed record EventRecord(string Type, int Version, string Data);

/// <summary>Events that are written together or not at all.</summary>
/// <param name="Group">Whose history they extend.</param>
/// <param name="ExpectedVersion">How many commits the group has so far.</param>
/// <param name="Key">
/// Unique for good, at most 200 bytes in UTF-8. The key of an inbox entry marks it as handled.
/// </param>
/// <param name="At">When it was decided.</param>
/// <param name="Events">At least one, in order.</param>
public sealed record Commit(GroupId Group, long ExpectedVersion, string Key, Instant At, ImmutableArray<EventRecord> Events);

/// <summary>A commit as it stands in the store.</summary>
/// <param name="Position">Grows with each commit of the store; opaque, may have gaps.</param>
/// <param name="Version">The group's version after it: 1 for its first commit.</param>
/// <param name="Commit">What was written.</param>
public sealed record StoredCommit(long Position, long Version, Commit Commit);

/// <summary>
/// Keeps what came in and what was decided, for good. A call that writes returns when the disk has it.
/// Safe to call from several threads.
/// </summary>
public interface IHerdStore
{
    /// <summary>Takes an update in. False where its key is known already: it was taken in before.</summary>
    /// <exception cref="StoreOutcomeUnknownException">It may or may not be stored; ask again with the same key.</exception>
    Task<bool> TakeInAsync(InboxEntry entry, CancellationToken cancellation = default);

    /// <summary>Entries that no commit bears the key of, in the order they came.</summary>
    Task<ImmutableArray<InboxEntry>> ReadWaitingAsync(CancellationToken cancellation = default);

    /// <summary>Writes all events of a commit, or none.</summary>
    /// <returns>The commit's position.</returns>
    /// <exception cref="StoreConflictException">The group has moved on; nothing was written.</exception>
    /// <exception cref="StoreDuplicateException">A commit with this key exists; nothing was written.</exception>
    /// <exception cref="StoreOutcomeUnknownException">It may or may not be written; ask again with the same key.</exception>
    Task<long> AppendAsync(Commit commit, CancellationToken cancellation = default);

    /// <summary>A group's commits with a version above <paramref name="afterVersion"/>, in order.</summary>
    Task<ImmutableArray<StoredCommit>> ReadGroupAsync(GroupId group, long afterVersion = 0, CancellationToken cancellation = default);

    /// <summary>All groups' commits with a position above <paramref name="afterPosition"/>, in order, at most <paramref name="limit"/>.</summary>
    Task<ImmutableArray<StoredCommit>> ReadAllAsync(long afterPosition = 0, int limit = int.MaxValue, CancellationToken cancellation = default);

    /// <summary>The groups that have a history, in the order of their first commit.</summary>
    Task<ImmutableArray<GroupId>> ReadGroupsAsync(CancellationToken cancellation = default);

    /// <summary>The position of the newest commit; 0 where there is none.</summary>
    Task<long> HeadPositionAsync(CancellationToken cancellation = default);
}

/// <summary>The group's history has moved on since the decision was made.</summary>
public sealed class StoreConflictException(string message) : Exception(message);

/// <summary>A commit with this key was written before.</summary>
public sealed class StoreDuplicateException(string message) : Exception(message);

/// <summary>The write failed in a way that leaves open whether it happened. The store must be opened anew.</summary>
public sealed class StoreOutcomeUnknownException(string message, Exception? inner = null) : Exception(message, inner);

using System.Collections.Immutable;

namespace HerdBot.App.Ports;

/// <summary>Keeps everything in memory and loses it with the process: for tests and fast rehearsals. Safe for several threads.</summary>
public sealed class InMemoryHerdStore : IHerdStore
{
    private readonly Lock _gate = new();
    private readonly StoreIndex _index = new();
    private readonly List<StoredCommit> _commits = [];

    /// <inheritdoc/>
    public Task<bool> TakeInAsync(InboxEntry entry, CancellationToken cancellation = default)
    {
        var kept = StoreIndex.Checked(entry);
        return Locked(() => _index.TryTakeIn(kept), cancellation);
    }

    /// <inheritdoc/>
    public Task<ImmutableArray<InboxEntry>> ReadWaitingAsync(CancellationToken cancellation = default) =>
        Locked(() => _index.Waiting, cancellation);

    /// <inheritdoc/>
    public Task<long> AppendAsync(Commit commit, CancellationToken cancellation = default)
    {
        var kept = StoreIndex.Checked(commit);
        return Locked(() => Append(kept), cancellation);
    }

    /// <inheritdoc/>
    public Task<ImmutableArray<StoredCommit>> ReadGroupAsync(GroupId group, long afterVersion = 0, CancellationToken cancellation = default) =>
        Locked<ImmutableArray<StoredCommit>>(() => [.. _commits.Where(c => c.Commit.Group == group && c.Version > afterVersion)], cancellation);

    /// <inheritdoc/>
    public Task<ImmutableArray<StoredCommit>> ReadAllAsync(long afterPosition = 0, int limit = int.MaxValue, CancellationToken cancellation = default) =>
        Locked<ImmutableArray<StoredCommit>>(() => [.. _commits.Where(c => c.Position > afterPosition).Take(limit)], cancellation);

    /// <inheritdoc/>
    public Task<ImmutableArray<GroupId>> ReadGroupsAsync(CancellationToken cancellation = default) =>
        Locked(() => _index.Groups, cancellation);

    /// <inheritdoc/>
    public Task<long> HeadPositionAsync(CancellationToken cancellation = default) =>
        Locked(() => _index.Head, cancellation);

    private long Append(Commit commit)
    {
        var stored = _index.Append(commit);
        _commits.Add(stored);
        return stored.Position;
    }

    // As from any other store, a refusal comes with the task and not from the call itself.
    private Task<T> Locked<T>(Func<T> answer, CancellationToken cancellation)
    {
        if (cancellation.IsCancellationRequested)
        {
            return Task.FromCanceled<T>(cancellation);
        }

        try
        {
            lock (_gate)
            {
                return Task.FromResult(answer());
            }
        }
        catch (Exception refusal) when (refusal is StoreConflictException or StoreDuplicateException)
        {
            return Task.FromException<T>(refusal);
        }
    }
}

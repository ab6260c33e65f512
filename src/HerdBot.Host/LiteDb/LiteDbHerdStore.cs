using System.Collections.Immutable;
using HerdBot.App.Ports;

namespace HerdBot.Host.LiteDb;

/// <summary>
/// The durable store: LiteDB 5.0.21 under streams that sync, behind one thread. A call that writes returns when the
/// disk has it. Safe for several threads.
/// </summary>
public sealed class LiteDbHerdStore : IHerdStore, IAsyncDisposable
{
    private readonly StoreThread _thread;

    private LiteDbHerdStore(DataFiles files) => _thread = new StoreThread(new HerdDatabase(files));

    /// <summary>
    /// Ends, with the cause, when the disk or LiteDB has failed. Every call fails from then on; the process should end
    /// and be started again. Opening the file anew shows by its key whether a write is stored.
    /// </summary>
    public Task<Exception> Faulted => _thread.Faulted;

    /// <summary>How many durable writes there were since it was opened; what waits together is written at once.</summary>
    public long DurableWrites => _thread.DurableWrites;

    /// <summary>Opens a data file for this process alone, and makes it, and its folder, where there is none.</summary>
    /// <exception cref="DataFileException">The file can't be used; the message says why and what to do. Nothing was changed.</exception>
    public static LiteDbHerdStore Open(string path) => new(DataFiles.Open(Path.GetFullPath(path)));

    /// <summary>Opens a data file of any make: its Flush must sync. Both streams are closed with the store.</summary>
    internal static LiteDbHerdStore Open(Stream data, Stream log) => new(DataFiles.Of(data, log));

    /// <inheritdoc/>
    public async Task<bool> TakeInAsync(InboxEntry entry, CancellationToken cancellation = default)
    {
        var kept = StoreIndex.Checked(entry);
        return await _thread.CallAsync(database => database.TakeIn(kept), writes: true, cancellation);
    }

    /// <inheritdoc/>
    public Task<ImmutableArray<InboxEntry>> ReadWaitingAsync(CancellationToken cancellation = default) =>
        ReadAsync(database => database.Index.Waiting, cancellation);

    /// <inheritdoc/>
    public async Task<long> AppendAsync(Commit commit, CancellationToken cancellation = default)
    {
        var kept = StoreIndex.Checked(commit);
        return await _thread.CallAsync(database => database.Append(kept), writes: true, cancellation);
    }

    /// <inheritdoc/>
    public Task<ImmutableArray<StoredCommit>> ReadGroupAsync(GroupId group, long afterVersion = 0, CancellationToken cancellation = default) =>
        ReadAsync(database => database.ReadGroup(group, afterVersion), cancellation);

    /// <inheritdoc/>
    public Task<ImmutableArray<StoredCommit>> ReadAllAsync(long afterPosition = 0, int limit = int.MaxValue, CancellationToken cancellation = default) =>
        ReadAsync(database => database.ReadAll(afterPosition, limit), cancellation);

    /// <inheritdoc/>
    public Task<ImmutableArray<GroupId>> ReadGroupsAsync(CancellationToken cancellation = default) =>
        ReadAsync(database => database.Index.Groups, cancellation);

    /// <inheritdoc/>
    public Task<long> HeadPositionAsync(CancellationToken cancellation = default) =>
        ReadAsync(database => database.Index.Head, cancellation);

    /// <summary>
    /// Copies everything stored so far into a file of its own, which replaces an older copy at once or not at all.
    /// Writes wait meanwhile. To go back to it, put it in the data file's place and take the '-log' file away.
    /// </summary>
    /// <exception cref="DataFileException">The copy could not be written. The store itself goes on.</exception>
    public Task BackupAsync(string path, CancellationToken cancellation = default) =>
        ReadAsync(database => database.BackUp(Path.GetFullPath(path)), cancellation);

    /// <summary>Answers what waits, moves the log into the data file and closes both.</summary>
    public async ValueTask DisposeAsync() => await _thread.CloseAsync();

    /// <summary>
    /// The power is cut: closes the files without another byte written, so that a rehearsal can open them again in the
    /// same process. Calls still waiting fail with <see cref="StoreOutcomeUnknownException"/>.
    /// </summary>
    public void Abandon() => _thread.Abandon();

    private Task<T> ReadAsync<T>(Func<HerdDatabase, T> body, CancellationToken cancellation) =>
        _thread.CallAsync(body, writes: false, cancellation);
}

namespace HerdBot.Host.LiteDb;

/// <summary>
/// Shared by the streams of one store. Nothing is written until the store has looked at the files and found them good,
/// and nothing after the first failed write, as if the power had gone. LiteDB itself is not told, because an exception in the middle of its commit leaves transactions
/// whose finalizers end the process (measured with 5.0.21, its issue 2828); the store asks here instead.
/// Safe for several threads.
/// </summary>
internal sealed class WriteGuard
{
    private Exception? _failure;
    private bool _open;

    /// <summary>Why nothing is written any more; null while all is well.</summary>
    public Exception? Failure => Volatile.Read(ref _failure);

    /// <summary>Lets writes through from here on.</summary>
    public void Open() => Volatile.Write(ref _open, true);

    /// <summary>Stops all writing for good. The first cause counts.</summary>
    public void Trip(Exception cause) => Interlocked.CompareExchange(ref _failure, cause, null);

    /// <summary>Runs a write if writes are let through; a failure of the disk stops it.</summary>
    public void Write(Action write)
    {
        if (!Volatile.Read(ref _open) || Failure is not null)
        {
            return;
        }

        try
        {
            write();
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ObjectDisposedException)
        {
            Trip(failure);
        }
    }
}

using System.Threading.Channels;
using HerdBot.App.Ports;

namespace HerdBot.Host.LiteDb;

/// <summary>
/// The one thread that touches the database after it was opened. It takes all that waits, writes it in one
/// transaction, and answers when that is on the disk. When anything fails it stops for good: whether the last writes
/// are stored is then known by opening the file again, and in no other way.
/// </summary>
internal sealed class StoreThread
{
    internal const int MostAtOnce = 256;

    private readonly Channel<StoreCall> _calls = Channel.CreateBounded<StoreCall>(
        new BoundedChannelOptions(4 * MostAtOnce) { SingleReader = true });

    private readonly TaskCompletionSource<Exception> _faulted = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly List<StoreCall> _batch = new(MostAtOnce);
    private readonly HerdDatabase _database;
    private long _durableWrites;
    private readonly Task _running;

    public StoreThread(HerdDatabase database)
    {
        _database = database;
        _running = Task.Factory.StartNew(Run, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    /// <summary>Ends, with the cause, when the store has failed; never after a close.</summary>
    public Task<Exception> Faulted => _faulted.Task;

    /// <summary>How many durable writes there were, each of all that waited.</summary>
    public long DurableWrites => Interlocked.Read(ref _durableWrites);

    /// <summary>Waits for room and for the answer. What has begun can't be cancelled.</summary>
    public async Task<T> CallAsync<T>(Func<HerdDatabase, T> body, bool writes, CancellationToken cancellation)
    {
        var call = new StoreCall<T>(body, writes);
        try
        {
            await _calls.Writer.WriteAsync(call, cancellation);
        }
        catch (ChannelClosedException closed)
        {
            throw closed.InnerException is { } failure ? Unknown(failure) : new ObjectDisposedException(nameof(LiteDbHerdStore));
        }

        return await call.Task;
    }

    /// <summary>Answers what waits, then closes.</summary>
    public Task CloseAsync()
    {
        _calls.Writer.TryComplete();
        return _running;
    }

    /// <summary>Stops without another byte written.</summary>
    public void Abandon()
    {
        var cause = new AbandonedException();
        _database.Abandon(cause);
        _calls.Writer.TryComplete(cause);
        _running.Wait();
    }

    private static StoreOutcomeUnknownException Unknown(Exception failure) =>
        new("The store has stopped; whether the last writes are kept shows when it is opened again.", failure);

    private void Run()
    {
        try
        {
            while (_calls.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult())
            {
                Take();
                Serve();
            }
        }
        catch (Exception failure)
        {
            // Whatever it was: from here on only a new start tells what is stored.
            Stop(failure);
        }

        _database.Dispose();
    }

    private void Take()
    {
        _batch.Clear();
        while (_batch.Count < MostAtOnce && _calls.Reader.TryRead(out var call))
        {
            _batch.Add(call);
        }
    }

    private void Serve()
    {
        var writes = _batch.FindAll(call => call.Writes);
        _database.ThrowIfFailed();
        if (writes.Count > 1)
        {
            _database.Together(() => writes.ForEach(call => call.Run(_database)));
        }
        else
        {
            writes.ForEach(call => call.Run(_database));
        }

        _database.ThrowIfFailed();
        Interlocked.Add(ref _durableWrites, Math.Min(writes.Count, 1));
        writes.ForEach(call => call.Answer());
        foreach (var read in _batch.Where(call => !call.Writes))
        {
            read.Run(_database);
            _database.ThrowIfFailed();
            read.Answer();
        }
    }

    private void Stop(Exception failure)
    {
        _database.Abandon(failure);
        _calls.Writer.TryComplete(failure);
        _batch.ForEach(call => call.Fail(Unknown(failure)));
        while (_calls.Reader.TryRead(out var call))
        {
            call.Fail(Unknown(failure));
        }

        if (failure is not AbandonedException && failure.InnerException is not AbandonedException)
        {
            _faulted.TrySetResult(failure);
        }
    }

    private sealed class AbandonedException() : IOException("The store was abandoned.");
}

using HerdBot.App.Ports;

namespace HerdBot.Host.LiteDb;

/// <summary>One call that waits for the writer thread.</summary>
internal abstract class StoreCall(bool writes)
{
    public bool Writes { get; } = writes;

    /// <summary>Does it. The answer is kept back: what was written in one transaction is told after its commit.</summary>
    public abstract void Run(HerdDatabase database);

    public abstract void Answer();

    public abstract void Fail(Exception failure);
}

/// <inheritdoc cref="StoreCall"/>
internal sealed class StoreCall<T>(Func<HerdDatabase, T> body, bool writes) : StoreCall(writes)
{
    // The caller goes on elsewhere, never on the writer thread.
    private readonly TaskCompletionSource<T> _answer = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private T _result = default!;
    private Exception? _refusal;

    public Task<T> Task => _answer.Task;

    public override void Run(HerdDatabase database)
    {
        try
        {
            _result = body(database);
        }
        catch (Exception refusal) when (refusal is StoreConflictException or StoreDuplicateException or DataFileException)
        {
            _refusal = refusal;
        }
    }

    public override void Answer()
    {
        if (_refusal is null)
        {
            _answer.SetResult(_result);
        }
        else
        {
            _answer.SetException(_refusal);
        }
    }

    // Twice is harmless: a call may have had its answer before the thread failed.
    public override void Fail(Exception failure) => _answer.TrySetException(failure);
}

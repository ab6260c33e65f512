namespace HerdBot.Tests.Support.FakeBotApi;

/// <summary>Guards what the server knows, and wakes whoever waits for a change of it.</summary>
internal sealed class FakeGate
{
    private readonly Lock _lock = new();
    private TaskCompletionSource _changed = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Done with the next change.</summary>
    public Task Changed => Read(() => _changed.Task);

    public T Read<T>(Func<T> read)
    {
        lock (_lock)
            return read();
    }

    public void Change(Action change) => Change(() =>
    {
        change();
        return 0;
    });

    public T Change<T>(Func<T> change)
    {
        TaskCompletionSource before;
        T result;
        lock (_lock)
        {
            result = change();
            (before, _changed) = (_changed, new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously));
        }
        before.SetResult();
        return result;
    }

    /// <summary>Waits until something is so; false where it never comes about.</summary>
    public async Task<bool> WaitForAsync(Func<bool> isSo)
    {
        using var limit = new CancellationTokenSource(Patience.Hang);
        while (true)
        {
            var changed = Changed;
            if (isSo())
                return true;
            try
            {
                await changed.WaitAsync(limit.Token);
            }
            catch (OperationCanceledException)
            {
                return false;
            }
        }
    }
}

namespace HerdBot.App.Messages;

/// <summary>Work that must not overlap goes one at a time.</summary>
internal static class Turns
{
    /// <summary>Waits for its turn, works, and gives the turn on, also after a fault.</summary>
    public static async Task InTurnAsync(this SemaphoreSlim turn, Func<Task> work, CancellationToken cancellation)
    {
        await turn.WaitAsync(cancellation);
        try
        {
            await work();
        }
        finally
        {
            turn.Release();
        }
    }
}

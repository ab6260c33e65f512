using Microsoft.Extensions.Hosting;

namespace HerdBot.Host.Composition;

/// <summary>Whoever built the host starts and ends it; signals to the process are for the command that runs.</summary>
internal sealed class ByCommand : IHostLifetime
{
    public Task WaitForStartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}

using HerdBot.App.Messages;
using Microsoft.Extensions.Hosting;

namespace HerdBot.Host.Composition;

/// <summary>Runs the pipeline as long as the host runs. A fault in it stops the host: a supervisor starts it anew.</summary>
public sealed class PipelineService(Pipeline pipeline) : BackgroundService
{
    /// <inheritdoc/>
    public override async Task StartAsync(CancellationToken cancellationToken)
    {
        await pipeline.StartAsync(cancellationToken);
        await base.StartAsync(cancellationToken);
    }

    /// <inheritdoc/>
    protected override Task ExecuteAsync(CancellationToken stoppingToken) => pipeline.RunAsync(stoppingToken);
}

using HerdBot.App.Messages;
using Microsoft.Extensions.Hosting;
using Quartz;

namespace HerdBot.Host.Quartz;

/// <summary>Asks what is due now. A double ring, a late one or a tick between does no harm.</summary>
[DisallowConcurrentExecution]
public sealed class WakeJob(Pipeline pipeline, IHostApplicationLifetime life) : IJob
{
    /// <summary>The one job.</summary>
    public static JobKey Key { get; } = new("wake");

    /// <inheritdoc/>
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken = default)
    {
        try
        {
            await pipeline.LookAsync(cancellationToken);
        }
        catch (Exception cut) when (cut is OperationCanceledException or SchedulerException && life.ApplicationStopping.IsCancellationRequested)
        {
            // A look that was under way at the stop: what is due is found at the next start.
        }
    }
}

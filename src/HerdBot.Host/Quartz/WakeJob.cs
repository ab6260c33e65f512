using HerdBot.App.Messages;
using Quartz;

namespace HerdBot.Host.Quartz;

/// <summary>Asks what is due now. A double ring, a late one or a tick between does no harm.</summary>
[DisallowConcurrentExecution]
public sealed class WakeJob(Pipeline pipeline) : IJob
{
    /// <summary>The one job.</summary>
    public static JobKey Key { get; } = new("wake");

    /// <inheritdoc/>
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken = default) =>
        await pipeline.LookAsync(cancellationToken);
}

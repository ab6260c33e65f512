using HerdBot.App.Ports;
using Microsoft.Extensions.Hosting;
using NodaTime;
using Quartz;

namespace HerdBot.Host.Quartz;

/// <summary>
/// One trigger, set anew to the earliest instant at which anything falls due. Quartz knows nothing else: what is due is
/// worked out from the history each time it rings.
/// </summary>
public sealed class QuartzWakeUp(ISchedulerFactory schedulers, TimeProvider clock, IHostApplicationLifetime life) : IWakeUp
{
    private static readonly TriggerKey Next = new("next");

    /// <inheritdoc/>
    public async Task ArmAsync(Instant? at, CancellationToken cancellation = default)
    {
        try
        {
            await ArmAsync(await schedulers.GetScheduler(cancellation), at, cancellation);
        }
        catch (SchedulerException) when (life.ApplicationStopping.IsCancellationRequested)
        {
            // A look that was under way at the stop: there is nothing to wake any more.
        }
    }

    private async Task ArmAsync(IScheduler scheduler, Instant? at, CancellationToken cancellation)
    {
        if (at is not { } due)
        {
            await scheduler.UnscheduleJob(Next, cancellation);
            return;
        }
        var trigger = TriggerBuilder.Create(clock).WithIdentity(Next).ForJob(WakeJob.Key).StartAt(due.ToDateTimeOffset())
            .WithSimpleSchedule(schedule => schedule.WithMisfireInstruction(SimpleTriggerMisfireInstruction.FireNow)).Build();
        await scheduler.ScheduleJob(trigger, ScheduleJobOptions.Replacing, cancellation);
    }
}

using HerdBot.App.Ports;
using NodaTime;
using Quartz;

namespace HerdBot.Host.Quartz;

/// <summary>
/// One trigger, set anew to the earliest instant at which anything falls due. Quartz knows nothing else: what is due is
/// worked out from the history each time it rings.
/// </summary>
public sealed class QuartzWakeUp(ISchedulerFactory schedulers, TimeProvider clock) : IWakeUp
{
    private static readonly TriggerKey Next = new("next");

    /// <inheritdoc/>
    public async Task ArmAsync(Instant? at, CancellationToken cancellation = default)
    {
        var scheduler = await schedulers.GetScheduler(cancellation);
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

using HerdBot.App.Messages;
using HerdBot.App.Outbox;
using HerdBot.App.Ports;
using HerdBot.Host.Calendar;
using HerdBot.Host.Quartz;
using Microsoft.Extensions.DependencyInjection;
using Quartz;

namespace HerdBot.Host.Composition;

/// <summary>Puts the house together: everything but the chat it speaks through.</summary>
public static class HerdBotServices
{
    /// <summary>The quiet tick behind the one wake-up: heals clock jumps and anything that was missed.</summary>
    private static readonly TimeSpan Tick = TimeSpan.FromSeconds(30);

    /// <summary>Adds the pipeline, the store and Quartz. The caller adds <see cref="IChat"/>, <see cref="IInboundFormat"/> and <see cref="IDoor"/>.</summary>
    /// <param name="services">The host's services.</param>
    /// <param name="setup">The farm.</param>
    /// <param name="store">Where the history is.</param>
    /// <param name="clock">The one clock.</param>
    /// <param name="tick">Whether the tick runs; a script that jumps from due to due has none.</param>
    public static IServiceCollection AddHerdBot(this IServiceCollection services, FarmSetup setup, IHerdStore store, TimeProvider clock, bool tick = true)
    {
        services.AddSingleton(clock).AddSingleton(setup).AddSingleton(store);
        services.AddSingleton<IPictures, Pictures>().AddSingleton<OutboxRun>().AddSingleton<Pipeline>().AddSingleton<IIntake>(provider => provider.GetRequiredService<Pipeline>());
        services.AddSingleton<QuartzWakeUp>().AddSingleton<IWakeUp>(provider => provider.GetRequiredService<QuartzWakeUp>());
        services.AddQuartz(quartz =>
        {
            quartz.UseInMemoryStore();
            quartz.UseTimeProvider(clock);
            quartz.AddJob<WakeJob>(job => job.WithIdentity(WakeJob.Key).StoreDurably());
            if (tick)
            {
                quartz.AddTrigger(trigger => trigger.ForJob(WakeJob.Key).WithIdentity("tick").StartNow()
                    .WithSimpleSchedule(schedule => schedule.WithInterval(Tick).RepeatForever()));
            }
        });
        services.AddQuartzHostedService(options => options.WaitForJobsToComplete = true);
        services.AddHostedService<PipelineService>();
        return services;
    }
}

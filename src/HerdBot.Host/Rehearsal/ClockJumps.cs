using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Host.Quartz;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace HerdBot.Host.Rehearsal;

/// <summary>Moves the clock under a running program.</summary>
/// <param name="clock">The one clock.</param>
/// <param name="pipeline">Knows when anything falls due.</param>
/// <param name="wakeUp">Tells that it did.</param>
/// <param name="settle">Waits until all that is due at an instant has been sent.</param>
internal sealed class ClockJumps(FakeTimeProvider clock, Pipeline pipeline, SignalledWakeUp wakeUp, Func<Task> settle)
{
    /// <summary>Registers the wake-up that the jumps wait for.</summary>
    public static void Prepare(IServiceCollection services) =>
        services.AddSingleton<SignalledWakeUp>().AddSingleton<IWakeUp>(provider => provider.GetRequiredService<SignalledWakeUp>());

    /// <summary>Lets the clock run on, from due moment to due moment, each woken by Quartz.</summary>
    public async Task RunToAsync(Instant target)
    {
        while (pipeline.NextLook is { } next && next <= target)
        {
            Forward(next);
            await wakeUp.RingAsync(next, () => pipeline.NextLook is { } after && after <= next);
            await settle();
        }
        Forward(target);
    }

    /// <summary>What is due may have been passed already, by whoever else moves the clock: it never goes back.</summary>
    private void Forward(Instant to)
    {
        if (to.ToDateTimeOffset() > clock.GetUtcNow())
        {
            clock.SetUtcNow(to.ToDateTimeOffset());
        }
    }
}

/// <summary>Quartz's wake-up that tells when it was set anew: the look before it is over then.</summary>
internal sealed class SignalledWakeUp(QuartzWakeUp quartz) : IWakeUp
{
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(250);
    private const int Tries = 240;
    private TaskCompletionSource armed = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <inheritdoc/>
    public async Task ArmAsync(Instant? at, CancellationToken cancellation = default)
    {
        await quartz.ArmAsync(at, cancellation);
        Interlocked.Exchange(ref armed, new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously)).SetResult();
    }

    /// <summary>
    /// Waits until Quartz has rung and nothing is due any more. Its thread may have read the clock just before it jumped
    /// and wait for a moment that is past: setting the trigger once more makes it look again.
    /// </summary>
    public async Task RingAsync(Instant due, Func<bool> stillDue)
    {
        for (var tries = 0; tries < Tries; tries++)
        {
            var rung = armed.Task;
            if (!stillDue())
            {
                return;
            }
            try
            {
                await rung.WaitAsync(Patience);
            }
            catch (TimeoutException)
            {
                if (stillDue())
                {
                    await quartz.ArmAsync(due);
                }
            }
        }
        throw new TimeoutException($"What fell due at {due} stays due: the clock cannot go on.");
    }
}

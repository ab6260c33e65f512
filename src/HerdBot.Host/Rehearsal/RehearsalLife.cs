using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Herd;
using HerdBot.Host.LiteDb;
using HerdBot.Host.Quartz;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace HerdBot.Host.Rehearsal;

/// <summary>The whole program from one start to the next power cut, on a clock that jumps.</summary>
internal sealed class RehearsalLife
{
    private readonly PlainHouse house;
    private readonly FakeTimeProvider clock;
    private readonly IAudience audience;
    private readonly SignalledWakeUp wakeUp;

    private RehearsalLife(PlainHouse house, FakeTimeProvider clock, IAudience audience) =>
        (this.house, this.clock, this.audience, wakeUp) = (house, clock, audience, house.Services.GetRequiredService<SignalledWakeUp>());

    public HerdState State => house.State;

    public IHerdStore Store => house.Store;

    public static async Task<RehearsalLife> StartAsync(FarmSetup setup, string data, FakeTimeProvider clock, IAudience audience)
    {
        var house = new PlainHouse(setup, LiteDbHerdStore.Open(data), clock, audience, tick: false, services =>
            services.AddSingleton<SignalledWakeUp>().AddSingleton<IWakeUp>(provider => provider.GetRequiredService<SignalledWakeUp>()));
        await house.StartAsync();
        await audience.RestAsync();
        return new RehearsalLife(house, clock, audience);
    }

    /// <summary>Hands something over as a chat would, and waits until it has been worked on.</summary>
    public async Task HearAsync(Inbound inbound)
    {
        audience.Hear(inbound);
        await house.HearAsync(inbound);
        await audience.RestAsync();
    }

    /// <summary>Lets the clock run on, from due moment to due moment, each woken by Quartz.</summary>
    public async Task RunToAsync(Instant target)
    {
        while (house.Pipeline.NextLook is { } next && next <= target)
        {
            clock.SetUtcNow(next.ToDateTimeOffset());
            await wakeUp.RingAsync(next, () => house.Pipeline.NextLook is { } after && after <= next);
            await house.SettleAsync();
            await audience.RestAsync();
        }
        if (target.ToDateTimeOffset() > clock.GetUtcNow())
        {
            clock.SetUtcNow(target.ToDateTimeOffset());
        }
    }

    /// <summary>Ends without warning: the data file is left as it is.</summary>
    public Task CutAsync() => house.CutAsync();

    /// <summary>Ends in good order.</summary>
    public Task EndAsync() => house.EndAsync();
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

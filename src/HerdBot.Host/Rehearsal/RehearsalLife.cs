using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Host.Composition;
using HerdBot.Host.LiteDb;
using HerdBot.Host.Quartz;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace HerdBot.Host.Rehearsal;

/// <summary>The whole program from one start to the next power cut, on a clock that jumps.</summary>
internal sealed class RehearsalLife
{
    private readonly IHost host;
    private readonly LiteDbHerdStore store;
    private readonly FakeTimeProvider clock;
    private readonly SignalledWakeUp wakeUp;

    private RehearsalLife(IHost host, LiteDbHerdStore store, FakeTimeProvider clock, SignalledWakeUp wakeUp) =>
        (this.host, this.store, this.clock, this.wakeUp) = (host, store, clock, wakeUp);

    public static GroupId Group { get; } = new("farm");

    public Pipeline Pipeline => host.Services.GetRequiredService<Pipeline>();

    public IHerdStore Store => store;

    public static async Task<RehearsalLife> StartAsync(FarmSetup setup, string data, FakeTimeProvider clock)
    {
        var store = LiteDbHerdStore.Open(data);
        var builder = Microsoft.Extensions.Hosting.Host.CreateEmptyApplicationBuilder(new HostApplicationBuilderSettings { DisableDefaults = true });
        builder.Logging.SetMinimumLevel(LogLevel.Error).AddConsole(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.Services.AddHerdBot(setup, store, clock, tick: false);
        builder.Services.AddSingleton<IInboundFormat, PlainInboundFormat>().AddSingleton<IDoor>(new OpenDoor(Group)).AddSingleton<IChat, AgreeableChat>();
        builder.Services.AddSingleton<SignalledWakeUp>().AddSingleton<IWakeUp>(services => services.GetRequiredService<SignalledWakeUp>());
        var host = builder.Build();
        await host.StartAsync();
        var life = new RehearsalLife(host, store, clock, host.Services.GetRequiredService<SignalledWakeUp>());
        await life.SettleAsync();
        return life;
    }

    /// <summary>Hands something over as a chat would, and waits until it has been worked on.</summary>
    public async Task HearAsync(Inbound inbound)
    {
        await Pipeline.TakeInAsync([PlainInboundFormat.Write(inbound)]);
        await SettleAsync();
    }

    /// <summary>Waits until all that came in has been worked on and all that is due at this instant has been sent.</summary>
    private async Task SettleAsync()
    {
        await Pipeline.IdleAsync();
        await Pipeline.LookAsync();
    }

    /// <summary>Lets the clock run on, from due moment to due moment, each woken by Quartz.</summary>
    public async Task RunToAsync(Instant target)
    {
        while (Pipeline.NextLook is { } next && next <= target)
        {
            var rung = wakeUp.Rung();
            clock.SetUtcNow(next.ToDateTimeOffset());
            await wakeUp.RingAsync(rung, next);
            await SettleAsync();
            if (Pipeline.NextLook <= next)
            {
                throw new InvalidOperationException($"What fell due at {next} stays due: the clock cannot go on.");
            }
        }
        if (target.ToDateTimeOffset() > clock.GetUtcNow())
        {
            clock.SetUtcNow(target.ToDateTimeOffset());
        }
    }

    /// <summary>Ends without warning: the data file is left as it is.</summary>
    public async Task CutAsync()
    {
        store.Abandon();
        await host.StopAsync();
        host.Dispose();
    }

    /// <summary>Ends in good order.</summary>
    public async Task EndAsync()
    {
        await host.StopAsync();
        host.Dispose();
        await store.DisposeAsync();
    }

    /// <summary>A chat that takes everything at once.</summary>
    private sealed class AgreeableChat : IChat
    {
        public Task<SendResult> SendAsync(Outgoing outgoing, CancellationToken cancellation = default) =>
            Task.FromResult<SendResult>(new SendResult.Sent(MessageOf(outgoing.Number)));
    }

    /// <summary>The chat's id of one of the bot's posts.</summary>
    public static string MessageOf(int post) => $"post {post}";
}

/// <summary>Quartz's wake-up that tells when it was set anew: the look before it is over then.</summary>
internal sealed class SignalledWakeUp(QuartzWakeUp quartz) : IWakeUp
{
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(250);
    private const int Tries = 240;
    private TaskCompletionSource armed = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Ends when the clock is set the next time.</summary>
    public Task Rung() => armed.Task;

    /// <inheritdoc/>
    public async Task ArmAsync(Instant? at, CancellationToken cancellation = default)
    {
        await quartz.ArmAsync(at, cancellation);
        Interlocked.Exchange(ref armed, new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously)).SetResult();
    }

    /// <summary>
    /// Waits for Quartz. Its thread may have read the clock just before it jumped and wait for a moment that is past:
    /// setting the trigger once more makes it look again.
    /// </summary>
    public async Task RingAsync(Task rung, Instant due)
    {
        for (var tries = 0; tries < Tries; tries++)
        {
            try
            {
                await rung.WaitAsync(Patience);
                return;
            }
            catch (TimeoutException)
            {
                await quartz.ArmAsync(due);
            }
        }
        throw new TimeoutException($"Quartz did not ring at {due}.");
    }
}

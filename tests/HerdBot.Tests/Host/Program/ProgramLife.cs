using HerdBot.App.Access;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.App.Settings;
using HerdBot.Host.Commands;
using HerdBot.Host.Health;
using HerdBot.Host.LiteDb;
using HerdBot.Host.Rehearsal;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Host.Telegram;
using HerdBot.Tests.Support;
using HerdBot.Tests.Support.FakeBotApi;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace HerdBot.Tests.Host.Program;

/// <summary>What "serve" runs, from one start to the next power cut, on the stand-in for Telegram and a clock that jumps.</summary>
internal sealed class ProgramLife
{
    private readonly IHost host;
    private readonly LiteDbHerdStore store;
    private readonly FakeBotApi fake;
    private readonly ClockJumps jumps;

    private ProgramLife(IHost host, LiteDbHerdStore store, FakeTimeProvider clock, FakeBotApi fake)
    {
        (this.host, this.store, this.fake) = (host, store, fake);
        jumps = new ClockJumps(clock, Pipeline, host.Services.GetRequiredService<SignalledWakeUp>(), () => Pipeline.LookAsync().WaitAsync(Patience.Hang));
    }

    public Pipeline Pipeline => host.Services.GetRequiredService<Pipeline>();

    /// <summary>The last poll failed.</summary>
    public bool Deaf => host.Services.GetRequiredService<TelegramPresence>().Failures > 0;

    public Watchman Watchman => host.Services.GetRequiredService<Watchman>();

    public string SetUpCode => host.Services.GetRequiredService<SetUpCode>().Code;

    public IHerdStore Store => store;

    public static async Task<ProgramLife> StartAsync(FarmSetup setup, string data, FakeTimeProvider clock, FakeBotApi fake, LogSheet log)
    {
        var store = LiteDbHerdStore.Open(data);
        var telegram = new TelegramOptions { Token = fake.Token, BaseUrl = fake.Url, SendTime = Patience.Hang, PollGrace = Patience.Hang };
        var builder = ServeCommand.Compose(new BotSettings(setup) { Data = data }, telegram, store, clock, tick: false);
        builder.Logging.ClearProviders().SetMinimumLevel(LogLevel.Trace).AddProvider(log);
        ClockJumps.Prepare(builder.Services);
        var life = new ProgramLife(builder.Build(), store, clock, fake);
        await life.host.StartAsync();
        await life.SettleAsync();
        return life;
    }

    /// <summary>Waits until all that people did has been fetched and worked on, what follows is sent, and the next poll waits.</summary>
    public async Task SettleAsync()
    {
        await fake.WaitForAsync(it => it.Polled && it.Unconfirmed == 0);
        await Pipeline.IdleAsync().WaitAsync(Patience.Hang);
        await Pipeline.LookAsync().WaitAsync(Patience.Hang);
    }

    /// <summary>Lets the clock run on, from due moment to due moment, each woken by Quartz.</summary>
    public Task RunToAsync(Instant target) => jumps.RunToAsync(target);

    /// <summary>The power fails and with it the line: nothing more is written, nothing more confirmed.</summary>
    public async Task CutAsync()
    {
        host.Services.GetRequiredService<TelegramLine>().Dispose();
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
}

using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Herd;
using HerdBot.Host.Composition;
using HerdBot.Host.LiteDb;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace HerdBot.Host.Rehearsal;

/// <summary>
/// The whole program around one farm's group and a chat that takes everything: what the terminal, the demo and
/// rehearsals run on.
/// </summary>
internal sealed class PlainHouse
{
    private readonly IHost host;
    private readonly LiteDbHerdStore store;

    /// <summary>Puts it together; nothing runs before <see cref="StartAsync"/>.</summary>
    /// <param name="setup">The farm.</param>
    /// <param name="store">The open data file; it is closed with the house.</param>
    /// <param name="clock">The one clock.</param>
    /// <param name="chat">Where the posts go.</param>
    /// <param name="tick">Whether the safety tick runs.</param>
    /// <param name="more">Services that take the place of the usual ones.</param>
    public PlainHouse(FarmSetup setup, LiteDbHerdStore store, TimeProvider clock, IChat chat, bool tick, Action<IServiceCollection>? more = null)
    {
        this.store = store;
        var builder = Microsoft.Extensions.Hosting.Host.CreateEmptyApplicationBuilder(new HostApplicationBuilderSettings { DisableDefaults = true });
        builder.Logging.SetMinimumLevel(LogLevel.Error).AddConsole(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.Services.AddHerdBot(setup, store, clock, tick);
        builder.Services.AddSingleton<IInboundFormat, PlainInboundFormat>().AddSingleton<IDoor>(new OpenDoor(Group)).AddSingleton(chat);
        builder.Services.AddSingleton<IHostLifetime, ByCommand>();
        more?.Invoke(builder.Services);
        host = builder.Build();
    }

    /// <summary>The farm's one group.</summary>
    public static GroupId Group { get; } = new("farm");

    public IServiceProvider Services => host.Services;

    public Pipeline Pipeline => host.Services.GetRequiredService<Pipeline>();

    public IHerdStore Store => store;

    public HerdState State => Pipeline.StateOf(Group);

    /// <summary>Set when the program ends, be it told to or by a fault.</summary>
    public CancellationToken Stopping => host.Services.GetRequiredService<IHostApplicationLifetime>().ApplicationStopping;

    /// <summary>The chat's id of one of the bot's posts.</summary>
    public static string MessageOf(int post) => $"post {post}";

    /// <summary>Starts, and takes up what was left at the last stop.</summary>
    public async Task StartAsync(CancellationToken cancellation = default)
    {
        await host.StartAsync(cancellation);
        await SettleAsync(cancellation);
    }

    /// <summary>Hands something over as a chat would, and waits until it has been answered.</summary>
    public async Task HearAsync(Inbound inbound, CancellationToken cancellation = default)
    {
        await Pipeline.TakeInAsync([PlainInboundFormat.Write(inbound)], cancellation);
        await SettleAsync(cancellation);
    }

    /// <summary>Waits until all that came in has been worked on and all that is due at this instant has been sent.</summary>
    public async Task SettleAsync(CancellationToken cancellation = default)
    {
        using var either = CancellationTokenSource.CreateLinkedTokenSource(cancellation, Stopping);
        await Pipeline.IdleAsync().WaitAsync(either.Token);
        await Pipeline.LookAsync(either.Token);
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
}

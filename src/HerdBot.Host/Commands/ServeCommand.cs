using System.CommandLine;
using HerdBot.App.Access;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.App.Settings;
using HerdBot.Host.Composition;
using HerdBot.Host.Copies;
using HerdBot.Host.Health;
using HerdBot.Host.LiteDb;
using HerdBot.Host.Telegram;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;
using NodaTime;

namespace HerdBot.Host.Commands;

/// <summary>The verb "serve": the bot itself.</summary>
public static class ServeCommand
{
    public static Command Create()
    {
        var file = new Option<string>("--settings") { Description = "The settings file.", DefaultValueFactory = _ => SettingsFile.Usual };
        var command = new Command("serve", "The bot itself, until it is stopped.") { file };
        command.SetAction(async (parsed, cancellation) => await RunAsync(parsed.GetValue(file)!, cancellation));
        return command;
    }

    /// <summary>Runs the bot; 0 after a stop in good order, 1 after a fault of ours, 2 where the settings or the data file cannot be used.</summary>
    public static async Task<int> RunAsync(string file, CancellationToken cancellation)
    {
        if (await SettingsFile.ReadAsync(file, Console.Error) is not { } settings)
        {
            return 2;
        }
        if (TelegramOptions.TokenFrom(settings.Token, Environment.GetEnvironmentVariable) is not { } token || !TelegramOptions.IsToken(token))
        {
            await Console.Error.WriteLineAsync($"There is no whole token: write it into {file} as \"token\", or into the environment as {TelegramOptions.TokenVariable}.");
            return 2;
        }
        LiteDbHerdStore store;
        try
        {
            store = LiteDbHerdStore.Open(settings.Data);
        }
        catch (DataFileException odd)
        {
            await Console.Error.WriteLineAsync(odd.Message);
            return 2;
        }
        await using (store)
        {
            return await ServeAsync(settings, token, store, cancellation);
        }
    }

    private static async Task<int> ServeAsync(BotSettings settings, string token, LiteDbHerdStore store, CancellationToken cancellation)
    {
        var clock = SystemClocks.Real;
        using var host = Build(settings, new TelegramOptions { Token = token, BaseUrl = settings.Server }, store, clock);
        var broken = false;
        var watch = store.Faulted.ContinueWith(fault =>
        {
            broken = true;
            Console.Error.WriteLine($"The data file cannot be written: {fault.Result.Message} Stopping, so that nothing is lost; start again when there is room.");
            host.Services.GetRequiredService<IHostApplicationLifetime>().StopApplication();
        }, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
        var pipeline = host.Services.GetServices<IHostedService>().OfType<PipelineService>().Single();
        try
        {
            await host.RunAsync(cancellation);
        }
        catch (InvalidDataException odd)
        {
            await Console.Error.WriteLineAsync(odd.Message);
            return 2;
        }
        if (pipeline.ExecuteTask?.Exception?.InnerException is { } fault && !broken)
        {
            await Console.Error.WriteLineAsync($"Stopped by a fault of HerdBot's own; what was written so far is safe. Start it again. {new TokenVeil(token).Hide(fault.ToString())}");
            return 1;
        }
        return broken || watch.IsFaulted ? 1 : 0;
    }

    /// <summary>The whole program on Telegram.</summary>
    /// <param name="settings">The farm.</param>
    /// <param name="telegram">The token and where to.</param>
    /// <param name="store">Where the history is.</param>
    /// <param name="clock">The one clock.</param>
    public static IHost Build(BotSettings settings, TelegramOptions telegram, IHerdStore store, TimeProvider clock) =>
        Compose(settings, telegram, store, clock).Build();

    /// <summary>The whole program on Telegram, before it is put together: a test may still change the log or the wake-up.</summary>
    /// <param name="settings">The farm.</param>
    /// <param name="telegram">The token and where to.</param>
    /// <param name="store">Where the history is.</param>
    /// <param name="clock">The one clock.</param>
    /// <param name="tick">Whether the safety tick and the watchman's rounds run; a clock that jumps has none.</param>
    internal static HostApplicationBuilder Compose(BotSettings settings, TelegramOptions telegram, IHerdStore store, TimeProvider clock, bool tick = true)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(clock);
        var builder = Microsoft.Extensions.Hosting.Host.CreateEmptyApplicationBuilder(new HostApplicationBuilderSettings { DisableDefaults = true });
        builder.Logging.SetMinimumLevel(LogLevel.Information).AddFilter("Quartz", LogLevel.Warning)
            .AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None) // Why the host ended is said once, in plain words.
            .AddSimpleConsole(console => console.SingleLine = true);
        builder.Services.Configure<ConsoleLoggerOptions>(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.Services.AddHerdBot(settings.Setup, store, clock, tick);
        builder.Services.AddSingleton<IHostLifetime, ByCommand>();
        var code = SetUpCodes.New(Instant.FromDateTimeOffset(clock.GetUtcNow()));
        builder.Services.AddSingleton(new AccessDesk(settings.Setup.Farm.Language, code));
        builder.Services.AddSingleton<AccessDoor>().AddSingleton<IDoor>(services => services.GetRequiredService<AccessDoor>());
        builder.Services.AddSingleton(code).AddHostedService<SetUpInvitation>();
        if (settings.Copies is { } copies && store is LiteDbHerdStore disk)
        {
            builder.Services.AddHostedService(services => new Copier(disk, Path.GetFullPath(copies), clock, services.GetRequiredService<ILogger<Copier>>()));
        }
        builder.Services.AddSingleton(services => new Doctor(services.GetRequiredService<Pipeline>(), services.GetRequiredService<TelegramPresence>(), store, settings.Data, clock));
        builder.Services.AddSingleton(services => new Watchman(services.GetRequiredService<Doctor>(), services.GetRequiredService<Pipeline>(), services.GetRequiredService<AccessDoor>(),
            services.GetRequiredService<TelegramPresence>(), new HeardFile(settings.Data), settings.Setup.Farm, clock, services.GetRequiredService<ILogger<Watchman>>()));
        if (tick)
        {
            builder.Services.AddHostedService(services => services.GetRequiredService<Watchman>());
        }
        if (settings.HealthPort is { } port)
        {
            builder.Services.AddHostedService(services => new HealthPage(services.GetRequiredService<Doctor>(), port, services.GetRequiredService<ILogger<HealthPage>>()));
        }
        builder.Services.AddTelegram(telegram);
        return builder;
    }
}

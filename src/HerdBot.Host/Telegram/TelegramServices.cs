using HerdBot.App.Ports;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace HerdBot.Host.Telegram;

/// <summary>Adds Telegram to a host that has a <see cref="TimeProvider"/> and an <see cref="IIntake"/>.</summary>
public static class TelegramServices
{
    /// <summary>Registers the receiver, the inbound format and the chat.</summary>
    /// <param name="services">The host's services.</param>
    /// <param name="options">The token and the time limits.</param>
    /// <param name="findPerson">The Telegram number of a person by name; null where the name is not known.</param>
    public static IServiceCollection AddTelegram(
        this IServiceCollection services, TelegramOptions options, Func<IServiceProvider, Func<string, long?>>? findPerson = null)
    {
        ArgumentNullException.ThrowIfNull(options);
        services.AddSingleton(_ => new TelegramLine(options));
        services.AddSingleton<TelegramPresence>();
        services.AddSingleton<IInboundFormat, TelegramInbound>();
        services.AddSingleton<IChat>(provider => new TelegramChat(
            provider.GetRequiredService<TelegramLine>(),
            findPerson?.Invoke(provider) ?? (_ => null),
            provider.GetRequiredService<ILogger<TelegramChat>>()));
        services.AddHostedService<TelegramReceiver>();
        return services;
    }
}

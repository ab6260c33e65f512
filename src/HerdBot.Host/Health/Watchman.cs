using HerdBot.App.Access;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Herd;
using HerdBot.Core.Wording;
using HerdBot.Host.Telegram;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace HerdBot.Host.Health;

/// <summary>
/// Looks every minute: keeps when Telegram was last heard, asks the groups to send again what was written in a gap that
/// is longer than Telegram remembers, and tells the owner in private where posts do not get through.
/// </summary>
/// <param name="doctor">Looks how the bot is.</param>
/// <param name="pipeline">Knows what waits.</param>
/// <param name="door">Speaks to the owner.</param>
/// <param name="presence">Knows when Telegram was last heard.</param>
/// <param name="heard">Keeps that.</param>
/// <param name="farm">Says hours as the farm does.</param>
/// <param name="time">The clock.</param>
/// <param name="log">For what is wrong.</param>
internal sealed partial class Watchman(
    Doctor doctor, Pipeline pipeline, AccessDoor door, TelegramPresence presence, HeardFile heard, Farm farm, TimeProvider time, ILogger<Watchman> log) : BackgroundService
{
    /// <summary>Telegram forgets messages after a day; a little less is safe to say. Source: telegram-bot-api's server, 2026.</summary>
    private static readonly Duration Remembered = Duration.FromHours(20);
    private static readonly Duration Patience = Duration.FromMinutes(3);
    private static readonly TimeSpan Round = TimeSpan.FromMinutes(1);

    private readonly HashSet<GroupId> stuck = [];
    private Instant? kept = heard.Read();
    private string told = "";

    /// <summary>Goes round once.</summary>
    public async Task LookAsync(CancellationToken cancellation = default)
    {
        if (presence.HeardAt is { } last)
        {
            if (last - kept > Remembered)
            {
                await pipeline.TellMissedAsync(kept!.Value, cancellation);
            }
            heard.Write(last);
            kept = last;
        }
        await TellOwnerAsync(cancellation);
        var troubles = string.Join(" ", (await doctor.LookAsync(cancellation)).Troubles);
        if (troubles.Length > 0 && told.Length == 0)
        {
            LogUnwell(troubles);
        }
        told = troubles;
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Round, time);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                await LookAsync(stoppingToken);
            }
            catch (StoreOutcomeUnknownException)
            {
                // The store has ended, and says so itself.
            }
            catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
            {
                LogFailed(failure.Message);
            }
        }
    }

    private async Task TellOwnerAsync(CancellationToken cancellation)
    {
        var now = Instant.FromDateTimeOffset(time.GetUtcNow());
        var waiting = pipeline.Unsent.Where(one => one.Why is not null && now - one.Since > Patience).ToList();
        foreach (var one in waiting.Where(one => stuck.Add(one.Group)))
        {
            await door.TellStuckAsync(one.Group, new Speaker(farm, now).Clock(one.Since), one.Why!, one.Count, cancellation);
        }
        foreach (var group in stuck.Except(pipeline.Unsent.Where(one => one.Why is not null).Select(one => one.Group)).ToList())
        {
            stuck.Remove(group);
            await door.TellUnstuckAsync(group, cancellation);
        }
    }

    [LoggerMessage(3401, LogLevel.Warning, "Not well: {Troubles}")]
    private partial void LogUnwell(string troubles);

    [LoggerMessage(3402, LogLevel.Error, "The round could not be finished: {Why}")]
    private partial void LogFailed(string why);
}

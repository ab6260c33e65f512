using HerdBot.App.Ports;
using HerdBot.Host.LiteDb;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace HerdBot.Host.Copies;

/// <summary>
/// Keeps a second copy of the history up to date, line by line, and makes a backup a day that is opened and counted.
/// What goes wrong here is said in the log and tried again; the bot itself goes on.
/// </summary>
/// <param name="store">What is copied.</param>
/// <param name="folder">Where to.</param>
/// <param name="time">The clock.</param>
/// <param name="log">For what was done and what went wrong.</param>
internal sealed partial class Copier(LiteDbHerdStore store, string folder, TimeProvider time, ILogger<Copier> log) : BackgroundService
{
    private const int AtOnce = 1000;
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(5);

    private readonly CommitLines lines = new(folder);
    private readonly DailyBackups backups = new(store, folder, time);
    private long? copied;

    /// <summary>Brings the copy up to date, and makes the day's backup where it is due.</summary>
    public async Task CopyAsync(CancellationToken cancellation = default)
    {
        copied ??= await BeginAsync(cancellation);
        while (await store.ReadAllAsync(copied.Value, AtOnce, cancellation) is { Length: > 0 } news)
        {
            lines.Add(news);
            copied = news[^1].Position;
        }
        if (await backups.MakeAsync(cancellation) is { } backup)
        {
            LogBackedUp(backup.Path, backup.Events);
        }
    }

    /// <inheritdoc/>
    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        await base.StopAsync(cancellationToken);
        await TryAsync(cancellationToken);
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause, time);
        do
        {
            await TryAsync(stoppingToken);
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    private async Task TryAsync(CancellationToken cancellation)
    {
        try
        {
            await CopyAsync(cancellation);
        }
        catch (Exception closed) when (closed is StoreOutcomeUnknownException or ObjectDisposedException)
        {
            // The store has ended, and says so itself.
        }
        // The boundary: a full second disk, or whatever else, must never end the bot.
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            copied = null;
            LogFailed(folder, failure.Message);
        }
    }

    /// <summary>Where to go on: after the last line, where it is of this history; else from the beginning.</summary>
    private async Task<long> BeginAsync(CancellationToken cancellation)
    {
        if (lines.Last() is not { } last)
        {
            return 0;
        }
        var same = await store.ReadAllAsync(last.Position - 1, 1, cancellation) is [var stored] && stored.Position == last.Position && stored.Commit.Key == last.Commit.Key;
        if (!same)
        {
            LogOther(lines.SetAside(Stamp.Of(time)));
        }
        return same ? last.Position : 0;
    }

    [LoggerMessage(3301, LogLevel.Information, "Backup {Path} was made, opened and counted: {Events} events.")]
    private partial void LogBackedUp(string path, long events);

    [LoggerMessage(3302, LogLevel.Error, "The copies in {Folder} are behind: {Why} It is tried again.")]
    private partial void LogFailed(string folder, string why);

    [LoggerMessage(3303, LogLevel.Warning, "The lines of an earlier history were put aside into {Folder}; the copy begins anew.")]
    private partial void LogOther(string folder);
}

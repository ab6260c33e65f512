using System.Globalization;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Host.Telegram;
using NodaTime;

namespace HerdBot.Host.Health;

/// <summary>Looks how the bot is.</summary>
/// <param name="pipeline">Knows what waits to be sent.</param>
/// <param name="presence">Knows when Telegram was last heard.</param>
/// <param name="store">Knows what waits to be worked on.</param>
/// <param name="data">The data file.</param>
/// <param name="time">The clock.</param>
internal sealed class Doctor(Pipeline pipeline, TelegramPresence presence, IHerdStore store, string data, TimeProvider time)
{
    private const long LeastFreeBytes = 200_000_000;
    private static readonly Duration LongestDeaf = Duration.FromMinutes(5);
    private static readonly Duration LongestWait = Duration.FromMinutes(2);
    private static readonly Duration LongestUnsent = Duration.FromMinutes(10);

    private readonly Instant begun = Instant.FromDateTimeOffset(time.GetUtcNow());

    /// <summary>Looks.</summary>
    public async Task<HealthReport> LookAsync(CancellationToken cancellation = default)
    {
        var now = Instant.FromDateTimeOffset(time.GetUtcNow());
        var inbox = (await store.ReadWaitingAsync(cancellation)).Select(entry => (Instant?)entry.ReceivedAt).FirstOrDefault();
        var unsent = pipeline.Unsent.OrderBy(waiting => waiting.Since).ToList();
        var free = new DriveInfo(Path.GetDirectoryName(Path.GetFullPath(data))!).AvailableFreeSpace;
        var troubles = new List<string>();
        if (now - (presence.HeardAt ?? begun) > LongestDeaf)
        {
            troubles.Add($"Telegram was not heard for {Minutes(now - (presence.HeardAt ?? begun))}.");
        }
        if (now - inbox > LongestWait)
        {
            troubles.Add($"A message waits to be worked on for {Minutes(now - inbox!.Value)}.");
        }
        troubles.AddRange(unsent.Where(waiting => now - waiting.Since > LongestUnsent)
            .Select(waiting => $"{waiting.Count} posts to {waiting.Group} wait, the oldest for {Minutes(now - waiting.Since)}: {waiting.Why ?? "the chat's pace"}."));
        if (free < LeastFreeBytes)
        {
            troubles.Add(string.Create(CultureInfo.InvariantCulture, $"Only {free / 1_000_000} MB are free on the disk of the data file."));
        }
        return new HealthReport(presence.HeardAt?.ToDateTimeOffset(), inbox?.ToDateTimeOffset(), unsent.FirstOrDefault()?.Since.ToDateTimeOffset(), free, troubles);
    }

    private static string Minutes(Duration length) => string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(length.TotalMinutes)} min");
}

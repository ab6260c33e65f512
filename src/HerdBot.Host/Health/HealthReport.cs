using System.Text.Json;
using System.Text.Json.Serialization;

namespace HerdBot.Host.Health;

/// <summary>How the bot is.</summary>
/// <param name="Heard">When a poll was last answered well; null where none was yet.</param>
/// <param name="OldestWaiting">When the oldest message came in that is not worked on; null where none waits.</param>
/// <param name="OldestUnsent">When the oldest post was decided that is not sent; null where none waits.</param>
/// <param name="FreeBytes">Room on the disk of the data file.</param>
/// <param name="Troubles">What is wrong, as plain sentences; empty where nothing is.</param>
internal sealed record HealthReport(DateTimeOffset? Heard, DateTimeOffset? OldestWaiting, DateTimeOffset? OldestUnsent, long FreeBytes, IReadOnlyList<string> Troubles)
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Nothing is wrong.</summary>
    [JsonInclude]
    public bool Well => Troubles.Count == 0;

    public string ToJson() => JsonSerializer.Serialize(this, Options);
}

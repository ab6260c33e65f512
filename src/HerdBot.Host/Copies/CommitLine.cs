using System.Text.Encodings.Web;
using System.Text.Json;
using HerdBot.App.Ports;
using NodaTime.Text;

namespace HerdBot.Host.Copies;

/// <summary>A commit as a line of JSON that people can read, and that the data file can be rebuilt from.</summary>
internal static class CommitLine
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Write(StoredCommit stored)
    {
        var commit = stored.Commit;
        var events = commit.Events.Select(happened => new Event(happened.Type, happened.Version, JsonElement.Parse(happened.Data))).ToArray();
        return JsonSerializer.Serialize(new Line(stored.Position, commit.Group.Value, stored.Version, commit.Key, InstantPattern.ExtendedIso.Format(commit.At), events), Options);
    }

    /// <exception cref="FormatException">It is no such line.</exception>
    public static StoredCommit Read(string text)
    {
        try
        {
            var line = JsonSerializer.Deserialize<Line>(text, Options) ?? throw new FormatException("nothing in it");
            var at = InstantPattern.ExtendedIso.Parse(line.At).GetValueOrThrow();
            return new StoredCommit(line.Position, line.Version, new Commit(new GroupId(line.Group), line.Version - 1, line.Key, at,
                [.. line.Events.Select(happened => new EventRecord(happened.Type, happened.Version, happened.Data.GetRawText()))]));
        }
        catch (Exception odd) when (odd is JsonException or UnparsableValueException)
        {
            throw new FormatException(odd.Message, odd);
        }
    }

    private sealed record Line(long Position, string Group, long Version, string Key, string At, Event[] Events);

    private sealed record Event(string Type, int Version, JsonElement Data);
}

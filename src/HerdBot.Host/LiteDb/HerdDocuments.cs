using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using HerdBot.App.Ports;
using LiteDB;
using NodaTime;

namespace HerdBot.Host.LiteDb;

/// <summary>
/// Documents by hand, both ways. LiteDB's own mapper trims text, and drops fields when several threads first use it
/// (its issue 2528); its dates come back in the machine's zone. So: no mapper, and instants as milliseconds.
/// </summary>
internal static class HerdDocuments
{
    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static BsonDocument ToDocument(StoredCommit stored) => new()
    {
        ["_id"] = stored.Position,
        ["g"] = stored.Commit.Group.Value,
        ["v"] = stored.Version,
        ["k"] = stored.Commit.Key,
        ["at"] = stored.Commit.At.ToUnixTimeMilliseconds(),
        ["d"] = ToJson(stored.Commit.Events),
    };

    public static StoredCommit ToCommit(BsonDocument document)
    {
        var version = document["v"].AsInt64;
        var commit = new Commit(
            new GroupId(document["g"].AsString),
            version - 1,
            document["k"].AsString,
            Instant.FromUnixTimeMilliseconds(document["at"].AsInt64),
            ToEvents(document["d"].AsString));
        return new StoredCommit(document["_id"].AsInt64, version, commit);
    }

    public static BsonDocument ToDocument(long id, InboxEntry entry) => new()
    {
        ["_id"] = id,
        ["k"] = entry.Key,
        ["at"] = entry.ReceivedAt.ToUnixTimeMilliseconds(),
        ["d"] = entry.Raw,
    };

    public static InboxEntry ToEntry(BsonDocument document) => new(
        document["k"].AsString,
        Instant.FromUnixTimeMilliseconds(document["at"].AsInt64),
        document["d"].AsString);

    private static string ToJson(ImmutableArray<EventRecord> events)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Plain))
        {
            json.WriteStartArray();
            foreach (var record in events)
            {
                json.WriteStartObject();
                json.WriteString("type", record.Type);
                json.WriteNumber("version", record.Version);
                json.WriteString("data", record.Data);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    private static ImmutableArray<EventRecord> ToEvents(string json)
    {
        using var document = JsonDocument.Parse(json);
        return [.. document.RootElement.EnumerateArray().Select(item => new EventRecord(
            item.GetProperty("type").GetString()!,
            item.GetProperty("version").GetInt32(),
            item.GetProperty("data").GetString()!))];
    }
}

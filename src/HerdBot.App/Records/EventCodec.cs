using System.Collections.Frozen;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using HerdBot.App.Ports;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.App.Records;

/// <summary>Events as they are stored: a type's word, a version of its shape, JSON.</summary>
/// <remarks>A shape that changes gets a new version and an upcast here; stored events are never rewritten.</remarks>
public static class EventCodec
{
    private const int Version = 1;

    private static readonly FrozenDictionary<string, Type> Types = typeof(HerdEvent).GetNestedTypes()
        .Where(type => type.IsSubclassOf(typeof(HerdEvent))).ToFrozenDictionary(type => FactWords.Snake(type.Name));

    private static readonly FrozenDictionary<Type, string> Words = Types.ToFrozenDictionary(pair => pair.Value, pair => pair.Key);

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower), new FactConverter(), new InstantConverter(), new AnimalIdConverter(), new FactIdConverter() },
    };

    /// <summary>The stored form of an event.</summary>
    public static EventRecord Write(HerdEvent happened)
    {
        ArgumentNullException.ThrowIfNull(happened);
        return new EventRecord(Words[happened.GetType()], Version, JsonSerializer.Serialize(happened, happened.GetType(), Options));
    }

    /// <summary>The event of a stored form.</summary>
    /// <exception cref="InvalidDataException">It was written by a newer HerdBot, or is damaged.</exception>
    public static HerdEvent Read(EventRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (record.Version > Version || !Types.TryGetValue(record.Type, out var type))
        {
            throw new InvalidDataException($"The data file holds an event '{record.Type}' (version {record.Version}) that this HerdBot does not know. Start the newer one.");
        }
        try
        {
            return (HerdEvent)JsonSerializer.Deserialize(record.Data, type, Options)!;
        }
        catch (JsonException damaged)
        {
            throw new InvalidDataException($"An event '{record.Type}' in the data file is damaged: {damaged.Message}", damaged);
        }
    }

    private sealed class FactConverter : JsonConverter<Fact>
    {
        public override Fact Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            using var json = JsonDocument.ParseValue(ref reader);
            return FactJson.Read(json.RootElement) ?? throw new JsonException("no fact");
        }

        public override void Write(Utf8JsonWriter writer, Fact value, JsonSerializerOptions options) => FactJson.Write(writer, value, stored: true);
    }

    private sealed class InstantConverter : JsonConverter<Instant>
    {
        public override Instant Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            InstantPattern.ExtendedIso.Parse(reader.GetString() ?? "") is { Success: true } parsed ? parsed.Value : throw new JsonException("no instant");

        public override void Write(Utf8JsonWriter writer, Instant value, JsonSerializerOptions options) =>
            writer.WriteStringValue(InstantPattern.ExtendedIso.Format(value));
    }

    private sealed class AnimalIdConverter : JsonConverter<AnimalId>
    {
        public override AnimalId Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new(reader.GetString() ?? "");

        public override void Write(Utf8JsonWriter writer, AnimalId value, JsonSerializerOptions options) => writer.WriteStringValue(value.Value);
    }

    private sealed class FactIdConverter : JsonConverter<FactId>
    {
        public override FactId Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new(reader.GetInt32());

        public override void Write(Utf8JsonWriter writer, FactId value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Number);
    }
}

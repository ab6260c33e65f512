using System.Text.Json;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.App.Records;

/// <summary>Reads the "given" part of a corpus line.</summary>
internal static class CorpusLineGiven
{
    /// <summary>The circumstances, with the moment of sending.</summary>
    public static ReadingContext Context(JsonElement given, OffsetDateTime sent)
    {
        var now = sent.InZone(Zone(given, sent));
        var reply = given.Child("replying_to") ?? default;
        return new ReadingContext(now, [.. given.Items("herd").Select(animal => Entry(animal, now.Zone)).OfType<HerdEntry>()])
        {
            Units = given.Text("units") switch { "us" => UnitSystem.Us, "metric" => UnitSystem.Metric, _ => null },
            Dates = given.Text("dates") == "dmy" ? DateOrder.DayFirst : DateOrder.MonthFirst,
            Language = given.Text("lang") == "es" ? Language.Spanish : Language.English,
            From = given.Text("from"),
            People = [.. given.Items("people").Where(one => one.ValueKind == JsonValueKind.String).Select(one => one.GetString()!)],
            Log = [.. given.Items("log").Select(fact => Logged(fact, now.Zone)).OfType<LoggedFact>()],
            Said = [.. given.Items("said").Select(Line)],
            Reminders = [.. given.Items("reminders").Select(one => new OpenReminder(one.Text("task") ?? "", one.Text("animal")))],
            ReplyToReminder = reply.Whole("reminder"),
            ReplyToLog = reply.Whole("log"),
        };
    }

    private static DateTimeZone Zone(JsonElement given, OffsetDateTime now) =>
        DateTimeZoneProviders.Tzdb.GetZoneOrNull(given.Text("zone") ?? "") ?? DateTimeZone.ForOffset(now.Offset);

    private static HerdEntry? Entry(JsonElement animal, DateTimeZone zone) =>
        animal.Text("name") is not { } name ? null : new HerdEntry(name, ParseWord<HerdRole>(animal.Text("role")) ?? HerdRole.Dam)
        {
            Species = ParseWord<Species>(animal.Text("species")),
            Sex = FactWords.SexOf(animal.Text("sex")),
            Dam = animal.Text("dam"),
            Colour = animal.Text("colour"),
            Born = Local(animal.Text("born"), zone),
            State = ParseWord<HerdEntryState>(animal.Text("state")),
            Tag = animal.Text("tag"),
        };

    private static LoggedFact? Logged(JsonElement json, DateTimeZone zone) =>
        FactJson.Read(json) is { } fact
            ? new LoggedFact(fact with { At = Local(json.Text("at"), zone) }, Moment(json.Text("at"), zone))
            : null;

    private static SaidLine Line(JsonElement json) =>
        new(json.Text("from"), json.Text("text") ?? "", Duration.FromMinutes((double)(json.Number("minutes_ago") ?? 0m)));

    private static FactTime? Local(string? at, DateTimeZone zone) =>
        Moment(at, zone) is { } moment ? FactTime.Of(moment.InZone(zone).LocalDateTime) : FactJson.ParseTime(at);

    private static Instant? Moment(string? at, DateTimeZone zone)
    {
        if (at is null)
        {
            return null;
        }

        var withOffset = OffsetDateTimePattern.ExtendedIso.Parse(at);
        return withOffset.Success ? withOffset.Value.ToInstant()
            : FactJson.ParseTime(at) is { Time: { } time } local ? zone.AtLeniently(local.Date + time).ToInstant()
            : null;
    }

    /// <summary>The member of a closed set that is written with this word; null for anything else.</summary>
    public static T? ParseWord<T>(string? word) where T : struct, Enum
    {
        foreach (var value in Enum.GetValues<T>())
        {
            if (FactWords.Snake(value.ToString()) == word)
            {
                return value;
            }
        }

        return null;
    }
}

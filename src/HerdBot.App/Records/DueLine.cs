using System.Collections.Immutable;
using System.Text.Json;
using HerdBot.Core.Care;
using HerdBot.Core.Due;
using HerdBot.Core.Herd;
using HerdBot.Core.Wording;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.App.Records;

/// <summary>One line of the verb "due": what is known of a dam in, her due window out.</summary>
public static class DueLine
{
    private static readonly LocalDatePattern Iso = LocalDatePattern.Iso;

    /// <summary>Answers one line.</summary>
    /// <param name="line">A JSON object as the documentation of the verb has it; anything else is answered with an error.</param>
    /// <param name="writer">Takes the answer, one object.</param>
    /// <param name="tables">The numbers of each species.</param>
    /// <param name="phrases">The language of the reasons.</param>
    public static void Answer(string line, Utf8JsonWriter writer, IReadOnlyDictionary<Species, CareTable> tables, Phrases phrases)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(tables);
        ArgumentNullException.ThrowIfNull(phrases);
        writer.WriteStartObject();
        JsonElement? id = null;
        try
        {
            using var json = JsonDocument.Parse(line);
            id = json.RootElement.ValueKind == JsonValueKind.Object && json.RootElement.TryGetProperty("id", out var given) ? given.Clone() : null;
            WriteId(writer, id);
            Answer(json.RootElement, writer, tables, phrases);
        }
        catch (JsonException)
        {
            WriteId(writer, id);
            writer.WriteString("error", "The line is not whole JSON.");
        }
        writer.WriteEndObject();
    }

    private static void Answer(JsonElement json, Utf8JsonWriter writer, IReadOnlyDictionary<Species, CareTable> tables, Phrases phrases)
    {
        var (asked, problem) = Read(json, tables);
        if (asked is null)
        {
            writer.WriteString("error", problem);
            return;
        }
        var table = tables[asked.Species];
        if (DueForecast.Of(table, asked) is not { } due)
        {
            writer.WriteString("error", asked.Matings.All(mating => mating.From > asked.Today) ? "No mating before today." : "No mating that she could still carry.");
            return;
        }
        writer.WriteString("median", Iso.Format(due.Median));
        Window(writer, "window50", due.Window(0.5));
        Window(writer, "window80", due.Window(0.8));
        Window(writer, "window95", due.Window(0.95));
        writer.WriteNumber("next7", Math.Round(due.Next7, 4));
        writer.WriteNumber("overdue", Math.Round(due.Overdue, 4));
        writer.WriteNumber("open", Math.Round(due.Open, 4));
        writer.WriteString("look_from", Iso.Format(due.LookFrom));
        writer.WriteNumber("days", due.Days);
        writer.WriteStartArray("why");
        foreach (var reason in new DueReasons(phrases, Iso.Format).Of(due, Gestation.Of(table)))
        {
            writer.WriteStringValue(reason);
        }
        writer.WriteEndArray();
    }

    private static (DueCase? Case, string? Problem) Read(JsonElement json, IReadOnlyDictionary<Species, CareTable> tables)
    {
        if (json.ValueKind != JsonValueKind.Object)
        {
            return (null, "The line must be an object.");
        }
        var species = json.Text("species") switch { "llama" => Species.Llama, "alpaca" => Species.Alpaca, _ => Species.Sheep };
        if (!tables.TryGetValue(species, out var table))
        {
            return (null, "'species' must be llama or alpaca.");
        }
        if (Day(json, "today") is not { } today)
        {
            return (null, "'today' must be a day like 2027-04-18.");
        }
        var problems = new List<string>();
        var matings = List(json, "matings", problems, "a list of {\"on\"} or {\"from\", \"to\"}", MatingOf);
        var checks = List(json, "checks", problems, "a list of {\"on\", \"result\"}, with a result of pregnant, open, spit_off or receptive", CheckOf);
        var past = Lengths(json, "past", Gestation.Of(table), problems);
        var herd = json.TryGetProperty("herd_past", out var dams) && dams.ValueKind == JsonValueKind.Array
            ? dams.EnumerateArray().Select(dam => Lengths(dam, Gestation.Of(table), "herd_past", problems)).ToImmutableArray() : [];
        var hemisphere = json.Text("hemisphere") switch { "north" => Hemisphere.North, "south" => Hemisphere.South, _ => (Hemisphere?)null };
        if (hemisphere is null && json.TryGetProperty("hemisphere", out var half) && half.ValueKind != JsonValueKind.Null)
        {
            problems.Add("'hemisphere' must be north or south.");
        }
        if (matings.IsEmpty && problems.Count == 0)
        {
            problems.Add("There is no mating.");
        }
        return problems.Count > 0 ? (null, string.Join(" ", problems.Distinct()))
            : (new DueCase(species, matings, today) { Checks = checks, Past = past, HerdPast = herd, Hemisphere = hemisphere }, null);
    }

    private static Mating? MatingOf(JsonElement json) => Day(json, "on") is { } on ? Mating.On(on)
        : Day(json, "from") is { } from && Day(json, "to") is { } to && to >= from && Period.DaysBetween(from, to) <= LongestPen ? new Mating(from, to) : null;

    private static PregnancyCheck? CheckOf(JsonElement json)
    {
        CheckResult? result = json.Text("result") switch
        {
            "pregnant" => CheckResult.Pregnant,
            "open" => CheckResult.Open,
            "spit_off" => CheckResult.SpitOff,
            "receptive" => CheckResult.Receptive,
            _ => null,
        };
        return Day(json, "on") is { } on && result is { } seen ? new PregnancyCheck(on, seen) : null;
    }

    /// <summary>A time in the pen that is longer than this is a slip of the pen; in days.</summary>
    private const int LongestPen = 400;

    private static ImmutableArray<T> List<T>(JsonElement json, string key, List<string> problems, string what, Func<JsonElement, T?> read)
        where T : struct
    {
        if (!json.TryGetProperty(key, out var list) || list.ValueKind == JsonValueKind.Null)
        {
            return [];
        }
        var read1 = list.ValueKind == JsonValueKind.Array ? list.EnumerateArray().Select(entry => entry.ValueKind == JsonValueKind.Object ? read(entry) : null).ToList() : [null];
        if (read1.Contains(null))
        {
            problems.Add($"'{key}' must be {what}; a window may not end before it begins.");
        }
        return [.. read1.OfType<T>()];
    }

    private static ImmutableArray<Length> Lengths(JsonElement json, string key, Gestation gestation, List<string> problems) =>
        json.TryGetProperty(key, out var list) && list.ValueKind != JsonValueKind.Null ? Lengths(list, gestation, key, problems) : [];

    private static ImmutableArray<Length> Lengths(JsonElement list, Gestation gestation, string key, List<string> problems)
    {
        var days = list.ValueKind == JsonValueKind.Array ? list.EnumerateArray().Select(entry => entry.ValueKind == JsonValueKind.Number && entry.TryGetInt32(out var one) && one >= 200 && one <= 500 ? one : 0).ToList() : [0];
        if (days.Contains(0))
        {
            problems.Add($"'{key}' must hold lengths in whole days, 200 to 500.");
        }
        return [.. days.Where(one => one > 0).Select(one => gestation.LengthOf(one, null, null))];
    }

    private static LocalDate? Day(JsonElement json, string key) => json.Text(key) is { } text && Iso.Parse(text) is { Success: true, Value.Year: >= 1900 and <= 2200 } parsed ? parsed.Value : null;

    private static void Window(Utf8JsonWriter writer, string key, DayRange window)
    {
        writer.WriteStartArray(key);
        writer.WriteStringValue(Iso.Format(window.From));
        writer.WriteStringValue(Iso.Format(window.To));
        writer.WriteEndArray();
    }

    private static void WriteId(Utf8JsonWriter writer, JsonElement? id)
    {
        writer.WritePropertyName("id");
        if (id is { } given)
        {
            given.WriteTo(writer);
        }
        else
        {
            writer.WriteNullValue();
        }
    }
}

using System.Text.Json;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime.Text;

namespace HerdBot.App.Records;

/// <summary>Facts as JSON, in the words of <see cref="FactWords"/>: for files, output and stored events.</summary>
public static class FactJson
{
    private static readonly LocalDatePattern DayPattern = LocalDatePattern.Iso;
    private static readonly LocalDateTimePattern MinutePattern =
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");

    /// <summary>Writes one fact as an object. The animal is written even where it is null; other absent things are left out.</summary>
    /// <param name="writer">Stands where a value may be written.</param>
    /// <param name="fact">Any fact.</param>
    /// <param name="stored">True in the event log, which keeps what the written form leaves out: "target", "until", "expected".</param>
    public static void Write(Utf8JsonWriter writer, Fact fact, bool stored = false)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(fact);
        writer.WriteStartObject();
        writer.WriteString("kind", FactWords.Word(fact.Kind));
        writer.WriteString("animal", fact.Animal);
        WriteFigures(writer, fact);
        WriteTraits(writer, fact);
        WriteWords(writer, fact);
        if (stored)
        {
            WriteKept(writer, fact);
        }

        writer.WriteEndObject();
    }

    /// <summary>The fact an object holds; null where it is no object or bears no known kind. Unknown keys are passed over.</summary>
    public static Fact? Read(JsonElement json)
    {
        if (json.ValueKind != JsonValueKind.Object || !FactWords.TryKind(json.Text("kind") ?? "", out var kind))
        {
            return null;
        }

        return new Fact(kind)
        {
            Animal = json.Text("animal"),
            Value = json.Number("value"),
            Unit = FactWords.TryUnit(json.Text("unit") ?? "", out var unit) ? unit : null,
            At = ParseTime(json.Text("at")),
            Neg = json.Flag("neg"),
            Unsure = json.Flag("unsure"),
            Sex = FactWords.SexOf(json.Text("sex")),
            N = json.Whole("n"),
            Sire = json.Text("sire"),
            Route = FactWords.RouteOf(json.Text("route")),
            Task = json.Text("task"),
            Field = json.Text("field"),
            Was = json.Text("was"),
            Name = json.Text("name"),
            Traits = ReadAnimal(json),
            Text = json.Text("text"),
            Until = ParseTime(json.Text("until"))?.Date,
            Expected = ParseTime(json.Text("expected"))?.Date,
            Target = json.Whole("target") is { } target ? new FactId(target) : null,
        };
    }

    /// <summary>"2027-04-18T06:25", or the day alone.</summary>
    public static string Format(FactTime at) =>
        at.Time is { } time ? MinutePattern.Format(at.Date + time) : DayPattern.Format(at.Date);

    /// <summary>A day, or a day and a time of day (anything after the minute is dropped); null where it is neither.</summary>
    public static FactTime? ParseTime(string? text)
    {
        if (text is null)
        {
            return null;
        }

        var minute = MinutePattern.Parse(text.Length > 16 ? text[..16] : text);
        if (minute.Success)
        {
            return FactTime.Of(minute.Value);
        }

        var day = DayPattern.Parse(text);
        return day.Success ? new FactTime(day.Value, null) : null;
    }

    private static void WriteKept(Utf8JsonWriter writer, Fact fact)
    {
        Write(writer, "until", fact.Until is { } until ? DayPattern.Format(until) : null);
        Write(writer, "expected", fact.Expected is { } expected ? DayPattern.Format(expected) : null);
        if (fact.Target is { } target)
        {
            writer.WriteNumber("target", target.Number);
        }
    }

    private static void WriteFigures(Utf8JsonWriter writer, Fact fact)
    {
        if (fact.Value is { } value)
        {
            writer.WriteNumber("value", value);
        }

        Write(writer, "unit", fact.Unit is { } unit ? FactWords.Word(unit) : null);
        Write(writer, "at", fact.At is { } at ? Format(at) : null);
        Write(writer, "neg", fact.Neg);
        Write(writer, "unsure", fact.Unsure);
    }

    private static void WriteTraits(Utf8JsonWriter writer, Fact fact)
    {
        Write(writer, "sex", fact.Sex is { } sex ? FactWords.Word(sex) : null);
        if (fact.N is { } n)
        {
            writer.WriteNumber("n", n);
        }

        Write(writer, "sire", fact.Sire);
        Write(writer, "route", fact.Route is { } route ? FactWords.Word(route) : null);
        Write(writer, "task", fact.Task);
    }

    private static void WriteWords(Utf8JsonWriter writer, Fact fact)
    {
        Write(writer, "field", fact.Field);
        Write(writer, "was", fact.Was);
        Write(writer, "name", fact.Name);
        WriteAnimal(writer, fact.Traits);
        Write(writer, "text", fact.Text);
    }

    private static void WriteAnimal(Utf8JsonWriter writer, AnimalTraits? traits)
    {
        Write(writer, "role", traits?.Role is { } role ? FactWords.Snake(role.ToString()) : null);
        Write(writer, "species", traits?.Species is { } species ? FactWords.Snake(species.ToString()) : null);
        Write(writer, "colour", traits?.Colour);
        Write(writer, "tag", traits?.Tag);
        Write(writer, "dam", traits?.Dam);
    }

    private static AnimalTraits? ReadAnimal(JsonElement json)
    {
        var traits = new AnimalTraits(CorpusLineGiven.ParseWord<HerdRole>(json.Text("role")), CorpusLineGiven.ParseWord<Species>(json.Text("species")), json.Text("colour"), json.Text("tag"), json.Text("dam"));
        return traits == new AnimalTraits() ? null : traits;
    }

    private static void Write(Utf8JsonWriter writer, string key, string? word)
    {
        if (word is not null)
        {
            writer.WriteString(key, word);
        }
    }

    private static void Write(Utf8JsonWriter writer, string key, bool flag)
    {
        if (flag)
        {
            writer.WriteBoolean(key, true);
        }
    }
}

using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.Tests.Core.Reading;

/// <summary>A small farm to read messages on.</summary>
internal static class SomeReading
{
    public static readonly LocalDateTime Born = new(2027, 5, 10, 7, 50);

    public static ZonedDateTime At(string local, string zone = "America/Denver") =>
        DateTimeZoneProviders.Tzdb[zone].AtLeniently(LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(local).Value);

    /// <summary>Kestrel has a newborn girl of 7:50; Tansy is awaited.</summary>
    public static ReadingContext Context(string now = "2027-05-10T09:30", string zone = "America/Denver")
    {
        var birth = new Fact(FactKind.Birth) { Animal = "Kestrel", Sex = Sex.Female, At = FactTime.Of(Born) };
        return new ReadingContext(At(now, zone), [
            new HerdEntry("Kestrel", HerdRole.Dam),
            new HerdEntry("Kestrel's baby", HerdRole.Newborn) { Dam = "Kestrel", Sex = Sex.Female, Born = FactTime.Of(Born) },
            new HerdEntry("Tansy", HerdRole.Dam) { State = HerdEntryState.Due },
            new HerdEntry("Two Stones", HerdRole.Dam),
            new HerdEntry("May", HerdRole.Dam),
            new HerdEntry("Barley", HerdRole.Sire) { Sex = Sex.Male },
        ])
        {
            Units = UnitSystem.Us,
            Log = [new LoggedFact(birth, DateTimeZoneProviders.Tzdb[zone].AtLeniently(Born).ToInstant())],
        };
    }

    public static Fact Only(string text, ReadingContext? context = null)
    {
        var facts = Reader.Read(text, context ?? Context()).Facts;
        return facts.Length == 1 ? facts[0] : throw new InvalidOperationException($"'{text}' gave {facts.Length} facts: {string.Join("; ", facts)}");
    }

    public static string? Time(string text, ReadingContext? context = null) =>
        Only(text, context).At is { } at ? at.Time is { } time ? LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Format(at.Date + time) : LocalDatePattern.Iso.Format(at.Date) : null;
}

using HerdBot.Core.Due;
using HerdBot.Core.Herd;
using HerdBot.Core.Wording;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;

namespace HerdBot.Host.Calendar;

/// <summary>The season as a calendar to subscribe to: RFC 5545, an all-day event a dam over her likely window.</summary>
public static class SeasonCalendar
{
    private const double Likely = 0.8;

    /// <summary>Writes it.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="now">When it is written.</param>
    public static string Write(HerdState state, Farm farm, Instant now)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(farm);
        var speaker = new Speaker(farm, now);
        var calendar = new Ical.Net.Calendar { ProductId = "-//HerdBot//Season//EN" };
        calendar.AddProperty("X-WR-CALNAME", speaker.Phrases.Say("calendar.name"));
        foreach (var (dam, due) in state.Due(farm).Awaited(farm.Clock.Day(now)).Select(one => (one.Dam, one.Due)))
        {
            calendar.Events.Add(Event(speaker, farm, dam, due, now));
        }
        return new CalendarSerializer().SerializeToString(calendar) ?? "";
    }

    private static CalendarEvent Event(Speaker speaker, Farm farm, Animal dam, DueForecast due, Instant now)
    {
        var window = due.Window(Likely);
        var reasons = new DueReasons(speaker.Phrases, speaker.Date);
        return new CalendarEvent
        {
            // A window that shifts keeps its event: it is named after the mating.
            Uid = $"{dam.Id.Value.Replace(' ', '-')}-{due.Mating.From:uuuuMMdd}@herdbot",
            DtStamp = new CalDateTime(now.ToDateTimeUtc()),
            Start = Day(window.From),
            End = Day(window.To.PlusDays(1)),
            Summary = speaker.Phrases.Say("calendar.event", ("animal", dam.Name), ("date", speaker.Date(due.Median))),
            Description = string.Join("; ", reasons.Of(due, Gestation.Of(farm.TableOf(dam.Species)!))),
            Transparency = TransparencyType.Transparent,
        };
    }

    private static CalDateTime Day(LocalDate day) => new(day.Year, day.Month, day.Day);
}

using System.Text;
using FluentAssertions;
using HerdBot.Core.Herd;
using HerdBot.Host.Calendar;
using HerdBot.Tests.Core.Due;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Host.Calendar;

/// <summary>Held against RFC 5545 line by line, without the library that wrote it.</summary>
public sealed class SeasonCalendarTests
{
    private static readonly string Text = SeasonCalendar.Write(SomeHerd.State, SomeHerd.Farm, SomeHerd.Now);

    [Fact]
    public void Lines_end_and_fold_as_section_3_1_says()
    {
        Text.Should().EndWith("\r\n");
        Text.Replace("\r\n", "", StringComparison.Ordinal).Should().NotContainAny("\r", "\n");
        Text.Split("\r\n").Should().OnlyContain(line => Encoding.UTF8.GetByteCount(line) <= 75);
    }

    [Fact]
    public void A_calendar_bears_the_version_and_who_made_it()
    {
        var lines = Unfolded(Text);

        lines[0].Should().Be("BEGIN:VCALENDAR");
        lines.Should().Contain("VERSION:2.0").And.Contain(line => line.StartsWith("PRODID:"));
        lines[^1].Should().Be("END:VCALENDAR");
    }

    [Fact]
    public void Every_dam_awaited_has_one_all_day_event_over_her_likely_window()
    {
        var events = Events(Text);
        var awaited = SomeHerd.State.Due(SomeHerd.Farm).Awaited(SomeHerd.Farm.Clock.Day(SomeHerd.Now));

        events.Should().HaveCount(awaited.Count);
        foreach (var (one, entry) in awaited.Zip(events))
        {
            var window = one.Due.Window(0.8);
            entry.Should().Contain($"DTSTART;VALUE=DATE:{window.From:uuuuMMdd}").And.Contain($"DTEND;VALUE=DATE:{window.To.PlusDays(1):uuuuMMdd}", "the end of an all-day event is the day after (3.6.1)");
            entry.Should().Contain(line => line.StartsWith($"SUMMARY:{one.Dam.Name} due"));
        }
    }

    [Fact]
    public void Every_event_has_a_name_for_good_and_the_time_it_was_written()
    {
        var later = Events(SeasonCalendar.Write(SomeHerd.State, SomeHerd.Farm, SomeHerd.Now + Duration.FromDays(1)));
        var uids = Events(Text).Select(lines => lines.Single(line => line.StartsWith("UID:"))).ToList();

        uids.Should().OnlyHaveUniqueItems();
        later.Select(lines => lines.Single(line => line.StartsWith("UID:"))).Should().BeEquivalentTo(uids);
        Events(Text).Should().OnlyContain(lines => lines.Contains("DTSTAMP:20270418T180000Z"));
    }

    [Fact]
    public void An_empty_season_is_a_whole_calendar_all_the_same() =>
        Unfolded(SeasonCalendar.Write(HerdState.Empty, SomeHerd.Farm, SomeHerd.Now)).Should().StartWith("BEGIN:VCALENDAR").And.EndWith("END:VCALENDAR");

    private static List<string> Unfolded(string text) => [.. text.Replace("\r\n ", "", StringComparison.Ordinal).TrimEnd().Split("\r\n")];

    private static List<List<string>> Events(string text)
    {
        var events = new List<List<string>>();
        foreach (var line in Unfolded(text))
        {
            if (line == "BEGIN:VEVENT")
            {
                events.Add([]);
            }
            events.LastOrDefault()?.Add(line);
        }
        return events;
    }
}

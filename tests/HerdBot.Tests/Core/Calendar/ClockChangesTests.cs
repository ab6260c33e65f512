using CsCheck;
using FluentAssertions;
using HerdBot.Core.Calendar;
using HerdBot.Tests.Core.Reading;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Calendar;

/// <summary>
/// Around every change of the clock in three years, in zones that change by an hour, by half an hour, at midnight and
/// never. NodaTime is the witness: its own lenient mapping, and its arithmetic of instants.
/// </summary>
public sealed class ClockChangesTests
{
    private static readonly string[] Zones = [
        "America/Denver", "America/Santiago", "America/Asuncion", "Europe/London", "Australia/Lord_Howe", "Pacific/Auckland", "America/Lima", "America/Argentina/Buenos_Aires"];

    private static readonly Gen<(DateTimeZone Zone, Instant Change)> Changes = Gen.OneOf([.. Zones.SelectMany(Around)]);

    [Fact]
    public void There_are_hours_that_do_not_exist_and_hours_that_come_twice()
    {
        var counts = Zones.SelectMany(Around).SelectMany(pair => Enumerable.Range(-60, 120).Select(minute => pair.Zone.MapLocal(pair.Change.InZone(pair.Zone).LocalDateTime.PlusMinutes(minute)).Count)).ToHashSet();

        counts.Should().BeEquivalentTo([0, 1, 2]);
    }

    [Fact]
    public void A_local_time_has_the_instant_that_NodaTime_gives_it_leniently() =>
        Gen.Select(Changes, Gen.Int[-200, 200]).Each(
            (around, minutes) =>
            {
                var local = around.Change.InZone(around.Zone).LocalDateTime.PlusMinutes(minutes);

                new FarmClock(around.Zone).At(local).Should().Be(around.Zone.AtLeniently(local).ToInstant(), $"{local} in {around.Zone}");
            },
            times: 5_000);

    [Fact]
    public void An_instant_that_is_shown_on_the_wall_is_found_again_unless_its_hour_came_before() =>
        Gen.Select(Changes, Gen.Int[-200, 200]).Each(
            (around, minutes) =>
            {
                var (clock, at) = (new FarmClock(around.Zone), around.Change + Duration.FromMinutes(minutes));
                var shown = around.Zone.MapLocal(clock.Local(at));

                clock.At(clock.Local(at)).Should().Be(shown.First().ToInstant());
            },
            times: 5_000);

    [Fact]
    public void So_many_minutes_ago_are_real_minutes_over_a_change() =>
        Gen.Select(Changes, Gen.Int[0, 200], Gen.Int[2, 180]).Each(
            (around, since, ago) =>
            {
                var now = (around.Change + Duration.FromMinutes(since)).InZone(around.Zone);
                var context = SomeReading.Context() with { Now = now, Log = [] };

                var at = SomeReading.Only($"Tansy's water broke {ago} min ago", context).At!.Value;

                (at.Date + at.Time!.Value).Should().Be((now - Duration.FromMinutes(ago)).LocalDateTime, $"{ago} min before {now}");
            },
            times: 1_000);

    private static IEnumerable<(DateTimeZone Zone, Instant Change)> Around(string name)
    {
        var zone = DateTimeZoneProviders.Tzdb[name];
        var changes = zone.GetZoneIntervals(Instant.FromUtc(2026, 1, 1, 0, 0), Instant.FromUtc(2029, 1, 1, 0, 0)).Where(interval => interval.HasEnd && interval.End < Instant.FromUtc(2029, 1, 1, 0, 0)).Select(interval => interval.End).ToList();
        return (changes.Count > 0 ? changes : [Instant.FromUtc(2027, 4, 1, 3, 0)]).Select(change => (zone, change));
    }
}

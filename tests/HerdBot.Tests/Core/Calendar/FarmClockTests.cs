using FluentAssertions;
using HerdBot.Core.Calendar;
using HerdBot.Tests.Support;
using NodaTime;
using NodaTime.Text;
using Xunit;

namespace HerdBot.Tests.Core.Calendar;

public sealed class FarmClockTests
{
    private static readonly FarmClock Clock = Some.Farm().Clock;
    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");

    [Theory]
    [InlineData("2027-04-18T06:40", "2027-04-18T12:40")]
    [InlineData("2027-03-14T02:30", "2027-03-14T09:30")] // skipped: moved on to 03:30
    [InlineData("2027-11-07T01:30", "2027-11-07T07:30")] // comes twice: the first is taken
    public void A_local_time_has_one_instant(string local, string utc) =>
        Clock.At(Minute.Parse(local).Value).Should().Be(Minute.Parse(utc).Value.InUtc().ToInstant());

    [Fact]
    public void The_farms_day_is_not_the_worlds() => Clock.Day(Instant.FromUtc(2027, 4, 19, 3, 0)).Should().Be(new LocalDate(2027, 4, 18));

    [Theory]
    [InlineData("2027-04-18T05:59", "2027-04-18T06:00")]
    [InlineData("2027-04-18T06:00", "2027-04-18T06:00")]
    [InlineData("2027-04-18T06:01", "2027-04-19T06:00")]
    [InlineData("2027-03-13T06:01", "2027-03-14T06:00")] // over a change of the clock
    public void The_next_such_hour_is_at_or_after(string from, string next) =>
        Clock.Next(Clock.At(Minute.Parse(from).Value), new LocalTime(6, 0)).Should().Be(Clock.At(Minute.Parse(next).Value));

    [Theory]
    [InlineData("22:00", "06:00", "22:00", true)]
    [InlineData("22:00", "06:00", "05:59", true)]
    [InlineData("22:00", "06:00", "06:00", false)]
    [InlineData("22:00", "06:00", "21:59", false)]
    [InlineData("06:00", "22:00", "06:00", true)]
    [InlineData("06:00", "22:00", "22:00", false)]
    [InlineData("06:00", "06:00", "06:00", false)] // none at all
    public void A_span_of_the_day_may_run_over_midnight(string from, string to, string time, bool held)
    {
        var pattern = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

        new DaySpan(pattern.Parse(from).Value, pattern.Parse(to).Value).Holds(pattern.Parse(time).Value).Should().Be(held);
    }
}

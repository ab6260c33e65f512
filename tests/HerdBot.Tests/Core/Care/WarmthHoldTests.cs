using System.Globalization;
using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Care;

/// <summary>The hold on feeding, its end, and how fast a cold newborn warms.</summary>
public sealed class WarmthHoldTests
{
    private static readonly Instant Born = Instant.FromUtc(2027, 4, 18, 12, 0);

    [Theory]
    [InlineData("30:98.0", "30", null)]
    [InlineData("30:98.0 45:99.0", "30", null)] // one good reading is not enough
    [InlineData("30:98.0 45:99.0 54:99.5", "30", null)] // nine minutes apart
    [InlineData("30:98.0 45:99.0 55:99.0", null, "55")] // ten
    [InlineData("30:98.0 45:99.0 54:99.5 56:99.6", null, "56")] // with another good one between
    [InlineData("30:98.0 45:99.0 50:98.9 56:99.6", "30", null)] // not in a row
    [InlineData("30:98.0 45:99.0 50:98.9 56:99.6 66:100.1", null, "66")]
    [InlineData("20:100.5 30:98.0 45:99.5", "30", null)] // what was good before does not count
    [InlineData("30:98.0 45:99.0 60:99.5 90:97.0", "90", "60")] // cold once more: a new hold
    [InlineData("30:98.6 45:98.5", "30", null)]
    public void The_hold_ends_with_two_good_readings_in_a_row_ten_minutes_apart(string readings, string? since, string? ended)
    {
        var warmth = After(readings);

        warmth.HoldSince.Should().Be(Minute(since));
        warmth.HoldEnded.Should().Be(Minute(ended));
    }

    [Fact]
    public void While_it_is_held_even_a_good_reading_is_read_again_in_fifteen_minutes()
    {
        After("30:98.0 45:99.4").Last!.Again.Should().Be(Duration.FromMinutes(15));
        After("30:98.0 45:100.4").Last!.Again.Should().Be(Duration.FromMinutes(15));
        After("30:98.0 45:100.4 60:100.5").Last!.Again.Should().BeNull();
    }

    [Fact]
    public void In_the_hold_there_is_no_soft_band() => After("30:97.0 45:98.6", up: true).Last!.Band.Should().Be("cold");

    [Fact]
    public void A_hold_that_ends_too_hot_goes_on_being_read()
    {
        var last = After("30:98.0 45:101.0 60:103.2").Last!;

        last.Level.Should().Be(Level.Vet);
        last.Again.Should().Be(Duration.FromMinutes(15));
    }

    /// <summary>Least squares worked by hand: sum of (t - mean t)(f - mean f) over sum of (t - mean t)², in °F an hour.</summary>
    [Theory]
    [InlineData("30:94.0", null, null)]
    [InlineData("30:94.0 60:95.5", "3.0", "130")] // 1.5 in half an hour; 3.5 to go: 70 min
    [InlineData("30:94.0 45:94.6 60:95.5", "3.0", "130")]
    [InlineData("30:95.0 45:94.0 60:95.0", "4.0", "120")] // since the lowest
    [InlineData("30:96.0 45:95.5", null, null)] // the lowest is the last
    [InlineData("30:96.0 45:96.0", null, null)] // and stands
    [InlineData("30:97.0 45:99.1", "8.4", null)] // there already
    public void The_rise_is_a_line_through_the_readings_since_the_lowest(string readings, string? perHour, string? normalAt)
    {
        var progress = After(readings).Progress!;

        progress.PerHour.Should().Be(perHour is null ? null : decimal.Parse(perHour, CultureInfo.InvariantCulture));
        progress.NormalAt.Should().Be(Minute(normalAt));
    }

    [Theory]
    [InlineData("30:96.0", "90")] // under 99.0 after 60 min
    [InlineData("30:96.0 60:97.0", "90")] // one whole degree in half an hour will do
    [InlineData("30:96.0 60:96.9", "60")] // less will not
    [InlineData("30:96.0 59:96.1", "90")] // not half an hour yet
    [InlineData("30:96.0 45:97.4 60:98.2 75:98.3", "75")] // 0.9 in the last half hour
    [InlineData("30:96.0 60:97.5 95:98.8", "95")] // the hour is over and it is still under
    [InlineData("30:96.0 60:99.0", null)] // warm
    [InlineData("30:94.9 60:94.9", null)] // under 95 no word on slowness
    [InlineData("30:93.0 60:95.0", "90")]
    public void Warming_that_is_too_slow_is_for_the_vet(string readings, string? slowAt) =>
        After(readings).Progress!.SlowAt.Should().Be(Minute(slowAt));

    [Fact]
    public void A_little_low_is_read_once_more_and_no_oftener()
    {
        After("30:99.5").Last!.Again.Should().Be(Duration.FromMinutes(30));
        After("30:99.5 60:99.6").Last!.Again.Should().BeNull();
        After("30:99.5 60:99.6").Last!.Level.Should().Be(Level.Fine);
    }

    [Theory]
    [InlineData("239:99.5 270:99.6", Level.Fine)]
    [InlineData("240:99.5 270:99.6", Level.Heed)]
    [InlineData("240:99.5 270:100.0 300:99.5", Level.Fine)]
    public void Twice_running_under_a_hundred_after_four_hours_is_worth_an_eye(string readings, Level level) =>
        After(readings, fed: true).Last!.Level.Should().Be(level);

    private static WarmthState After(string readings, bool up = false, bool fed = false)
    {
        var told = readings.Split(' ').Select(reading => reading.Split(':'))
            .Select(reading => (Some.Temperature(double.Parse(reading[1], CultureInfo.InvariantCulture)), Minute(reading[0])!.Value)).ToList();
        return Warmth.At(Some.Llama, told, Born, up ? Born : null, fed ? Born : null, told[^1].Item2);
    }

    private static Instant? Minute(string? minute) => minute is null ? null : Born + Duration.FromMinutes(int.Parse(minute, CultureInfo.InvariantCulture));
}

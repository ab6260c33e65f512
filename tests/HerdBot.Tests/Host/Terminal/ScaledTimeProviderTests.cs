using FluentAssertions;
using HerdBot.Host.Terminal;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace HerdBot.Tests.Host.Terminal;

public sealed class ScaledTimeProviderTests
{
    private static readonly DateTimeOffset Start = new(2027, 5, 9, 10, 0, 0, TimeSpan.Zero);
    private readonly FakeTimeProvider _wall = new();

    [Fact]
    public void It_starts_where_it_is_told_to_and_runs_so_many_times_as_fast()
    {
        var clock = Clock(60);

        clock.GetUtcNow().Should().Be(Start);
        _wall.Advance(TimeSpan.FromSeconds(1.5));
        clock.GetUtcNow().Should().Be(Start.AddSeconds(90));
    }

    [Fact]
    public void A_span_between_two_timestamps_is_as_long_as_on_its_clock()
    {
        var clock = Clock(60);
        var before = clock.GetTimestamp();

        _wall.Advance(TimeSpan.FromSeconds(2));

        clock.GetElapsedTime(before).Should().Be(TimeSpan.FromMinutes(2));
    }

    [Fact]
    public void A_timer_rings_when_its_time_has_come_and_not_before()
    {
        var clock = Clock(60);
        var rings = 0;
        using var timer = clock.CreateTimer(_ => rings++, null, TimeSpan.FromMinutes(10), Timeout.InfiniteTimeSpan);

        _wall.Advance(TimeSpan.FromSeconds(9.999));
        rings.Should().Be(0);
        _wall.Advance(TimeSpan.FromMilliseconds(1));
        rings.Should().Be(1);
        _wall.Advance(TimeSpan.FromHours(1));
        rings.Should().Be(1, "it was to ring once");
    }

    [Fact]
    public void A_timer_that_repeats_keeps_its_pace()
    {
        var clock = Clock(30);
        var rings = 0;
        using var timer = clock.CreateTimer(_ => rings++, null, TimeSpan.Zero, TimeSpan.FromSeconds(30));

        _wall.Advance(TimeSpan.FromSeconds(10));

        rings.Should().Be(11);
    }

    [Theory]
    [InlineData(7)] // 1 s is 142.86 ms of the wall's time
    [InlineData(3600)] // and here less than a millisecond, which a timer of the system cuts to nothing
    public void No_timer_rings_early_however_fast_the_clock(int speed)
    {
        var clock = Clock(speed);
        DateTimeOffset? rung = null;
        using var timer = clock.CreateTimer(_ => rung ??= clock.GetUtcNow(), null, TimeSpan.FromSeconds(1), Timeout.InfiniteTimeSpan);

        _wall.Advance(TimeSpan.FromSeconds(1));

        rung.Should().BeOnOrAfter(Start.AddSeconds(1));
    }

    [Fact]
    public void A_short_period_does_not_become_none()
    {
        var clock = Clock(3600);
        var rings = 0;
        using var timer = clock.CreateTimer(_ => rings++, null, TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(1));

        _wall.Advance(TimeSpan.FromMilliseconds(5));

        rings.Should().Be(5);
    }

    [Fact]
    public void A_timer_that_is_set_anew_goes_by_its_clock_too()
    {
        var clock = Clock(60);
        var rings = 0;
        using var timer = clock.CreateTimer(_ => rings++, null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);

        timer.Change(TimeSpan.FromMinutes(1), Timeout.InfiniteTimeSpan);
        _wall.Advance(TimeSpan.FromMilliseconds(999));
        rings.Should().Be(0);
        _wall.Advance(TimeSpan.FromMilliseconds(1));

        rings.Should().Be(1);
    }

    [Fact]
    public void A_wait_on_it_ends_in_its_time()
    {
        var clock = Clock(60);
        var wait = Task.Delay(TimeSpan.FromMinutes(1), clock);

        _wall.Advance(TimeSpan.FromMilliseconds(999));
        wait.IsCompleted.Should().BeFalse();
        _wall.Advance(TimeSpan.FromMilliseconds(1));

        wait.IsCompletedSuccessfully.Should().BeTrue();
    }

    [Fact]
    public void It_never_runs_slower_than_the_wall()
    {
        FluentActions.Invoking(() => Clock(0)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private ScaledTimeProvider Clock(int speed) => new(_wall, speed, Start);
}

using FluentAssertions;
using HerdBot.Core.Due;
using HerdBot.Core.Herd;
using NodaTime;
using NodaTime.Text;
using Xunit;

namespace HerdBot.Tests.Core.Due;

/// <summary>Days from a mating to a day, against published cases over leap days; NodaTime's periods and the platform's day numbers as second and third opinion.</summary>
public sealed class DayCountTests
{
    /// <summary>
    /// Three dams mated on 5 May 1999 (C. Jinks, Alpaca World); day 350 on Sunday 3 June 2012 (an owner's blog); then plain
    /// day addition over leap days in both directions.
    /// </summary>
    [Theory]
    [InlineData("1999-05-05", "2000-03-30", 330)]
    [InlineData("1999-05-05", "2000-04-03", 334)]
    [InlineData("1999-05-05", "2000-04-20", 351)]
    [InlineData("2011-06-19", "2012-06-03", 350)]
    [InlineData("2023-03-01", "2024-01-15", 320)]
    [InlineData("2023-03-01", "2024-01-30", 335)]
    [InlineData("2023-03-01", "2024-02-09", 345)]
    [InlineData("2023-03-01", "2024-02-10", 346)]
    [InlineData("2023-03-01", "2024-02-14", 350)]
    [InlineData("2023-03-01", "2024-02-29", 365)]
    [InlineData("2024-03-01", "2025-01-15", 320)]
    [InlineData("2024-03-01", "2025-01-30", 335)]
    [InlineData("2024-03-01", "2025-02-09", 345)]
    [InlineData("2024-03-01", "2025-02-10", 346)]
    [InlineData("2024-03-01", "2025-02-14", 350)]
    [InlineData("2024-03-01", "2025-03-01", 365)]
    [InlineData("2024-06-01", "2025-04-17", 320)]
    [InlineData("2024-06-01", "2025-05-02", 335)]
    [InlineData("2024-06-01", "2025-05-12", 345)]
    [InlineData("2024-06-01", "2025-05-13", 346)]
    [InlineData("2024-06-01", "2025-05-17", 350)]
    [InlineData("2024-06-01", "2025-06-01", 365)]
    [InlineData("2025-09-15", "2026-08-01", 320)]
    [InlineData("2025-09-15", "2026-08-16", 335)]
    [InlineData("2025-09-15", "2026-08-26", 345)]
    [InlineData("2025-09-15", "2026-08-27", 346)]
    [InlineData("2025-09-15", "2026-08-31", 350)]
    [InlineData("2025-09-15", "2026-09-15", 365)]
    public void Days_are_counted_from_the_mating(string mated, string on, int days)
    {
        var (from, to) = (LocalDatePattern.Iso.Parse(mated).Value, LocalDatePattern.Iso.Parse(on).Value);

        SomeDue.Forecast(new DueCase(Species.Alpaca, [Mating.On(from)], to)).Days.Should().Be(days);
        Period.Between(from, to, PeriodUnits.Days).Days.Should().Be(days);
        (to.ToDateOnly().DayNumber - from.ToDateOnly().DayNumber).Should().Be(days);
    }

    [Fact]
    public void Day_350_of_the_blog_was_a_Sunday_and_so_was_the_mating()
    {
        new LocalDate(2012, 6, 3).DayOfWeek.Should().Be(IsoDayOfWeek.Sunday);
        new LocalDate(2011, 6, 19).DayOfWeek.Should().Be(IsoDayOfWeek.Sunday);
    }

    [Theory]
    [InlineData("2023-03-01", "2024-02-10")]
    [InlineData("2024-03-01", "2025-02-10")]
    [InlineData("2024-06-01", "2025-05-13")]
    [InlineData("2025-09-15", "2026-08-27")]
    [InlineData("2024-02-29", "2025-02-09")]
    public void The_median_of_an_alpaca_is_day_346_over_any_leap_day(string mated, string median) =>
        SomeDue.Mated(LocalDatePattern.Iso.Parse(mated).Value).Median.Should().Be(LocalDatePattern.Iso.Parse(median).Value);
}

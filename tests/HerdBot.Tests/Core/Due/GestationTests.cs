using FluentAssertions;
using HerdBot.Core.Due;
using HerdBot.Core.Herd;
using HerdBot.Tests.Support;
using MathNet.Numerics.Distributions;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Due;

/// <summary>
/// Against the University of Liege survey of 7,049 alpaca pregnancies: median 346, quartiles 339 and 353, coefficient
/// of variation 3.37 %, range 270 to 428 days.
/// </summary>
public sealed class GestationTests
{
    private static readonly LocalDate Day = new(2026, 5, 3);

    [Fact]
    public void With_nothing_known_the_published_spread_comes_out_again()
    {
        var due = SomeDue.Mated(Day);

        Day.DaysTo(due.Median).Should().Be(346);
        Day.DaysTo(due.Window(0.5).From).Should().BeInRange(338, 340);
        Day.DaysTo(due.Window(0.5).To).Should().BeInRange(352, 354);
        Day.DaysTo(due.Window(0.8).From).Should().BeInRange(330, 332);
        Day.DaysTo(due.Window(0.8).To).Should().BeInRange(360, 362);
        due.ChanceBy(Day.PlusDays(329)).Should().BeInRange(0.07, 0.09, "the hospital's premature crias came before day 330");
    }

    /// <summary>The ratio of the two published spreads is what names the tails: 11.7 by the coefficient of variation, 10.4 by the quartiles.</summary>
    [Fact]
    public void The_tails_reconcile_the_two_published_spreads()
    {
        var degrees = (double)Some.Alpaca.Number(DueKeys.Tails);
        var plain = Math.Sqrt(degrees / (degrees - 2));
        var byQuartiles = 2 * StudentT.InvCDF(0, 1, degrees, 0.75) / 1.349;

        (plain / byQuartiles).Should().BeApproximately(0.0337 * 346 / (14 / 1.349), 0.01);
        (0.0337 * 346 / plain).Should().BeApproximately(14 / 1.349 / byQuartiles, 0.1, "both name one scale");
    }

    [Fact]
    public void The_parts_of_the_spread_make_the_whole()
    {
        var parts = SomeDue.Alpaca.Variances;
        var scale = (double)Some.Alpaca.Number(DueKeys.Scale);

        (parts.Herd + parts.Dam + parts.Residual + SomeDue.Alpaca.SeasonVariance).Should().BeApproximately(scale * scale * 7 / 5, 1e-9);
        var spread = SomeDue.Alpaca.SpreadOf(Day, null, new Lean(0, parts.Herd + parts.Dam), parts.Residual);
        spread.Scale.Should().BeApproximately(scale, 1e-9);
        spread.UpTo(345).Should().BeApproximately(StudentT.CDF(346, scale, 7, 345.5), 1e-5);
    }

    [Fact]
    public void What_is_known_of_the_season_is_taken_off_the_spread_and_not_put_on_top()
    {
        var known = SomeDue.Mated(new LocalDate(2026, 7, 21), Hemisphere.North).Window(0.95);
        var unknown = SomeDue.Mated(new LocalDate(2026, 7, 21)).Window(0.95);

        known.From.DaysTo(known.To).Should().BeLessThan(unknown.From.DaysTo(unknown.To));
    }

    [Fact]
    public void The_season_averaged_over_a_year_of_matings_gives_the_published_window()
    {
        var parts = SomeDue.Alpaca.Variances;
        var days = Enumerable.Range(0, 365).Select(n => new LocalDate(2026, 1, 1).PlusDays(n)).ToList();
        double UpTo(int length) => days.Average(day => SomeDue.Alpaca.SpreadOf(day, Hemisphere.North, new Lean(0, parts.Herd + parts.Dam), parts.Residual).UpTo(length));

        UpTo(329).Should().BeInRange(0.07, 0.09);
        Enumerable.Range(300, 90).First(length => UpTo(length) >= 0.1).Should().BeInRange(330, 332);
        Enumerable.Range(300, 90).First(length => UpTo(length) >= 0.9).Should().BeInRange(360, 362);
        Enumerable.Range(300, 90).First(length => UpTo(length) >= 0.25).Should().BeInRange(338, 340);
        Enumerable.Range(300, 90).First(length => UpTo(length) >= 0.75).Should().BeInRange(352, 354);
    }

    /// <summary>Autumn matings are about 12 days shorter than spring matings (Veterian Key, theriogenology ch. 122).</summary>
    [Theory]
    [InlineData(Hemisphere.North)]
    [InlineData(Hemisphere.South)]
    public void A_mating_in_spring_lasts_twelve_days_longer_than_one_in_autumn(Hemisphere hemisphere)
    {
        var (april, october) = (new LocalDate(2026, 4, 21), new LocalDate(2026, 10, 21));
        var (spring, autumn) = hemisphere == Hemisphere.North ? (april, october) : (october, april);

        var longer = spring.DaysTo(SomeDue.Mated(spring, hemisphere).Median) - autumn.DaysTo(SomeDue.Mated(autumn, hemisphere).Median);

        longer.Should().BeInRange(11, 13);
    }

    [Fact]
    public void North_and_south_mirror_each_other()
    {
        for (var n = 0; n < 365; n += 7)
        {
            var day = new LocalDate(2026, 1, 1).PlusDays(n);
            SomeDue.Alpaca.ShiftOf(day, Hemisphere.North).Should().BeApproximately(-SomeDue.Alpaca.ShiftOf(day, Hemisphere.South), 0.05);
        }
    }

    [Theory]
    [InlineData(Hemisphere.North)]
    [InlineData(Hemisphere.South)]
    public void A_mating_of_the_21st_of_July_is_not_shifted(Hemisphere hemisphere)
    {
        SomeDue.Alpaca.ShiftOf(new LocalDate(2026, 7, 21), hemisphere).Should().BeApproximately(0, 0.1);
        new LocalDate(2026, 7, 21).DaysTo(SomeDue.Mated(new LocalDate(2026, 7, 21), hemisphere).Median).Should().Be(346);
    }

    /// <summary>From memory (believed León et al. 1990): llamas 348 days; the spread is assumed to be the alpaca's.</summary>
    [Fact]
    public void A_llama_carries_two_days_longer() =>
        SomeDue.Mated(Day, species: Species.Llama).Median.Should().Be(SomeDue.Mated(Day).Median.PlusDays(2));

    /// <summary>One dam, four crias, 355, 353, 350 and 354 days (an owner's record of 2012): her mean 353 is believed in part.</summary>
    [Fact]
    public void A_dam_that_carries_long_is_believed_in_part()
    {
        var past = new[] { 355, 353, 350, 354 }.Select(days => SomeDue.Alpaca.LengthOf(days, null, null));
        var due = SomeDue.Forecast(new DueCase(Species.Alpaca, [Mating.On(Day)], Day.PlusDays(10)) { Past = [.. past] });

        Day.DaysTo(due.Median).Should().BeInRange(348, 352);
    }
}

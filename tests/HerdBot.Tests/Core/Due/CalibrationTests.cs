using FluentAssertions;
using Xunit;

namespace HerdBot.Tests.Core.Due;

/// <summary>What the windows promise is what happens, where dams carry as the model assumes. The benchmarks print the same for 20,000 births and other seeds.</summary>
public sealed class CalibrationTests
{
    private const int Pregnancies = 8_000;
    private static readonly Lazy<Calibration> AsAssumed = new(() => new Calibration(Pregnancies, 20270418).Finish());

    [Fact]
    public void Births_fall_evenly_into_the_tenths_of_their_forecasts() =>
        AsAssumed.Value.Tenths.Should().OnlyContain(share => Math.Abs(share - 0.1) <= 0.01);

    [Fact]
    public void Births_fall_evenly_too_once_the_median_has_passed_without_one() =>
        AsAssumed.Value.TenthsFromTheMedian.Should().OnlyContain(share => Math.Abs(share - 0.1) <= 0.015, "half as many births are left to count");

    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(1, 0.8)]
    [InlineData(2, 0.95)]
    public void A_window_of_whole_days_holds_what_it_promises_and_at_most_five_points_more(int window, double promised) =>
        AsAssumed.Value.Covered[window].Should().BeInRange(promised, promised + 0.05);

    [Fact]
    public void For_dams_with_three_births_or_more_the_forecast_beats_the_mating_and_the_species_mean()
    {
        AsAssumed.Value.Score.Should().BeLessThan(AsAssumed.Value.ScoreOfTheMean);
        AsAssumed.Value.Score.Should().BeLessThan(AsAssumed.Value.ScoreOfTheSpecies);
    }

    [Fact]
    public void Where_the_truth_spreads_a_third_wider_the_windows_hold_less_and_still_beat_the_mean()
    {
        var wider = new Calibration(2000, 20270418, 1.3).Finish();

        wider.Covered[1].Should().BeInRange(0.6, 0.8);
        wider.Score.Should().BeLessThan(wider.ScoreOfTheMean);
    }
}

using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Care;

/// <summary>
/// Feed volumes against published examples, weight bands, and the trend worked out by hand.
/// Sources: J. Vaughan, supplementary feeding of the cria (10 kg: 1.0 to 1.5 l a day, 250 to 375 ml in four feeds); Alpaca
/// Association New Zealand (6 kg, 10 %: 600 ml as six of 100); Alpacas of Montana (15 lb, 10 %: 24 oz of weight);
/// WikiVet, camelid neonate (10 % in 12 h, half in 6 h); Merck Veterinary Manual, herd health (daily gain and birth weight).
/// </summary>
public sealed class FeedAndGainTests
{
    private static readonly LocalDate Born = new(2027, 4, 18);

    [Theory]
    [InlineData(10, 0, 1000, 6)] // 10 %: the low end of Vaughan's 1.0 to 1.5 l
    [InlineData(10, 2, 1000, 6)]
    [InlineData(10, 3, 1100, 6)]
    [InlineData(10, 6, 1200, 6)]
    [InlineData(10, 7, 1200, 5)]
    [InlineData(10, 13, 1400, 5)]
    [InlineData(10, 14, 1400, 4)]
    [InlineData(10, 15, 1500, 4)] // the high end
    [InlineData(10, 60, 1500, 4)]
    [InlineData(6, 0, 600, 6)] // Alpaca Association New Zealand
    public void Milk_a_day_follows_the_published_examples(double kilograms, int days, double millilitres, int feeds)
    {
        var plan = FeedPlan.Of(Some.Llama, (decimal)kilograms * 1000, days);

        plan.ADay.Should().Be((decimal)millilitres);
        plan.Feeds.Should().Be(feeds);
        plan.OneFeed.Should().BeLessThanOrEqualTo(FeedPlan.Most(Some.Llama, (decimal)kilograms * 1000));
    }

    [Fact]
    public void Six_kilograms_are_six_feeds_of_a_hundred() => FeedPlan.Of(Some.Alpaca, 6000, 0).OneFeed.Should().Be(100);

    [Fact]
    public void Ten_kilograms_at_fifteen_percent_are_four_feeds_of_375_and_that_is_the_most() =>
        (FeedPlan.Of(Some.Llama, 10_000, 15).OneFeed, FeedPlan.Most(Some.Llama, 10_000)).Should().Be((375m, 375m));

    [Fact]
    public void Fifteen_pounds_at_ten_percent_are_24_ounces_of_weight_and_23_fluid_ounces()
    {
        var grams = 15 * Measures.GramsInPound;
        var aDay = FeedPlan.Of(Some.Alpaca, grams, 0).ADay;

        decimal.Round(aDay / (Measures.GramsInPound / 16), 2).Should().Be(24m);
        decimal.Round(aDay / Measures.MillilitresInFluidOunce, 1).Should().Be(23.0m, "one ml of milk is taken as one gram");
    }

    [Fact]
    public void The_bands_are_those_of_the_manual()
    {
        (Some.Llama.Number(CareKeys.WeightGainLow), Some.Llama.Number(CareKeys.WeightGainTop)).Should().Be((250m, 500m));
        (Some.Alpaca.Number(CareKeys.WeightGainLow), Some.Alpaca.Number(CareKeys.WeightGainTop)).Should().Be((100m, 250m));
        (Some.Llama.Number(CareKeys.ColostrumAssumedWeight), Some.Alpaca.Number(CareKeys.ColostrumAssumedWeight)).Should().Be((9m, 7m));
        (Some.Llama.Number(CareKeys.WeightSmall), Some.Alpaca.Number(CareKeys.WeightSmall)).Should().Be((7m, 6m));
        Some.Llama.Number(CareKeys.IggLow).Should().Be(1000m, "Weaver et al., JAVMA 216:559, 2000");
    }

    // Worked by hand. 0, 1, 2, 3 with 10, 12, 13, 20: slopes 2, 1.5, 10/3, 1, 4, 7; in order 1, 1.5, 2, 10/3, 4, 7; the middle two make 8/3.
    [Fact]
    public void The_trend_of_four_points_is_the_mean_of_the_two_middle_slopes() =>
        decimal.Round(TheilSen.Slope([(0, 10), (1, 12), (2, 13), (3, 20)])!.Value, 4).Should().Be(2.6667m);

    // Worked by hand: 300 a day but for one slip of 2,000 on the third day; slopes 300, 1150, 300, 300, 2000, 300, 300, -1400, -550, 300: the middle is 300.
    [Fact]
    public void One_wrong_weighing_does_not_bend_the_trend() =>
        TheilSen.Slope([(0, 10_000), (1, 10_300), (2, 12_300), (3, 10_900), (4, 11_200)]).Should().Be(300);

    [Fact]
    public void One_point_or_one_day_has_no_trend()
    {
        TheilSen.Slope([(0, 10)]).Should().BeNull();
        TheilSen.Slope([(1, 10), (1, 12)]).Should().BeNull();
    }

    [Theory]
    [InlineData("10000 9760", Level.Fine)] // 2.4 % of it, and under 250 g
    [InlineData("10000 9749", Level.Act)] // over 250 g
    [InlineData("8000 7760", Level.Fine)] // 3 %
    [InlineData("8000 7759", Level.Act)]
    [InlineData("10000 10100 10100", Level.Act)]
    [InlineData("10000 10100 10101", Level.Fine)] // two days' span says nothing of a slow gain
    [InlineData("10000 9900 9800", Level.Vet)] // loss on two days in a row, the first day's counts
    [InlineData("10000 10124 10248 10372", Level.Act)]
    [InlineData("10000 10125 10250 10375", Level.Fine)]
    public void A_llamas_weights_morning_by_morning_stand_so(string grams, Level level)
    {
        var weights = grams.Split(' ').Select((weight, day) => (Born.PlusDays(day), Instant.FromUtc(2027, 4, 18, 13, 0) + Duration.FromDays(day), decimal.Parse(weight, null)));

        Growth.Of(Some.Llama, Born, [.. weights]).Level.Should().Be(level);
    }

    [Theory]
    [InlineData("vet says temp twice a day till Friday", CareTaskName.Temperature, 2, "2027-04-23")]
    [InlineData("vet wants her weighed, weight daily for a week", CareTaskName.Weight, 1, "2027-04-24")]
    [InlineData("the vet said bottle 3 times a day for 4 days", CareTaskName.Feed, 3, "2027-04-21")]
    [InlineData("vet says CDT on May 20", CareTaskName.Vaccination, 1, "2027-05-20")]
    [InlineData("el veterinario dice temperatura dos veces al día hasta el viernes", CareTaskName.Temperature, 2, "2027-04-23")]
    public void A_vets_order_is_what_how_often_and_until_when(string text, CareTaskName task, int aDay, string until)
    {
        var order = VetOrderReader.Read(text, Born, monthFirst: true)!;

        (order.Task, order.ADay, order.Until.ToString("uuuu-MM-dd", null)).Should().Be((task, aDay, until));
    }

    [Fact]
    public void Words_of_a_vet_without_a_time_set_no_task() => VetOrderReader.Read("vet says she looks fine", Born, true).Should().BeNull();
}

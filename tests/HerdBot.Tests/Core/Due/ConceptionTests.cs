using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Due;
using HerdBot.Core.Herd;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Due;

/// <summary>Bayes' rule by hand. The likelihoods are the care table's: assumed where no source is named there.</summary>
public sealed class ConceptionTests
{
    private static readonly LocalDate May1 = new(2026, 5, 1);
    private static readonly Mating Pen = new(May1, May1.PlusDays(47));

    /// <summary>
    /// 48 days in the pen, all alike, and on day 20 she will not have him. Had she conceived 14 days before or more, she
    /// would say so 95 times in 100; on that very day 10 times, as an open one; evenly between. So by Bayes' rule the days
    /// weigh: 1 to 6: 0.95 each, 5.7 in all; 7 to 20: 0.1 + 0.85 age/14 for ages 13 to 0, 14 x 0.1 + 0.85 x 91/14 = 6.925;
    /// 21 to 48: 0.1 each, 2.8. Their sum is 15.425.
    /// </summary>
    [Fact]
    public void A_rejection_on_day_20_of_48_narrows_the_days_as_Bayes_rule_says()
    {
        var conception = After(new PregnancyCheck(May1.PlusDays(19), CheckResult.SpitOff));
        var carried = conception.Days.Sum(day => day.Chance);
        double Share(int first, int last) => conception.Days.Where(day => day.Day >= May1.PlusDays(first - 1) && day.Day <= May1.PlusDays(last - 1)).Sum(day => day.Chance) / carried;

        Share(1, 6).Should().BeApproximately(5.7 / 15.425, 1e-9);
        Share(7, 20).Should().BeApproximately(6.925 / 15.425, 1e-9);
        Share(21, 48).Should().BeApproximately(2.8 / 15.425, 1e-9);
    }

    /// <summary>
    /// The pen takes in 1 - 0.15 x 0.97^47 = 0.96416 of cases, a 48th of it each day: 0.020087. What she did on day 20 has
    /// the chance 0.020087 x 12.625 + (1 - 20 x 0.020087) x 0.1 = 0.31342; never taking has 0.03584 x 0.1 of it: 0.01143.
    /// </summary>
    [Fact]
    public void The_chance_that_she_never_took_follows_from_the_same_rule()
    {
        After(new PregnancyCheck(May1.PlusDays(19), CheckResult.SpitOff)).Open.Should().BeApproximately(0.01143, 0.00001);
    }

    [Fact]
    public void The_window_narrows_with_it()
    {
        var (with, without) = (Forecast(new PregnancyCheck(May1.PlusDays(19), CheckResult.SpitOff)).Window(0.8), Forecast().Window(0.8));

        with.From.DaysTo(with.To).Should().BeLessThan(without.From.DaysTo(without.To));
        with.To.Should().BeLessThan(without.To);
    }

    [Fact]
    public void Had_she_taken_him_that_day_the_later_days_would_be_likelier()
    {
        Forecast(new PregnancyCheck(May1.PlusDays(19), CheckResult.Receptive)).Median.Should().BeGreaterThan(Forecast().Median);
    }

    [Fact]
    public void A_second_mating_two_weeks_on_is_the_likelier_one()
    {
        var due = SomeDue.Forecast(new DueCase(Species.Alpaca, [Mating.On(May1), Mating.On(May1.PlusDays(14))], May1.PlusDays(40)));

        // By hand: 0.85 x 0.05 against 0.15 x 0.9 x 0.85, so 0.0425 to 0.115.
        due.Mating.From.Should().Be(May1.PlusDays(14));
    }

    /// <summary>A llama trial had 13 of 15 and 16 of 18 conceive (Bravo, Fowler, Lasley 1994); of those found pregnant 7 to 12 % are lost (Tibary).</summary>
    [Fact]
    public void After_a_positive_check_seven_to_twelve_in_a_hundred_carry_nothing_at_term()
    {
        var due = Checked(CheckResult.Pregnant, 45, 300);

        due.Open.Should().BeInRange(0.06, 0.12);
    }

    [Fact]
    public void The_chance_that_she_carries_nothing_grows_with_every_day_past_the_window_and_is_about_a_half_after_a_year()
    {
        var open = new[] { 340, 350, 355, 360, 365, 370, 380 }.Select(day => Checked(CheckResult.Pregnant, 45, day).Open).ToList();

        open.Should().BeInAscendingOrder();
        open[4].Should().BeInRange(0.4, 0.65);
        // A year by the season: matings of late winter last longer, so half is reached.
        SomeDue.Forecast(new DueCase(Species.Llama, [Mating.On(new LocalDate(2026, 3, 1))], new LocalDate(2027, 3, 1))
        {
            Checks = [new PregnancyCheck(new LocalDate(2026, 4, 15), CheckResult.Pregnant)],
            Hemisphere = Hemisphere.North,
        }).Open.Should().BeInRange(0.4, 0.55);
    }

    [Fact]
    public void An_open_check_says_so_only_once_it_could_have_seen_a_pregnancy()
    {
        Checked(CheckResult.Open, 10, 60).Open.Should().BeLessThan(0.2, "ten days on there is nothing to see");
        Checked(CheckResult.Open, 45, 60).Open.Should().BeGreaterThan(0.9);
    }

    [Fact]
    public void A_mating_after_an_open_check_counts_from_its_own_day()
    {
        var due = SomeDue.Forecast(new DueCase(Species.Alpaca, [Mating.On(May1), Mating.On(May1.PlusDays(90))], May1.PlusDays(150))
        {
            Checks = [new PregnancyCheck(May1.PlusDays(40), CheckResult.Pregnant), new PregnancyCheck(May1.PlusDays(85), CheckResult.Open)],
        });

        due.ConceivedOn.Should().Be(May1.PlusDays(90));
        due.Open.Should().BeLessThan(0.25);
    }

    [Fact]
    public void A_vets_date_picks_the_days_of_the_pen_that_fit_it()
    {
        var check = new PregnancyCheck(May1.PlusDays(80), CheckResult.Pregnant) { Expected = May1.PlusDays(5 + 346) };

        May1.DaysTo(Forecast(check).Median).Should().BeInRange(349, 357);
    }

    [Fact]
    public void A_day_that_is_still_to_come_counts_for_nothing()
    {
        var later = new PregnancyCheck(May1.PlusDays(300), CheckResult.Open);

        Forecast(later).Open.Should().Be(Forecast().Open);
    }

    [Theory]
    [InlineData(429)]
    [InlineData(2000)]
    public void Past_the_longest_pregnancy_on_record_nothing_can_be_carried(int days) =>
        DueForecast.Of(Some.Alpaca, new DueCase(Species.Alpaca, [Mating.On(May1)], May1.PlusDays(days))).Should().BeNull();

    [Fact]
    public void Chances_stay_chances_whatever_is_thrown_together()
    {
        for (var n = 0; n < 60; n++)
        {
            var checks = Enumerable.Range(0, n % 7).Select(k => new PregnancyCheck(May1.PlusDays(k * n % 120), (CheckResult)((k + n) % 4))).ToArray();
            var due = SomeDue.Forecast(new DueCase(Species.Llama, [Pen, Mating.On(May1.PlusDays(n)), new Mating(May1.PlusDays(20), May1.PlusDays(20 + n))], May1.PlusDays(60 + n * 6)) { Checks = [.. checks] });

            due.Open.Should().BeInRange(0, 1);
            due.Next7.Should().BeInRange(0, 1);
            due.Overdue.Should().BeInRange(0, 1);
            due.Window(0.5).From.Should().BeGreaterThanOrEqualTo(due.Window(0.8).From).And.BeGreaterThanOrEqualTo(due.Window(0.95).From);
            due.Median.Should().BeGreaterThanOrEqualTo(due.Case.Today);
        }
    }

    private static DueForecast Checked(CheckResult result, int age, int today) => SomeDue.Forecast(
        new DueCase(Species.Alpaca, [Mating.On(May1)], May1.PlusDays(today)) { Checks = [new PregnancyCheck(May1.PlusDays(age), result)] });

    private static DueForecast Forecast(params PregnancyCheck[] checks) =>
        SomeDue.Forecast(new DueCase(Species.Alpaca, [Pen], May1.PlusDays(100)) { Checks = [.. checks] });

    /// <summary>The losses are left out: by hand they would be one more factor on every line.</summary>
    private static readonly CareTable Lossless = Some.Alpaca.With(new Dictionary<string, decimal> { ["due.lost"] = 0 }, "for the sum by hand").Table!;

    private static Conception After(PregnancyCheck check) =>
        Conception.Of(Lossless, new DueCase(Species.Alpaca, [Pen], May1.PlusDays(60)) { Checks = [check] });
}

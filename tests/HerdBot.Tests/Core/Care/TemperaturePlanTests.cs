using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Care;

/// <summary>When the temperature is read after a first good one: 4, 12 and 24 h and each morning.</summary>
public sealed class TemperaturePlanTests
{
    [Fact]
    public void After_a_good_one_it_is_read_at_4_12_and_24_hours_and_each_morning_to_day_three()
    {
        var yard = Born();
        yard.Say("06:50", Some.Temperature(100.6));

        Planned(yard).Should().Equal("18 10:40", "18 18:40", "19 06:40", "20 06:00", "21 06:00");
    }

    [Fact]
    public void One_at_risk_is_read_each_morning_to_day_seven()
    {
        var yard = Born();
        yard.Say("06:50", Some.Temperature(100.6), Some.Fact(FactKind.Assistance, "Sage"));

        Planned(yard)[^1].Should().Be("25 06:00");
    }

    [Fact]
    public void A_later_reading_is_asked_and_worth_an_eye_after_half_an_hour_and_never_for_the_vet()
    {
        var yard = Born();
        yard.Say("06:50", Some.Temperature(100.6));

        yard.Stands(CareTaskName.Temperature, "10:39:59").Should().Be("ahead fine");
        yard.Stands(CareTaskName.Temperature, "10:40").Should().Be("asked fine");
        yard.Stands(CareTaskName.Temperature, "11:09:59").Should().Be("asked fine");
        yard.Stands(CareTaskName.Temperature, "11:10").Should().Be("late heed");
        yard.Stands(CareTaskName.Temperature, "18:39:59").Should().Be("late heed");
        yard.Stands(CareTaskName.Temperature, "18:40").Should().Be("asked fine");
    }

    [Theory]
    [InlineData("09:39", "asked fine")]
    [InlineData("09:40", "done fine")]
    public void A_reading_within_the_hour_before_counts(string read, string at)
    {
        var yard = Born();
        yard.Say("06:50", Some.Temperature(100.6));
        yard.Say(read, Some.Temperature(100.6));

        yard.StandsAt(CareTaskName.Temperature, yard.At("10:40"), which: "second").Should().Be(at);
    }

    [Fact]
    public void A_little_low_is_asked_once_more_and_the_readings_at_their_ages_go_on_where_nobody_answers()
    {
        var yard = Born();
        yard.Say("06:50", Some.Temperature(99.4));

        Planned(yard).Should().Equal("18 07:20", "18 10:40", "18 18:40", "19 06:40", "20 06:00", "21 06:00");
        yard.Stands(CareTaskName.Temperature, "07:20").Should().Be("asked fine");
        yard.Stands(CareTaskName.Temperature, "07:50").Should().Be("late heed");
        yard.Stands(CareTaskName.Temperature, "10:40").Should().Be("asked fine");
        yard.StandsAt(CareTaskName.Temperature, yard.At("10:40"), which: "second").Should().Be("asked fine");
    }

    [Fact]
    public void The_first_reading_in_quiet_hours_is_asked_in_the_reply_to_the_birth_and_called_for_when_late()
    {
        var yard = new Farmyard();
        yard.Say("23:00", Some.Birth("22:30"));
        yard.RunTo("23:16");

        yard.Posts[0].Tasks.Should().Contain(task => task.Key.Name == CareTaskName.Temperature);
        yard.Told(CareTaskName.Temperature).Should().Equal("18 23:15 late act");
    }

    [Fact]
    public void A_slightly_hot_one_is_read_again_in_half_an_hour()
    {
        var yard = Born();
        var said = yard.Say("06:50", Some.Temperature(102.6));

        said.Should().ContainSingle().Which.Text.Should().Contain("A little high. Shade; read again 7:20.");
        yard.Stands(CareTaskName.Temperature, "07:20").Should().Be("asked fine");
        yard.Stands(CareTaskName.Temperature, "07:30").Should().Be("late act");
        yard.Stands(CareTaskName.Temperature, "07:50").Should().Be("late vet");
    }

    [Fact]
    public void The_answer_names_the_two_things_that_come_next()
    {
        var yard = Born();

        var said = yard.Say("06:50", Some.Temperature(99.4));

        said.Should().ContainSingle().Which.Text.Should().Be("Sage's baby: 99.4 °F.\nA little low. Once more at 7:20.\nNext: standing 7:10, temperature 7:20.");
    }

    private static List<string> Planned(Farmyard yard) => [.. yard.PlanAt(yard.Clock(yard.Now))
        .Where(task => task.Key.Name == CareTaskName.Temperature).Select(task => yard.Clock(task.Due)).Order(StringComparer.Ordinal)];

    private static Farmyard Born()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"), Some.Fact(FactKind.CordDry), Some.Done(CareTaskName.LookOver));
        return yard;
    }
}

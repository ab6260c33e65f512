using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Care;

/// <summary>A cold newborn is warmed before it is fed by hand; the clocks run on.</summary>
public sealed class HoldOnFeedingTests
{
    [Fact]
    public void A_cold_reading_asks_to_warm_it_and_holds_feeding()
    {
        var yard = Born();
        var said = yard.Say("07:00", Some.Temperature(97.0));

        said.Should().ContainSingle().Which.Text.Should().Be(
            "Sage's baby: 97.0 °F.\nCold. Dry, shelter, heat the trunk; lamp chained, never alone. No bottle, syringe or tube yet: feeding waits. Read again 7:15."
            + "\nNext: standing 7:10, temperature 7:15.");
        yard.Stands(CareTaskName.Warm, "07:00").Should().Be("asked act");
        yard.Stands(CareTaskName.Nursing, "07:40").Should().Be("held fine");
        yard.Stands(CareTaskName.Colostrum, "08:40").Should().Be("held act", "a cold one is at risk: colostrum sooner");
        yard.Stands(CareTaskName.Standing, "07:10").Should().Be("asked fine", "standing is not feeding");
    }

    [Fact]
    public void Prompts_to_feed_stop_while_it_is_cold_and_come_as_held_at_their_vet_time()
    {
        var yard = Cold(until: "09:45");

        yard.Told(CareTaskName.Nursing).Should().Equal("18 09:40 held vet");
        yard.Posts.Last(post => post.Kind == PostKind.Alarm && post.Tasks[0].Key.Name == CareTaskName.Nursing).Text.Should().StartWith(
            "Vet now: Sage's baby cold and not fed for 3 h: phone the vet.");
    }

    [Fact]
    public void When_the_hold_ends_feeding_is_asked_for_at_once()
    {
        var yard = Cold(until: "08:20");
        yard.Say("08:25", Some.Temperature(99.2));
        var said = yard.Say("08:40", Some.Temperature(99.8));

        said.Should().ContainSingle().Which.Text.Should().Contain("Two good readings: feeding may go on.");
        yard.Stands(CareTaskName.Nursing, "08:40").Should().Be("late act");
        said[0].Tasks.Should().Contain(task => task.Key.Name == CareTaskName.Nursing);
    }

    [Fact]
    public void After_the_hold_it_is_read_after_half_an_hour_one_two_and_four_hours()
    {
        var yard = Born();
        yard.Say("07:00", Some.Temperature(97.5), Some.Fact(FactKind.Nursing));
        yard.Say("07:15", Some.Temperature(99.5));
        yard.Say("07:30", Some.Temperature(100.2));

        yard.PlanAt("07:30").Where(task => task.Key.Name == CareTaskName.Temperature && task.Due < yard.At("12:00"))
            .Select(task => yard.Clock(task.Due)[3..]).Should().Equal("08:00", "08:30", "09:30", "11:30");
        foreach (var (asked, late) in new[] { ("08:00", "08:29:59") })
        {
            yard.Stands(CareTaskName.Temperature, asked).Should().Be("asked fine");
            yard.Stands(CareTaskName.Temperature, late).Should().Be("asked fine");
        }
    }

    [Fact]
    public void A_re_read_is_asked_after_15_minutes_late_after_10_more_and_for_the_vet_after_30()
    {
        var yard = Born();
        yard.Say("07:00", Some.Temperature(97.0));

        yard.Stands(CareTaskName.Temperature, "07:14:59").Should().Be("ahead fine");
        yard.Stands(CareTaskName.Temperature, "07:15").Should().Be("asked fine");
        yard.Stands(CareTaskName.Temperature, "07:24:59").Should().Be("asked fine");
        yard.Stands(CareTaskName.Temperature, "07:25").Should().Be("late act");
        yard.Stands(CareTaskName.Temperature, "07:44:59").Should().Be("late act");
        yard.Stands(CareTaskName.Temperature, "07:45").Should().Be("late vet");
    }

    [Fact]
    public void A_feed_in_the_hold_is_recorded_and_cautioned_against()
    {
        var yard = Cold(until: "07:20");
        var said = yard.Say("07:20", Some.Colostrum(120) with { Route = FeedRoute.Bottle });

        yard.State.Records[^1].Fact.Kind.Should().Be(FactKind.Colostrum);
        said.Should().ContainSingle().Which.Text.Should().Contain("It is still cold: no more by bottle, syringe or tube until it is warm.");
    }

    [Fact]
    public void Nursing_in_the_hold_is_never_discouraged()
    {
        var yard = Cold(until: "07:20");
        var said = yard.Say("07:20", Some.Fact(FactKind.Nursing));

        said.Should().ContainSingle().Which.Text.Should().Contain("Good, leave it with its mother.").And.NotContain("no more");
    }

    [Fact]
    public void How_fast_it_warms_is_told_with_the_reading()
    {
        var yard = Born();
        yard.Say("07:00", Some.Temperature(96.0));
        var said = yard.Say("07:15", Some.Temperature(97.0));

        said.Should().ContainSingle().Which.Text.Should().Contain("Rising 4.0 °F an hour; 99.0 °F at about 7:45.");
    }

    [Fact]
    public void An_emergency_calls_the_vet_at_once_says_what_to_do_and_that_milk_waits()
    {
        var yard = Born();
        var said = yard.Say("07:00", Some.Temperature(94.6));

        var alarm = said.Should().ContainSingle().Which;
        alarm.Kind.Should().Be(PostKind.Alarm);
        alarm.Text.Should().StartWith("Vet now: Sage's baby 94.6 °F, very cold. Dry, shelter, warm the trunk; lamp chained, never alone. No milk by bottle, syringe or tube yet. Read again 7:15.\nPhone 555 0134.");
    }

    [Fact]
    public void Slow_warming_is_for_the_vet_after_an_hour_less_the_vets_drive()
    {
        foreach (var (drive, at) in new[] { (0, "08:00"), (20, "07:40") })
        {
            var yard = new Farmyard(Some.Farm(vetMinutes: drive));
            yard.Say("06:40", Some.Birth("06:40"));
            yard.Say("07:00", Some.Temperature(96.0));
            yard.Say("07:15", Some.Temperature(97.0));
            yard.Say("07:35", Some.Temperature(98.0));

            yard.StandsAt(CareTaskName.Warm, yard.At(at) - NodaTime.Duration.FromSeconds(1)).Should().Be("asked act");
            yard.Stands(CareTaskName.Warm, at).Should().Be("late vet");
        }
    }

    [Fact]
    public void A_hot_one_is_for_the_vet_at_once_and_read_again_in_fifteen_minutes()
    {
        var yard = Born();
        var said = yard.Say("07:00", Some.Temperature(103.0));

        said.Should().ContainSingle().Which.Text.Should().StartWith("Vet now: Sage's baby 103.0 °F, hot. Shade, air, no cold bath. Read again 7:15.");
        yard.Stands(CareTaskName.Nursing, "07:40").Should().Be("asked fine", "heat holds no feeding");
    }

    private static Farmyard Born()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"), Some.Done(CareTaskName.LookOver), Some.Fact(FactKind.CordDry), Some.Weight(10.4));
        return yard;
    }

    private static Farmyard Cold(string until)
    {
        var yard = Born();
        yard.Say("07:00", Some.Temperature(97.0));
        yard.RunTo(until);
        return yard;
    }
}

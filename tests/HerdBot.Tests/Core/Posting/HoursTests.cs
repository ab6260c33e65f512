using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Posting;

/// <summary>Quiet hours, round-ups, the clock's changes.</summary>
public sealed class HoursTests
{
    [Fact]
    public void Fine_and_heed_wait_for_the_morning_and_act_and_vet_never_wait()
    {
        var yard = new Farmyard();
        yard.Say("20:30", Some.Birth("20:30"));
        yard.RunTo("19 07:30");

        // Asked at 21:30, late (heed) at 23:30: told of in the evening, then in the morning.
        yard.Told(CareTaskName.DamLook, "Sage").Should().Equal("18 21:30 asked fine", "19 06:00 late heed", "19 07:00 late heed");
        // Asked at 22:30 in the quiet hours: kept back; late (act) at 23:30, vet at 02:30: not.
        yard.Told(CareTaskName.Placenta, "Sage").Should().StartWith("18 23:30 late act").And.Contain("19 02:30 late vet");
        // A dip comes again in waking hours alone.
        yard.Told(CareTaskName.CordDip).Should().NotContain(line => string.CompareOrdinal(line, "18 22") > 0 && string.CompareOrdinal(line, "19 06") < 0);
    }

    [Fact]
    public void What_only_waits_in_quiet_hours_goes_out_at_six()
    {
        var yard = Calm("23:00");
        yard.RunTo("19 06:30");

        var night = yard.Posts.Where(post => post.At > yard.At("23:05") && post.At < yard.At("19 06:00") && post.Kind is PostKind.Reminder or PostKind.RoundUp);
        night.Where(post => post.Tasks[0].Level < Level.Act).Should().BeEmpty();
        yard.Told(CareTaskName.Weight).Should().Equal("19 06:00 asked fine");
    }

    [Fact]
    public void What_waits_goes_along_with_an_alarm_in_the_night()
    {
        var yard = Calm("22:30");
        yard.RunTo("19 01:31");

        yard.Told(CareTaskName.Nursing).Should().Contain("19 01:30 late vet");
    }

    [Fact]
    public void A_birth_told_in_the_night_is_answered_with_what_is_asked_now()
    {
        var yard = new Farmyard();
        var said = yard.Say("23:10", Some.Birth("23:05"));

        said.Should().ContainSingle().Which.Tasks.Select(task => task.Key.Name).Should().Equal(CareTaskName.LookOver, CareTaskName.CordDip);
    }

    [Fact]
    public void A_sign_of_labour_told_in_the_night_is_answered_with_what_to_do()
    {
        var yard = new Farmyard();
        var said = yard.Say("23:10", Some.Fact(FactKind.LabourSign, "Willow") with { Field = NoteTopics.Labour, Text = "rolling" });

        said.Should().ContainSingle().Which.Text.Should().Contain("look every 15 min, phone early");
    }

    [Fact]
    public void Round_ups_come_at_seven_and_seven_and_only_where_something_is_open()
    {
        var yard = new Farmyard();
        yard.RunTo("19 12:00");
        yard.Posts.Should().BeEmpty();

        yard.Say("19 12:00", Some.Birth("19 12:00"));
        yard.RunTo("20 12:00");
        yard.Posts.Where(post => post.Kind == PostKind.RoundUp).Select(post => yard.Clock(post.At)).Should().Equal("19 19:00", "20 07:00");
    }

    [Fact]
    public void The_farm_may_have_other_hours()
    {
        var farm = Some.Farm() with { QuietHours = new(new LocalTime(20, 0), new LocalTime(5, 0)), RoundUps = [new LocalTime(12, 0)] };
        var yard = new Farmyard(farm);
        yard.Say("19:15", Some.Birth("19:15"));
        yard.RunTo("19 12:00");

        yard.Told(CareTaskName.DamLook, "Sage").Should().Equal("19 05:00 late heed", "19 12:00 late heed");
    }

    [Theory]
    [InlineData("2027-03-14T00:30", "2027-03-14T03:30")] // 02:00 becomes 03:00: two hours after 00:30 the clock shows 03:30
    [InlineData("2027-11-07T00:30", "2027-11-07T01:30")] // 02:00 becomes 01:00 again: two hours after 00:30 it shows 01:30 once more
    public void Times_from_the_birth_run_through_a_change_of_the_clock(string born, string vetAt)
    {
        var pattern = NodaTime.Text.LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");
        var at = pattern.Parse(born).Value;
        var day = $"{Period.DaysBetween(Some.Day, at.Date) + Some.Day.Day} 00:30";
        var yard = new Farmyard(start: day);
        yard.Say(day, Some.Birth());

        var vet = yard.PlanAt(day).Single(task => task.Key.Name == CareTaskName.Standing).Steps[^1].At;

        yard.Farm.Clock.Local(vet).Should().Be(pattern.Parse(vetAt).Value);
        (vet - yard.Now).Should().Be(Duration.FromHours(2));
    }

    private static Farmyard Calm(string time)
    {
        var yard = new Farmyard();
        yard.Say(time, Some.Birth(time), Some.Done(CareTaskName.LookOver), Some.Fact(FactKind.CordDry), Some.Fact(FactKind.Standing), Some.Temperature(100.6));
        return yard;
    }
}

using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Care;

/// <summary>
/// Dips: 2 to 3 times in the first 24 h (Merck Veterinary Manual), some treat 2 to 7 days (Whitehead, Umbilical cord
/// care). The watch on a bleeding cord is common practice, no source.
/// </summary>
public sealed class CordTests
{
    [Theory]
    [InlineData("06:45", "11:45")] // five hours after the last
    [InlineData("16:59", "21:59")] // still in waking hours
    [InlineData("17:00", "19 06:00")] // 22:00 is too late
    [InlineData("20:00", "19 06:00")] // 01:00 the next morning
    [InlineData("19 01:30", "19 06:30")]
    public void The_next_dip_is_asked_five_hours_after_the_last_in_waking_hours(string dipped, string asked)
    {
        var yard = Born();
        yard.Say(dipped, Some.Fact(FactKind.CordDip));

        var next = yard.PlanAt(dipped).Single(task => task.Key.Name == CareTaskName.CordDip);

        next.Due.Should().Be(yard.At(asked));
    }

    [Fact]
    public void Three_dips_are_enough_for_a_day()
    {
        var yard = Born();
        yard.Say("06:45", Some.Fact(FactKind.CordDip));
        yard.Say("11:45", Some.Fact(FactKind.CordDip));
        yard.Say("16:45", Some.Fact(FactKind.CordDip));

        yard.PlanAt("16:45").Single(task => task.Key.Name == CareTaskName.CordDip).Due.Should().Be(yard.At("19 06:00"));
    }

    [Fact]
    public void One_that_is_not_done_stays_the_same_task_and_is_worth_an_eye_an_hour_later()
    {
        var yard = Born();
        yard.Say("06:45", Some.Fact(FactKind.CordDip));

        yard.Stands(CareTaskName.CordDip, "11:44:59").Should().Be("ahead fine");
        yard.Stands(CareTaskName.CordDip, "11:45").Should().Be("asked fine");
        yard.Stands(CareTaskName.CordDip, "12:44:59").Should().Be("asked fine");
        yard.Stands(CareTaskName.CordDip, "12:45").Should().Be("late heed");
        yard.PlanAt("20:00").Where(task => task.Key.Name == CareTaskName.CordDip).Should().ContainSingle().Which.Key.Which.Should().Be("2");
    }

    [Fact]
    public void It_ends_with_a_dry_cord_or_after_three_days()
    {
        var yard = Born();
        yard.Say("06:45", Some.Fact(FactKind.CordDip));
        yard.Stands(CareTaskName.CordDip, "21 06:39").Should().Be("late heed");
        yard.Stands(CareTaskName.CordDip, "21 06:40").Should().Be("lapsed fine");

        yard.Say("12:00", Some.Fact(FactKind.CordDry) with { Unsure = true });
        yard.Stands(CareTaskName.CordDip, "12:00").Should().Be("asked fine");
        yard.Say("12:10", Some.Fact(FactKind.CordDry));
        yard.Stands(CareTaskName.CordDip, "12:10").Should().Be("lapsed fine");
    }

    [Fact]
    public void A_bleeding_cord_is_act_at_once_asked_about_after_five_minutes_and_for_the_vet_after_ten()
    {
        var yard = Born();
        var said = yard.Say("08:00", Some.Fact(FactKind.CordBleeding));

        said.Should().ContainSingle().Which.Text.Should().Contain("pinch it 5 min, tie or clamp 2-3 cm from the belly, disinfect");
        yard.Stands(CareTaskName.CordWatch, "08:00").Should().Be("asked act");
        yard.Stands(CareTaskName.CordWatch, "08:04:59").Should().Be("asked act");
        yard.Stands(CareTaskName.CordWatch, "08:05").Should().Be("late act");
        yard.Stands(CareTaskName.CordWatch, "08:09:59").Should().Be("late act");
        yard.Stands(CareTaskName.CordWatch, "08:10").Should().Be("late vet");
    }

    [Fact]
    public void The_vets_drive_is_taken_off_a_bleeding_cord_too()
    {
        var yard = new Farmyard(Some.Farm(vetMinutes: 30));
        yard.Say("06:40", Some.Birth("06:40"));
        var said = yard.Say("08:00", Some.Fact(FactKind.CordBleeding));

        said.Should().ContainSingle().Which.Kind.Should().Be(PostKind.Alarm);
    }

    [Fact]
    public void A_stream_is_for_the_vet_at_once_also_where_it_bled_a_little_before()
    {
        var yard = Born();
        yard.Say("08:00", Some.Fact(FactKind.CordBleeding) with { Field = NoteTopics.Stream });
        yard.Stands(CareTaskName.CordWatch, "08:00").Should().Be("late vet");

        yard = Born();
        yard.Say("08:00", Some.Fact(FactKind.CordBleeding));
        yard.Say("08:02", Some.Fact(FactKind.CordBleeding) with { Field = NoteTopics.Stream });
        yard.Stands(CareTaskName.CordWatch, "08:02").Should().Be("late vet");
    }

    [Fact]
    public void Bleeding_that_is_only_feared_counts_and_stopping_that_is_only_hoped_for_does_not()
    {
        var yard = Born();
        yard.Say("08:00", Some.Fact(FactKind.CordBleeding) with { Unsure = true });
        yard.Stands(CareTaskName.CordWatch, "08:05").Should().Be("late act");
        yard.Say("08:06", Some.Fact(FactKind.CordBleeding) with { Neg = true, Unsure = true });
        yard.Stands(CareTaskName.CordWatch, "08:10").Should().Be("late vet");
    }

    [Fact]
    public void After_it_stopped_it_is_looked_at_four_times_in_two_hours_and_three_times_a_day_for_a_day()
    {
        var yard = Born();
        yard.Say("08:00", Some.Fact(FactKind.CordBleeding));
        yard.Say("08:04", Some.Fact(FactKind.CordBleeding) with { Neg = true });

        Looks(yard).Should().Equal("18 08:19", "18 08:34", "18 09:04", "18 10:04", "18 16:04", "19 00:04", "19 08:04");
    }

    [Fact]
    public void A_look_that_finds_it_dry_leaves_the_times_of_the_others()
    {
        var yard = Born();
        yard.Say("08:00", Some.Fact(FactKind.CordBleeding));
        yard.Say("08:04", Some.Fact(FactKind.CordBleeding) with { Neg = true });
        yard.Tap("Ben", "08:20", CareTaskName.CordWatch, ButtonVerb.Done);
        yard.Say("08:36", Some.Fact(FactKind.CordDry));

        Looks(yard).Should().Equal("18 08:19", "18 08:34", "18 09:04", "18 10:04", "18 16:04", "19 00:04", "19 08:04");
        yard.Stands(CareTaskName.CordWatch, "08:37").Should().Be("ahead fine");
        yard.Stands(CareTaskName.CordWatch, "09:04").Should().Be("asked fine");
        yard.Stands(CareTaskName.CordWatch, "09:19").Should().Be("late heed");
    }

    [Fact]
    public void Bleeding_again_begins_anew()
    {
        var yard = Born();
        yard.Say("08:00", Some.Fact(FactKind.CordBleeding));
        yard.Say("08:04", Some.Fact(FactKind.CordBleeding) with { Neg = true });
        var said = yard.Say("08:30", Some.Fact(FactKind.CordBleeding));

        said.Should().ContainSingle().Which.Text.Should().Contain("pinch it 5 min");
        yard.Stands(CareTaskName.CordWatch, "08:40").Should().Be("late vet");
        Looks(yard).Should().BeEmpty();
    }

    private static IEnumerable<string> Looks(Farmyard yard) => yard.PlanAt(yard.Clock(yard.Now))
        .Where(task => task.Key.Name == CareTaskName.CordWatch && task.Wording == "look").Select(task => yard.Clock(task.Due));

    private static Farmyard Born()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"), Some.Temperature(100.5));
        return yard;
    }
}

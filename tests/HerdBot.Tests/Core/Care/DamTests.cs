using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Care;

/// <summary>
/// Labour and birth: stage 1 without progress after 4 to 6 h (Ohio State handout on dystocia); parts in view without
/// progress for 15 to 20 min, stage 2 not finished in 30 min (dvm360 proceedings 2009). Most births fall before the
/// afternoon (University of Liège survey: alpaca median 11:30; E. McKenzie, ACVIM 2008).
/// </summary>
public sealed class DamTests
{
    [Fact]
    public void Labour_is_asked_at_once_late_after_two_hours_and_for_the_vet_after_four()
    {
        var yard = new Farmyard();
        yard.Say("08:00", Labour());

        yard.Stands(CareTaskName.Labour, "08:00", "Sage").Should().Be("asked fine");
        yard.Stands(CareTaskName.Labour, "09:59:59", "Sage").Should().Be("asked fine");
        yard.Stands(CareTaskName.Labour, "10:00", "Sage").Should().Be("late act");
        yard.Stands(CareTaskName.Labour, "11:59:59", "Sage").Should().Be("late act");
        yard.Stands(CareTaskName.Labour, "12:00", "Sage").Should().Be("late vet");
    }

    [Theory]
    [InlineData("14:59", "asked fine", "Look in, keep calm, keep away.")]
    [InlineData("15:00", "asked heed", "Most births fall between dawn and early afternoon: look every 15 min, phone early.")]
    public void Labour_that_begins_in_the_afternoon_is_worth_an_eye(string at, string stands, string says)
    {
        var yard = new Farmyard();
        var said = yard.Say(at, Labour());

        yard.Stands(CareTaskName.Labour, at, "Sage").Should().Be(stands);
        said.Should().ContainSingle().Which.Text.Should().Contain(says);
    }

    [Fact]
    public void Signs_that_she_is_close_put_no_clock_on()
    {
        var yard = new Farmyard();
        yard.Say("08:00", Some.Fact(FactKind.LabourSign, "Sage") with { Field = NoteTopics.CloseUp });

        yard.PlanAt("09:00").Should().OnlyContain(task => task.Key.Name == CareTaskName.LookIn);
    }

    [Fact]
    public void The_clock_runs_from_the_first_sign_and_ends_with_the_birth()
    {
        var yard = new Farmyard();
        yard.Say("08:00", Labour());
        yard.Say("09:30", Labour());
        yard.Stands(CareTaskName.Labour, "10:00", "Sage").Should().Be("late act");
        yard.Say("10:30", Some.Birth("10:20"));

        yard.Stands(CareTaskName.Labour, "10:31", "Sage").Should().Be("done fine");
        yard.RunTo("13:00");
        yard.Told(CareTaskName.Labour, "Sage").Should().Equal("18 10:00 late act", "18 10:15 late act", "18 10:30 late act");
    }

    [Fact]
    public void Labour_that_passed_can_begin_anew()
    {
        var yard = new Farmyard();
        yard.Say("08:00", Labour());
        yard.Say("09:00", Some.Done(CareTaskName.Labour, "Sage"));
        yard.Stands(CareTaskName.Labour, "12:00", "Sage").Should().Be("done fine");
        yard.Say("13:00", Labour());

        yard.Stands(CareTaskName.Labour, "13:00", "Sage").Should().Be("asked fine");
        yard.Stands(CareTaskName.Labour, "15:00", "Sage").Should().Be("late act");
    }

    [Theory]
    [InlineData("water")]
    [InlineData("bag")]
    [InlineData("feet")]
    public void A_birth_under_way_is_act_asked_again_after_ten_minutes_and_for_the_vet_after_fifteen(string sign)
    {
        var yard = new Farmyard();
        yard.Say("08:00", InView(sign));

        yard.Stands(CareTaskName.Presentation, "08:00", "Sage").Should().Be("asked act");
        yard.Stands(CareTaskName.Presentation, "08:09:59", "Sage").Should().Be("asked act");
        yard.Stands(CareTaskName.Presentation, "08:10", "Sage").Should().Be("late act");
        yard.Stands(CareTaskName.Presentation, "08:14:59", "Sage").Should().Be("late act");
        yard.Stands(CareTaskName.Presentation, "08:15", "Sage").Should().Be("late vet");
    }

    [Fact]
    public void Progress_puts_the_clock_back_but_never_past_thirty_minutes()
    {
        var yard = new Farmyard();
        yard.Say("08:00", InView("water"));
        yard.Say("08:12", InView("feet"));
        yard.Stands(CareTaskName.Presentation, "08:21:59", "Sage").Should().Be("asked act");
        yard.Stands(CareTaskName.Presentation, "08:22", "Sage").Should().Be("late act");
        yard.Tap("Ben", "08:24", CareTaskName.Presentation, ButtonVerb.Done, "Sage");
        yard.Stands(CareTaskName.Presentation, "08:29:59", "Sage").Should().Be("asked act");
        yard.Stands(CareTaskName.Presentation, "08:30", "Sage").Should().Be("late vet");
    }

    [Fact]
    public void Anything_but_a_nose_and_two_forefeet_is_for_the_vet_at_once_also_where_it_is_only_feared()
    {
        foreach (var unsure in new[] { false, true })
        {
            var yard = new Farmyard();
            var said = yard.Say("08:00", Some.Fact(FactKind.Presentation, "Sage") with { Field = NoteTopics.Abnormal, Text = "tail first", Unsure = unsure });

            said.Should().ContainSingle().Which.Text.Should().StartWith("Vet now: Sage: tail first. Do not pull without the vet; a backwards cria may show no straining.\nPhone 555 0134.");
        }
    }

    [Fact]
    public void The_vets_drive_is_taken_off_the_birth_too()
    {
        var yard = new Farmyard(Some.Farm(vetMinutes: 8));
        yard.Say("08:00", InView("feet"));

        yard.Stands(CareTaskName.Presentation, "08:06:59", "Sage").Should().Be("asked act");
        yard.Stands(CareTaskName.Presentation, "08:07", "Sage").Should().Be("late vet");
    }

    [Fact]
    public void A_dam_that_is_ill_is_for_the_vet_at_once_also_without_a_birth()
    {
        var said = new Farmyard().Say("08:00", Some.Note(NoteTopics.DamIll, "Sage"));

        said.Should().ContainSingle().Which.Text.Should().StartWith("Vet now: Sage is not well.");
    }

    [Fact]
    public void A_dam_that_was_fine_and_is_ill_is_for_the_vet_at_once()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"), Some.Done(CareTaskName.DamLook, "Sage"));
        var said = yard.Say("08:00", Some.Note(NoteTopics.DamIll, "Sage"));

        said.Should().ContainSingle().Which.Text.Should().StartWith("Vet now: Sage is not well.");
        yard.Say("09:00", Some.Done(CareTaskName.DamLook, "Sage"));
        yard.Stands(CareTaskName.DamLook, "09:00", "Sage").Should().Be("done fine");
    }

    [Fact]
    public void A_placenta_that_is_told_a_little_before_the_birth_counts()
    {
        var yard = new Farmyard();
        yard.Say("06:45", Some.Birth("06:40"), Some.Fact(FactKind.Placenta, "Sage", "06:38"));

        yard.Stands(CareTaskName.Placenta, "09:00", "Sage").Should().Be("done fine");
    }

    [Fact]
    public void A_dead_dam_is_asked_for_nothing_and_her_newborn_goes_on()
    {
        var yard = new Farmyard();
        yard.Say("06:45", Some.Birth("06:40"));
        yard.Choose("Ana", "07:00", yard.Say("07:00", Some.Fact(FactKind.Death, "Sage"))[^1], 0);

        yard.Stands(CareTaskName.Placenta, "09:00", "Sage").Should().Be("none");
        yard.Stands(CareTaskName.Standing, "07:10").Should().Be("asked fine");
    }

    [Fact]
    public void A_dead_newborn_is_asked_for_nothing_and_its_dam_goes_on()
    {
        var yard = new Farmyard();
        yard.Say("06:45", Some.Birth("06:40"));
        yard.Choose("Ana", "07:00", yard.Say("07:00", Some.Fact(FactKind.Death))[^1], 0);

        yard.PlanAt("09:00").Select(task => task.Key.Name).Should().Equal(CareTaskName.DamLook, CareTaskName.Placenta, CareTaskName.DamCheck, CareTaskName.Rebreed);
    }

    private static Fact Labour() => Some.Fact(FactKind.LabourSign, "Sage") with { Field = NoteTopics.Labour, Text = "rolling" };

    private static Fact InView(string sign) => sign switch
    {
        "water" => Some.Fact(FactKind.WaterBroke, "Sage"),
        "bag" => Some.Fact(FactKind.LabourSign, "Sage") with { Field = NoteTopics.InView, Text = "bag" },
        _ => Some.Fact(FactKind.Presentation, "Sage") with { Field = NoteTopics.Normal, Text = "nose and two feet" },
    };
}

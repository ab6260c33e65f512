using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Posting;

/// <summary>What goes out together, what waits, and what never waits.</summary>
public sealed class CompanyTests
{
    [Fact]
    public void What_falls_due_at_one_minute_for_a_pair_is_one_post()
    {
        var yard = Born();
        yard.RunTo("07:40");

        yard.Posts.Where(post => post.At == yard.At("07:40")).Should().ContainSingle()
            .Which.Tasks.Select(task => task.Key.Name).Should().Equal(CareTaskName.Standing, CareTaskName.Nursing, CareTaskName.Weight, CareTaskName.DamLook, CareTaskName.Udder);
    }

    [Fact]
    public void A_calm_post_waits_up_to_five_minutes_for_company()
    {
        // The third reading is due at 18:40; a dip five hours after 13:38 at 18:38, five hours after 13:34 at 18:34.
        var yard = AllWell("13:38");
        yard.RunTo("18:50");

        yard.Told(CareTaskName.CordDip).Should().EndWith("18 18:40 asked fine");
        yard.Posts.Last(post => post.At == yard.At("18:40")).Tasks.Should().Contain(task => task.Key.Name == CareTaskName.Temperature);

        yard = AllWell("13:34");
        yard.RunTo("18:50");

        yard.Told(CareTaskName.CordDip).Should().EndWith("18 18:34 asked fine");
    }

    [Fact]
    public void Act_goes_out_at_its_minute_and_takes_along_what_waits()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"), Some.Temperature(100.6), Some.Done(CareTaskName.LookOver), Some.Fact(FactKind.CordDry), Some.Weight(10.2));
        yard.Say("06:41", Some.Fact(FactKind.WaterBroke, "Willow"));
        yard.RunTo("07:40");

        yard.Told(CareTaskName.Standing).Should().Contain("18 07:40 late act");
        yard.Told(CareTaskName.Nursing).Should().Equal("18 07:40 asked fine");
    }

    [Fact]
    public void A_reading_of_a_cold_one_goes_out_at_its_minute()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"));
        yard.Say("07:22", Some.Temperature(97.0)); // again at 07:37, just before nursing at 07:40
        yard.RunTo("07:37");

        yard.Told(CareTaskName.Temperature).Should().Contain("18 07:37 asked fine");
    }

    [Fact]
    public void Three_pairs_at_once_are_one_round_up()
    {
        var yard = Pairs("Sage", "Fern", "Iris");
        yard.RunTo("06:55");

        var post = yard.Posts.Where(post => post.At == yard.At("06:55")).Should().ContainSingle().Which;
        post.Kind.Should().Be(PostKind.RoundUp);
        post.Tasks.Select(task => task.Animal).Should().BeEquivalentTo("Sage's baby", "Fern's baby", "Iris's baby");
        post.Text.Should().Be("Open now:\nFern's baby: temperature\nIris's baby: temperature\nSage's baby: temperature");
    }

    [Fact]
    public void Two_pairs_at_once_are_two_posts()
    {
        var yard = Pairs("Sage", "Fern");
        yard.RunTo("06:55");

        yard.Posts.Where(post => post.At == yard.At("06:55")).Should().HaveCount(2).And.OnlyContain(post => post.Kind == PostKind.Reminder);
    }

    [Fact]
    public void Alarms_of_three_pairs_stay_alarms()
    {
        var yard = Pairs("Sage", "Fern", "Iris");
        yard.RunTo("08:40");

        yard.Posts.Where(post => post.At == yard.At("08:40")).Should().HaveCount(3).And.OnlyContain(post => post.Kind == PostKind.Alarm);
    }

    [Fact]
    public void Twins_and_their_dam_are_one_pair_with_a_plan_for_each()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40", n: 1), Some.Birth("06:40", n: 2));
        yard.RunTo("07:10");

        var post = yard.Posts.Where(post => post.At == yard.At("07:10") && post.Kind != PostKind.Edit).Should().ContainSingle().Which;
        post.Tasks.Where(task => task.Key.Name == CareTaskName.Standing).Select(task => task.Animal).Should().Equal("Sage's baby 1", "Sage's baby 2");
    }

    private static Farmyard Born()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"), Some.Temperature(100.6), Some.Done(CareTaskName.LookOver), Some.Fact(FactKind.CordDry));
        return yard;
    }

    private static Farmyard AllWell(string dipped)
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"), Some.Temperature(100.6), Some.Done(CareTaskName.LookOver), Some.Weight(10.2), Some.Fact(FactKind.Meconium), Some.Fact(FactKind.Urine),
            Some.Fact(FactKind.Placenta, "Sage"), Some.Done(CareTaskName.DamLook, "Sage"));
        yard.Say("06:50", Some.Fact(FactKind.Nursing));
        yard.Say("07:05", Some.Fact(FactKind.Standing));
        yard.Say("07:20", Some.Fact(FactKind.Nursing));
        yard.Say("10:30", Some.Temperature(100.7));
        yard.Say(dipped, Some.Fact(FactKind.CordDip));
        return yard;
    }

    private static Farmyard Pairs(params string[] dams)
    {
        var yard = new Farmyard(null, "05:00", [.. dams.Select(dam => Some.Dam(dam))]);
        yard.Say("06:40", [.. dams.SelectMany(dam => new[]
        {
            Some.Birth("06:40", dam), Some.Done(CareTaskName.LookOver, $"{dam}'s baby"), Some.Fact(FactKind.CordDry, $"{dam}'s baby"),
        })]);
        return yard;
    }
}

using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Posting;

/// <summary>What fell due while the bot was off comes at once, together.</summary>
public sealed class OutageTests
{
    [Fact]
    public void After_an_outage_all_comes_in_one_post_with_one_line_about_the_gap()
    {
        var yard = Born();
        yard.RunTo("07:05");
        var said = yard.OffUntil("10:00");

        var post = said.Should().ContainSingle().Which;
        post.Kind.Should().Be(PostKind.Alarm);
        post.Text.Should().StartWith("I was off since about 7:00.\nVet now: Sage's baby: no temperature yet, 3 h 20 min old. Take it now.\nPhone 555 0134.\nAlso: standing (vet now), nursing (vet now), colostrum (late)");
        post.Tasks.Should().Contain(task => task.Key.Name == CareTaskName.Nursing).And.Contain(task => task.Key.Name == CareTaskName.Placenta);
    }

    [Fact]
    public void Where_nothing_is_grave_it_is_a_round_up()
    {
        var yard = Born();
        yard.RunTo("07:05");
        var said = yard.OffUntil("07:35");

        var post = said.Should().ContainSingle().Which;
        post.Kind.Should().Be(PostKind.RoundUp);
        post.Text.Should().StartWith("I was off since about 7:00.\nOpen now:");
    }

    [Fact]
    public void Two_pairs_come_together_too()
    {
        var yard = new Farmyard(null, "05:00", Some.Dam("Sage"), Some.Dam("Fern"));
        yard.Say("06:40", Some.Birth("06:40"), Some.Birth("06:40", "Fern"));
        var said = yard.OffUntil("09:00");

        said.Should().ContainSingle().Which.Tasks.Select(task => task.Animal).Distinct().Should().HaveCount(4);
    }

    [Fact]
    public void A_short_restart_says_nothing_of_a_gap()
    {
        var yard = Born();
        yard.RunTo("07:08");
        var said = yard.OffUntil("07:11");

        said.Should().ContainSingle().Which.Text.Should().NotContain("off");
    }

    [Fact]
    public void A_restart_in_which_nothing_fell_due_says_nothing()
    {
        var yard = Born();
        yard.RunTo("07:00");

        yard.OffUntil("07:08").Should().BeEmpty();
    }

    [Fact]
    public void A_round_up_that_was_missed_is_made_up_for_and_one_that_was_sent_is_not()
    {
        var yard = Weighed();
        yard.RunTo("18:50");
        yard.OffUntil("19:30").Should().ContainSingle().Which.Kind.Should().Be(PostKind.RoundUp);

        yard = Weighed();
        yard.RunTo("19:02");
        yard.OffUntil("19:30").Should().BeEmpty();
    }

    [Fact]
    public void A_late_report_closes_what_it_answers_and_the_rest_goes_on()
    {
        var yard = Born();
        yard.RunTo("07:05");
        yard.OffUntil("10:00");
        yard.Say("10:03", Some.Fact(FactKind.Standing, at: "07:15"), Some.Fact(FactKind.Nursing, at: "08:00"));
        yard.RunTo("11:00");

        yard.Told(CareTaskName.Standing).Should().HaveCount(1);
        yard.Told(CareTaskName.Nursing).Should().HaveCount(1);
        yard.Told(CareTaskName.Placenta, "Sage").Should().HaveCountGreaterThan(1);
    }

    [Fact]
    public void A_birth_told_late_is_answered_with_all_that_is_past_and_followed_ten_minutes_later()
    {
        var yard = new Farmyard();
        var said = yard.Say("10:00", Some.Birth("06:40"));
        yard.RunTo("10:15");

        said.Should().ContainSingle().Which.Tasks.Select(task => task.Key.Name).Should().BeEquivalentTo([CareTaskName.LookOver, CareTaskName.CordDip, CareTaskName.Temperature,
            CareTaskName.Standing, CareTaskName.Nursing, CareTaskName.Colostrum, CareTaskName.Weight, CareTaskName.DamLook, CareTaskName.Udder, CareTaskName.Placenta]);
        said[0].Tasks.Should().OnlyContain(task => task.State == TaskState.Asked && task.Level == Level.Fine);
        var alarm = yard.Posts.Should().ContainSingle(post => post.Kind == PostKind.Alarm).Which;
        yard.Clock(alarm.At).Should().Be("18 10:10");
        alarm.Tasks.Where(task => task.Level == Level.Vet).Select(task => task.Key.Name).Should().BeEquivalentTo(
            [CareTaskName.Temperature, CareTaskName.Standing, CareTaskName.Nursing, CareTaskName.Udder]);
    }

    private static Farmyard Born()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"), Some.Done(CareTaskName.LookOver), Some.Fact(FactKind.CordDry));
        return yard;
    }

    /// <summary>Nothing is open but the weight, which is worth an eye since 18:40.</summary>
    private static Farmyard Weighed()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"), Some.Done(CareTaskName.LookOver), Some.Fact(FactKind.CordDry), Some.Temperature(100.6), Some.Fact(FactKind.Placenta, "Sage"),
            Some.Done(CareTaskName.DamLook, "Sage"), Some.Fact(FactKind.Meconium), Some.Fact(FactKind.Urine), Some.Fact(FactKind.Nursing));
        yard.Say("07:30", Some.Fact(FactKind.Nursing));
        yard.Say("10:35", Some.Temperature(100.6));
        yard.Say("18:10", Some.Temperature(100.6));
        return yard;
    }
}

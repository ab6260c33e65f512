using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Care;

/// <summary>A weak newborn is for the vet at once (judgement, to be confirmed by a vet).</summary>
public sealed class WeakTests
{
    [Fact]
    public void Weak_is_for_the_vet_at_once_and_nothing_goes_in_by_mouth()
    {
        var yard = Born();
        var said = yard.Say("06:50", Some.Note(NoteTopics.Weak));

        var alarm = said.Should().ContainSingle().Which;
        alarm.Kind.Should().Be(PostKind.Alarm);
        alarm.Text.Should().StartWith("Vet now: Sage's baby is weak. Dry, warm, on its chest. Nothing by mouth unless it holds its head up and swallows; no sugar, bottle or tube without the vet.\nPhone 555 0134.");
    }

    [Theory]
    [InlineData("06:54", "late act")]
    [InlineData("06:55", "late vet")]
    public void A_head_that_is_not_up_is_act_in_the_first_quarter_of_an_hour(string at, string stands)
    {
        var yard = Born();
        yard.Say(at, Some.Note(NoteTopics.HeadDown));

        yard.Stands(CareTaskName.Weak, at).Should().Be(stands);
    }

    [Fact]
    public void It_is_act_only_where_it_is_the_only_sign()
    {
        var yard = Born();
        yard.Say("06:45", Some.Note(NoteTopics.Weak));
        yard.Say("06:50", Some.Note(NoteTopics.HeadDown));

        yard.Stands(CareTaskName.Weak, "06:50").Should().Be("late vet");
    }

    [Fact]
    public void Weakness_that_is_only_feared_raises_the_level_too()
    {
        var yard = Born();
        yard.Say("06:50", Some.Note(NoteTopics.Weak) with { Unsure = true });

        yard.Stands(CareTaskName.Weak, "06:50").Should().Be("late vet");
    }

    [Theory]
    [InlineData(FactKind.Standing)]
    [InlineData(FactKind.Nursing)]
    public void Up_or_nursing_ends_it(FactKind kind)
    {
        var yard = Born();
        yard.Say("06:50", Some.Note(NoteTopics.Weak));
        yard.Say("07:00", Some.Fact(kind) with { Unsure = true });
        yard.Stands(CareTaskName.Weak, "07:00").Should().Be("late vet", "a hedge ends nothing");
        yard.Say("07:05", Some.Fact(kind));
        yard.Stands(CareTaskName.Weak, "07:05").Should().Be("done fine");
    }

    [Fact]
    public void Up_but_weak_is_weak()
    {
        var yard = Born();
        yard.Say("06:50", Some.Fact(FactKind.Standing), Some.Note(NoteTopics.Weak));

        yard.Stands(CareTaskName.Weak, "06:50").Should().Be("late vet");
    }

    [Fact]
    public void Down_again_after_standing_begins_anew()
    {
        var yard = Born();
        yard.Say("06:50", Some.Note(NoteTopics.Weak));
        yard.Say("07:05", Some.Fact(FactKind.Standing));
        var said = yard.Say("08:00", Some.Note(NoteTopics.Weak));

        said.Should().ContainSingle(post => post.Kind == PostKind.Alarm);
    }

    [Fact]
    public void On_it_lasts_forty_minutes_as_at_any_vet_task()
    {
        var yard = Born();
        yard.Say("07:05", Some.Note(NoteTopics.Weak));
        yard.Tap("Ben", "07:06", CareTaskName.Weak, ButtonVerb.OnIt);
        yard.RunTo("07:47");

        yard.Told(CareTaskName.Weak).Should().Equal("18 07:05 late vet", "18 07:46 late vet");
    }

    private static Farmyard Born()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"), Some.Fact(FactKind.CordDry), Some.Done(CareTaskName.LookOver));
        return yard;
    }
}

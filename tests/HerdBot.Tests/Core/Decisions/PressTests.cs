using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Decisions;

/// <summary>What a button does: it records, and the post itself shows it.</summary>
public sealed class PressTests
{
    [Theory]
    [InlineData(CareTaskName.Standing, "07:10", FactKind.Standing)]
    [InlineData(CareTaskName.Nursing, "07:40", FactKind.Nursing)]
    [InlineData(CareTaskName.CordDip, "06:45", FactKind.CordDip)]
    [InlineData(CareTaskName.Meconium, "18:40", FactKind.Meconium)]
    [InlineData(CareTaskName.Urine, "18:40", FactKind.Urine)]
    [InlineData(CareTaskName.LookOver, "06:45", FactKind.Done)]
    public void Done_records_the_tasks_own_kind(CareTaskName task, string at, FactKind kind)
    {
        var yard = Born();
        yard.RunTo(at);
        var said = yard.Tap("Ben", at, task, ButtonVerb.Done);

        yard.State.Records[^1].Should().Match<HerdBot.Core.Herd.HerdRecord>(record => record.Fact.Kind == kind && record.By == "Ben" && record.Animal == yard.State.Newborns[0].Id && record.At == yard.At(at));
        yard.State.Records[^1].Fact.Task.Should().Be(kind == FactKind.Done ? CareTaskWords.Word(task) : null);
        said.Should().ContainSingle().Which.Kind.Should().Be(PostKind.Edit);
    }

    [Fact]
    public void A_placenta_button_records_the_dams()
    {
        var yard = Born();
        yard.RunTo("08:40");
        yard.Tap("Ben", "08:41", CareTaskName.Placenta, ButtonVerb.Done, "Sage");

        yard.State.Records[^1].Fact.Should().Match<Fact>(fact => fact.Kind == FactKind.Placenta && fact.Animal == "Sage");
    }

    [Theory]
    [InlineData(CareTaskName.Temperature, "06:55")]
    [InlineData(CareTaskName.Weight, "07:40")]
    public void The_first_button_of_a_reading_is_on_it_for_only_a_figure_answers_it(CareTaskName task, string at)
    {
        var yard = Born();
        yard.RunTo(at);
        var told = yard.PlanAt(at).Single(open => open.Key.Name == task && open.OpenAt(yard.Now));

        new HerdBot.Core.Decisions.Draft(yard.State, yard.Farm, yard.Now).Buttons([told], mends: false).Select(button => button.Label).Should().Equal("On it", "Not yet");
        yard.Tap("Ben", at, task, ButtonVerb.Done);
        yard.State.Records[^1].Fact.Kind.Should().Be(FactKind.Claim);
    }

    [Fact]
    public void The_post_shows_who_took_it_on_and_keeps_its_buttons()
    {
        var yard = Born(Some.Done(CareTaskName.LookOver), Some.Fact(FactKind.CordDip), Some.Temperature(100.5));
        yard.RunTo("07:10");
        var said = yard.Tap("Ben", "07:11", CareTaskName.Standing, ButtonVerb.OnIt);

        said[0].Text.Should().EndWith("\nBen is on it, 7:11.");
        said[0].Buttons.Select(button => button.Label).Should().Equal("Standing", "Not yet", "On it");
        yard.Tap("Ben", "07:14", CareTaskName.Standing, ButtonVerb.NotYet)[0].Text.Should().EndWith("\nBen is on it, 7:11.\nBen: not yet, 7:14.");
    }

    [Fact]
    public void A_press_on_what_is_done_says_who_and_when_and_records_nothing()
    {
        var yard = Born(Some.Done(CareTaskName.LookOver), Some.Fact(FactKind.CordDip), Some.Temperature(100.5));
        yard.RunTo("07:10");
        yard.SayBy("Cleo", "07:12", "up", null, Some.Fact(FactKind.Standing));
        var records = yard.State.Records.Count;
        var said = yard.Tap("Ben", "07:15", CareTaskName.Standing, ButtonVerb.Done);

        yard.State.Records.Should().HaveCount(records);
        said.Should().ContainSingle().Which.Text.Should().EndWith("Already done: Cleo, 7:12.");
        said[0].Buttons.Should().BeEmpty();
    }

    [Fact]
    public void The_same_press_twice_says_it_once()
    {
        var yard = Born(Some.Done(CareTaskName.LookOver), Some.Fact(FactKind.CordDip), Some.Temperature(100.5));
        yard.RunTo("07:10");
        yard.Tap("Ben", "07:15", CareTaskName.Standing, ButtonVerb.Done);
        var again = yard.Tap("Ben", "07:15", CareTaskName.Standing, ButtonVerb.Done);

        yard.State.Records.Count(record => record.Fact.Kind == FactKind.Standing).Should().Be(1);
        again.Sum(post => post.Text.Split('\n').Count(line => line.StartsWith("Already done"))).Should().BeLessThanOrEqualTo(1);
    }

    [Fact]
    public void When_the_first_of_several_is_done_the_buttons_answer_the_next()
    {
        var yard = Born(Some.Temperature(100.5));
        yard.RunTo("08:40");
        var post = yard.Posts.Last(post => post.Kind == PostKind.Alarm);
        var first = post.Tasks[0].Key.Name;
        var shown = yard.Tap("Ben", "08:41", first, ButtonVerb.Done)[^1];

        shown.Buttons.Should().NotBeEmpty();
        shown.Buttons.Should().OnlyContain(button => yard.Posts.Single(one => one.Number == shown.Edits).Tasks[button.Index].Key.Name != first);
    }

    [Theory]
    [InlineData(999, 0)]
    [InlineData(1, 99)]
    [InlineData(1, -1)]
    public void A_press_under_a_post_that_nobody_knows_does_nothing(int post, int index)
    {
        var yard = Born();
        var records = yard.State.Records;

        yard.Take(HerdBot.Core.Decisions.Press.Button(yard.State, yard.Farm, yard.Now, "Ben", post, ButtonVerb.Done, index)).Should().BeEmpty();
        yard.State.Records.Should().Equal(records);
    }

    private static Farmyard Born(params Fact[] besides)
    {
        var yard = new Farmyard();
        yard.Say("06:45", [Some.Birth("06:40"), .. besides]);
        return yard;
    }
}

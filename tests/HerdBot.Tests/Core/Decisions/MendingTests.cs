using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Decisions;

/// <summary>Corrections, undo and edits, in the words people write.</summary>
public sealed class MendingTests
{
    [Fact]
    public void A_corrected_figure_takes_the_place_of_the_first_and_the_receipt_says_both()
    {
        var yard = Born();
        yard.Write("Ana", "07:05", "temp 98.2");
        var said = yard.Write("Ana", "07:07", "no, 99.2");

        Only(yard, FactKind.Temperature).Fact.Value.Should().Be(99.2m);
        said.Should().ContainSingle().Which.Text.Should().StartWith("Mended: Sage's baby 99.2 °F, was 98.2 °F.");
    }

    [Fact]
    public void A_correction_to_a_worse_figure_says_what_to_do_now()
    {
        var yard = Born();
        yard.Write("Ana", "07:05", "temp 99.2");
        var said = yard.Write("Ana", "07:07", "no, 96.2");

        yard.Stands(CareTaskName.Warm, "07:07").Should().Be("asked act");
        said.Should().ContainSingle().Which.Text.Should().Contain("Mended: Sage's baby 96.2 °F, was 99.2 °F.").And.Contain("Cold. Dry, shelter, heat the trunk");
    }

    [Fact]
    public void A_correction_that_ends_the_danger_ends_the_alarm()
    {
        var yard = Born();
        yard.Write("Ana", "07:05", "temp 89.2");
        yard.Write("Ana", "07:07", "no, 99.2");
        yard.RunTo("07:30");

        yard.Posts.Where(post => post.At > yard.At("07:07")).Should().NotContain(post => post.Kind == PostKind.Alarm);
    }

    [Theory]
    [InlineData("that was Fern's baby")]
    [InlineData("sorry, Fern's baby")]
    public void A_record_goes_over_to_another_animal(string words)
    {
        var yard = Born();
        yard.Say("07:01", Some.Birth("07:00", "Fern"));
        yard.Write("Ana", "07:05", "Sage's baby temp 100.4");
        yard.Write("Ana", "07:07", words);

        Only(yard, FactKind.Temperature).Animal.Should().Be(yard.State.Named("Fern's baby")!.Id);
    }

    [Fact]
    public void Sex_and_time_of_a_birth_can_be_mended()
    {
        var yard = new Farmyard();
        yard.Write("Ana", "06:45", "Sage had a girl 6:40");
        yard.Write("Ana", "06:50", "actually it's a boy");
        yard.State.Newborns.Single().Sex.Should().Be(Sex.Male);
        yard.Write("Ana", "06:52", "sorry, it was 6:20");

        yard.State.Newborns.Single().Born.Should().Be(yard.At("06:20"));
        yard.Stands(CareTaskName.Standing, "06:52").Should().Be("asked fine");
    }

    [Fact]
    public void A_unit_can_be_mended()
    {
        var yard = Born();
        yard.Write("Ana", "07:05", "weighs 10.4 lb");
        yard.Write("Ana", "07:06", "oops kg not lb");

        Only(yard, FactKind.Weight).Fact.Should().Match<Fact>(fact => fact.Value == 10.4m && fact.Unit == FactUnit.Kg);
    }

    [Fact]
    public void Scratch_that_takes_ones_own_last_message_back_with_all_it_said()
    {
        var yard = Born();
        yard.Write("Ben", "07:05", "temp 100.4");
        yard.Write("Ana", "07:06", "Sage's baby nursing and weighs 23 lb");
        var said = yard.Write("Ana", "07:07", "scratch that");

        yard.State.Records.Where(record => record.Withdrawn).Select(record => record.Fact.Kind).Should().BeEquivalentTo([FactKind.Nursing, FactKind.Weight]);
        Only(yard, FactKind.Temperature).By.Should().Be("Ben");
        said.Should().ContainSingle().Which.Text.Should().StartWith("Taken back: ");
        yard.Stands(CareTaskName.Nursing, "07:40").Should().Be("asked fine");
    }

    [Fact]
    public void Undo_with_nothing_to_take_back_says_so()
    {
        var yard = Born();

        yard.Write("Cleo", "07:07", "/undo").Should().ContainSingle().Which.Text.Should().Be("There is nothing of yours to take back.");
    }

    [Fact]
    public void A_birth_that_is_taken_back_takes_its_plan_along()
    {
        var yard = new Farmyard();
        yard.Write("Ana", "06:45", "Sage had a girl 6:40, 24 lb");
        yard.Write("Ana", "06:46", "scratch that");

        yard.State.Newborns.Should().BeEmpty();
        yard.PlanAt("08:00").Should().BeEmpty();
        yard.RunTo("12:00");
        yard.Posts.Should().OnlyContain(post => post.At <= yard.At("06:46"));
    }

    [Fact]
    public void An_edited_message_mends_what_changed_records_what_is_new_and_takes_back_what_is_gone()
    {
        var yard = new Farmyard();
        yard.Write("Ana", "06:45", "Sage had a girl 6:40, 24 lb");
        yard.Edit("Ana", "06:50", "Sage had a girl 6:40, 25 lb");
        Only(yard, FactKind.Weight).Fact.Value.Should().Be(25);
        yard.State.Newborns.Should().ContainSingle();

        yard.Edit("Ana", "06:52", "Sage had a girl 6:40, 25 lb, nursing");
        Only(yard, FactKind.Nursing).Animal.Should().Be(yard.State.Newborns[0].Id);

        yard.Edit("Ana", "06:54", "Sage had a girl 6:40, nursing");
        yard.State.Records.Where(record => record.Fact.Kind == FactKind.Weight).Should().OnlyContain(record => record.Withdrawn);
        yard.State.Newborns.Should().ContainSingle();
    }

    [Fact]
    public void An_edit_that_changes_no_fact_says_nothing()
    {
        var yard = new Farmyard();
        yard.Write("Ana", "06:45", "Sage had a girl 6:40, 24 lb");
        var records = yard.State.Records;

        yard.Edit("Ana", "06:50", "Sage had a girl 6:40, 24 lb").Should().BeEmpty();
        yard.Edit("Ana", "06:51", "Sage had a girl at 6:40, 24 lb!").Should().BeEmpty();
        yard.State.Records.Should().Equal(records);
    }

    [Fact]
    public void An_edit_of_another_hour_does_not_move_what_was_said_without_a_time()
    {
        var yard = Born();
        yard.Write("Ana", "07:05", "temp 100.4");
        yard.Edit("Ana", "08:30", "temp 100.6");

        Only(yard, FactKind.Temperature).Should().Match<HerdRecord>(record => record.At == yard.At("07:05") && record.Fact.Value == 100.6m);
    }

    [Fact]
    public void An_edit_that_brings_a_danger_says_what_to_do_now()
    {
        var yard = Born();
        yard.Write("Ana", "07:05", "temp 99.4");
        var said = yard.Edit("Ana", "07:08", "temp 94.4");

        said.Should().ContainSingle().Which.Should().Match<Post>(post => post.Kind == PostKind.Alarm && post.Text.Contains("very cold"));
    }

    [Fact]
    public void The_old_words_stay_in_the_history()
    {
        var yard = Born();
        yard.Write("Ana", "07:05", "temp 98.2");
        yard.Write("Ana", "07:07", "no, 99.2");

        yard.State.Records.Count(record => record.Fact.Kind == FactKind.Temperature).Should().Be(1, "the correction amends, the event log keeps both");
    }

    private static HerdRecord Only(Farmyard yard, FactKind kind) =>
        yard.State.Records.Where(record => record.Fact.Kind == kind && !record.Withdrawn).Should().ContainSingle().Which;

    private static Farmyard Born()
    {
        var yard = new Farmyard(null, "05:00", Some.Dam("Sage"), Some.Dam("Fern"));
        yard.Say("06:45", Some.Birth("06:40"));
        return yard;
    }
}

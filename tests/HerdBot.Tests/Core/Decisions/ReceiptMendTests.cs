using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Decisions;

/// <summary>A receipt shows what was understood, and one tap under it mends what was not.</summary>
public sealed class ReceiptMendTests
{
    private const string Asked = "\nWhat was wrong? Answer this with the right words, like 'no, 99.2', 'it was Fern's', 'at 6:30'. Or:";

    [Fact]
    public void A_receipt_can_be_mended_beside_the_answers_to_what_it_asks()
    {
        var yard = Born(out var birth);

        Labels(birth).Should().Equal("Looked over", "On it", "Not right");
        Labels(Read(yard, "07:00", "temp 98.4")).Should().Equal("Warming", "On it", "Not right");
        Labels(yard.Posts.Last(post => post.Kind == PostKind.Reminder)).Should().Equal("On it", "Not yet");
    }

    [Fact]
    public void A_receipt_that_asks_nothing_can_be_mended_all_the_same()
    {
        var yard = Born(out _);
        var said = yard.SayBy("Ben", "06:50", "24", null, Some.Weight(24, FactUnit.Lb)).Should().ContainSingle().Which;

        said.Text.Should().StartWith("Sage's baby: 24 lb.");
        Labels(said).Should().Contain("Not right");
    }

    [Fact]
    public void The_tap_asks_what_was_wrong_and_records_nothing()
    {
        var yard = Born(out _);
        var receipt = Read(yard, "07:00", "temp 98.4");
        var records = yard.State.Records;

        var asked = Press(yard, "07:01", receipt, ButtonVerb.Mend);

        asked.Kind.Should().Be(PostKind.Edit);
        asked.Text.Should().Be(receipt.Text + Asked);
        Labels(asked).Should().Equal("Take it back", "It is right");
        yard.State.Records.Should().Equal(records);
    }

    [Theory]
    [InlineData("no, 99.2", 99.2)]
    [InlineData("99.2", 99.2)]
    [InlineData("it was 99.2", 99.2)]
    public void Words_in_answer_to_a_receipt_mend_what_that_receipt_states(string words, double value)
    {
        var yard = Born(out _);
        var receipt = Read(yard, "07:00", "temp 98.4");
        yard.SayBy("Cleo", "07:01", "9.8 kg", null, Some.Weight(9.8));
        Press(yard, "07:02", receipt, ButtonVerb.Mend);

        yard.Write("Ben", "07:03", words, receipt);

        yard.State.Records.Where(record => record.Fact.Kind == FactKind.Temperature && !record.Withdrawn).Select(record => record.Fact.Value).Last().Should().Be((decimal)value);
        yard.State.Records.Single(record => record.Fact.Kind == FactKind.Weight).Fact.Value.Should().Be(9.8m);
    }

    [Fact]
    public void A_second_tap_takes_back_all_that_the_receipt_states()
    {
        var yard = Born(out var birth);
        Press(yard, "06:46", birth, ButtonVerb.Mend);
        var taken = Press(yard, "06:47", birth, ButtonVerb.TakeBack);

        yard.State.Newborns.Should().BeEmpty();
        taken.Text.Should().Be(birth.Text + "\nTaken back: Sage's baby born 6:40. Ben, 6:47.");
        Labels(taken).Should().BeEmpty();
    }

    [Fact]
    public void What_is_right_after_all_stays_and_the_receipt_is_as_it_was()
    {
        var yard = Born(out var birth);
        Press(yard, "06:46", birth, ButtonVerb.Mend);
        var kept = Press(yard, "06:47", birth, ButtonVerb.Keep);

        kept.Text.Should().Be(birth.Text);
        Labels(kept).Should().Equal(Labels(birth));
        yard.State.Newborns.Should().ContainSingle();
    }

    [Fact]
    public void Under_what_was_taken_back_already_nothing_is_left_to_mend()
    {
        var yard = Born(out var birth);
        yard.Write("Ana", "06:46", "/undo");
        var shown = Press(yard, "06:47", birth, ButtonVerb.Mend);

        shown.Text.Should().Be(birth.Text);
        Labels(shown).Should().BeEmpty();
    }

    [Fact]
    public void An_answered_task_leaves_the_receipt_mendable()
    {
        var yard = Born(out _);
        var shown = yard.Tap("Ben", "06:46", CareTaskName.LookOver, ButtonVerb.Done)[^1];

        Labels(shown).Should().Equal("Dipped", "On it", "Not right");
    }

    private static Farmyard Born(out Post receipt)
    {
        var yard = new Farmyard();
        receipt = yard.Say("06:45", Some.Birth("06:40"))[0];
        return yard;
    }

    private static Post Read(Farmyard yard, string at, string words) => yard.Write("Ben", at, words)[^1];

    private static Post Press(Farmyard yard, string at, Post receipt, ButtonVerb verb)
    {
        yard.RunTo(at);
        return yard.Take(HerdBot.Core.Decisions.Press.Button(yard.State, yard.Farm, yard.Now, "Ben", receipt.Number, verb, 0)).Should().ContainSingle().Which;
    }

    private static IEnumerable<string> Labels(Post post) => post.Buttons.Select(button => button.Label);
}

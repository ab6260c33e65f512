using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Core.Reading;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Decisions;

/// <summary>A mark where nothing is left to say, else a receipt that says what was understood.</summary>
public sealed class ReceiptTests
{
    [Fact]
    public void A_birth_is_answered_with_what_was_understood_what_is_due_and_what_comes_next()
    {
        var yard = new Farmyard();

        var said = yard.Write("Ana", "06:52", "Sage had a girl 6:40, 24 lb");

        said.Should().ContainSingle().Which.Text.Should().Be("Sage's baby: girl, born 6:40, 24 lb.\nNow: look it over, dip the cord.\nNext: temperature 6:55, standing 7:10.");
        said[0].Kind.Should().Be(PostKind.Reply);
        said[0].Buttons.Select(button => button.Label).Should().Equal("Looked over", "On it", "Not right");
    }

    [Theory]
    [InlineData("nursing well")] // the only newborn there is
    [InlineData("Sage's baby is up")]
    [InlineData("temp 100.4")] // fits one scale alone
    public void A_mark_will_do_where_the_animal_is_beyond_doubt_and_nothing_is_new(string words)
    {
        var yard = Born();

        var said = yard.Write("Ana", "06:50", words);

        said.Should().ContainSingle().Which.Should().Match<Post>(post => post.Kind == PostKind.React && post.ReplyTo == "message 2");
    }

    [Fact]
    public void A_receipt_is_due_where_the_animal_had_to_be_guessed()
    {
        var yard = Born();
        yard.Say("06:46", Some.Birth("06:46", "Fern"), Some.Done(CareTaskName.LookOver, "Fern's baby"), Some.Fact(FactKind.CordDip, "Fern's baby"));

        var said = yard.SayBy("Ana", "06:50", "she is up", null, Some.Fact(FactKind.Standing, "Fern's baby"));

        said.Should().ContainSingle().Which.Should().Match<Post>(post => post.Kind == PostKind.Reply && post.Text.StartsWith("Fern's baby: up."));
    }

    [Fact]
    public void A_hedge_is_said_back_as_a_hedge()
    {
        var yard = Born();

        var said = yard.SayBy("Ana", "06:50", "I think she latched", null, Some.Fact(FactKind.Nursing) with { Unsure = true });

        said.Should().ContainSingle().Which.Text.Should().StartWith("Sage's baby: nursing, not sure.");
    }

    [Fact]
    public void A_small_one_is_said_to_be_at_risk()
    {
        var yard = Born();

        yard.Say("06:50", Some.Weight(6.5)).Should().ContainSingle().Which.Text.Should().Contain("small: at risk.");
    }

    [Fact]
    public void The_answer_to_a_placenta_asks_whether_it_is_whole()
    {
        var yard = Born();
        yard.Write("Ana", "07:50", "placenta out").Should().ContainSingle().Which.Text.Should().Contain("Gloves on, lay it out: is it whole?");
        yard = Born();
        yard.Write("Ana", "07:50", "placenta out, looks whole").SelectMany(post => post.Text.Split('\n')).Should().NotContain(line => line.Contains("is it whole?"));
        yard = Born();
        yard.Write("Ana", "07:50", "placenta out, looks torn")[0].Text.Should().Contain("phone the vet today: a piece may be left inside");
    }

    [Fact]
    public void Colostrum_is_counted_up()
    {
        var yard = Born();
        yard.Say("08:45", Some.Colostrum(200));

        yard.Say("09:45", Some.Colostrum(250)).Should().ContainSingle().Which.Text.Should().Contain("15 fl oz (450 ml) of 30 fl oz (900 ml) so far (weight assumed).");
    }

    [Fact]
    public void A_metric_farm_reads_its_own_units_and_clock()
    {
        var yard = new Farmyard(Some.Farm("Europe/Berlin") with { Units = UnitSystem.Metric, Dates = DateOrder.DayFirst });
        yard.Write("Ana", "14:45", "Sage had a boy 14:40, 10.4 kg").Should().ContainSingle().Which.Text.Should().Contain("boy, born 14:40, 10.4 kg");
        yard.Write("Ana", "15:00", "temp 36.0")[^1].Text.Should().Contain("36.0 °C").And.Contain("15:15");
        yard.Write("Ana", "15:15", "temp 36.5")[^1].Text.Should().Contain("Rising 2.0 °C an hour; 37.2 °C at about 15:36.");
    }

    [Fact]
    public void A_voice_note_is_asked_for_as_text_once_an_hour()
    {
        var yard = Born();
        IReadOnlyList<Post> Voice(string at)
        {
            yard.RunTo(at);
            return yard.Take(HerdBot.Core.Decisions.Hear.Wordless(yard.State, yard.Farm, yard.Now, "Ben", "m", "voice"));
        }

        Voice("08:00").Should().ContainSingle().Which.Text.Should().Be("I cannot listen or look. Please dictate it as text.");
        Voice("08:30").Should().BeEmpty();
        Voice("08:59").Should().BeEmpty();
        Voice("09:00").Should().ContainSingle();
    }

    [Theory]
    [InlineData("what's open", "Open:\nSage's baby: look it over, dip the cord")]
    [InlineData("/open", "Open:\nSage's baby: look it over, dip the cord")]
    [InlineData("when is Willow due?", "Willow: no mating on record, so no due date. Tell me 'bred Willow to … on …'.")]
    [InlineData("when is Sage due?", "Sage has had hers: Sage's baby, born 6:40.")]
    public void A_question_is_answered_over_the_records(string question, string answer)
    {
        var yard = Born(open: true);

        var said = yard.Write("Ben", "06:50", question);

        said.Should().ContainSingle().Which.Should().Match<Post>(post => post.Kind == PostKind.Answer && post.Text == answer);
    }

    [Fact]
    public void How_it_is_doing_tells_what_is_on_record_and_what_is_open()
    {
        var yard = Born(open: true);
        yard.Write("Ana", "07:05", "temp 100.4");

        yard.Write("Ben", "07:08", "how is Sage's baby?").Should().ContainSingle().Which.Text.Should().Be(
            "Sage's baby: born 6:40, 100.4 °F 7:05.\nOpen: look it over and dip the cord.");
    }

    [Fact]
    public void Help_is_one_answer()
    {
        var said = Born().Write("Ben", "06:50", "/help");

        said.Should().ContainSingle().Which.Text.Should().StartWith("Write as you always do:");
    }

    [Fact]
    public void Idle_talk_gets_no_answer_and_no_record()
    {
        var yard = Born();
        var records = yard.State.Records;

        yard.Write("Ben", "06:50", "lovely morning out here").Should().BeEmpty();
        yard.State.Records.Should().Equal(records);
    }

    private static Farmyard Born(bool open = false)
    {
        var yard = new Farmyard(null, "05:00", Some.Dam("Sage"), Some.Dam("Fern"), Some.Dam("Willow"));
        yard.Say("06:45", open ? [Some.Birth("06:40")] : [Some.Birth("06:40"), Some.Done(CareTaskName.LookOver), Some.Fact(FactKind.CordDip)]);
        return yard;
    }
}

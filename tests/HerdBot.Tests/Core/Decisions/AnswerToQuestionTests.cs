using FluentAssertions;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Decisions;

/// <summary>Questions of the bot's, answered in the words people type, by the real reader.</summary>
public sealed class AnswerToQuestionTests
{
    [Fact]
    public void A_bare_figure_answers_the_question_for_it()
    {
        var yard = TwoBorn();
        yard.SayBy("Ben", "07:00", "took its temp", Ask.Value, new Fact(FactKind.Temperature) { Animal = Some.Baby })[^1].Kind.Should().Be(PostKind.Ask);
        yard.Write("Ben", "07:01", "100.4");

        yard.State.Records.Where(record => record.Fact.Kind == FactKind.Temperature).Should().ContainSingle()
            .Which.Should().Match<HerdBot.Core.Herd.HerdRecord>(record => record.Fact.Value == 100.4m && record.Animal == yard.State.Named(Some.Baby)!.Id);
        yard.State.Questions.Should().BeEmpty();
    }

    [Fact]
    public void A_name_answers_the_question_which_animal()
    {
        var yard = TwoBorn();
        yard.Write("Ben", "07:00", "24 lb")[^1].Kind.Should().Be(PostKind.Ask);
        yard.Write("Ben", "07:01", "Fern's baby");

        yard.State.Records.Where(record => record.Fact.Kind == FactKind.Weight).Should().ContainSingle().Which.Animal.Should().Be(yard.State.Named("Fern's baby")!.Id);
    }

    [Theory]
    [InlineData("yes", true)]
    [InlineData("Yes.", true)]
    [InlineData("no", false)]
    public void Yes_or_no_typed_answers_as_the_buttons_do(string words, bool dead)
    {
        var yard = TwoBorn();
        yard.Write("Ben", "07:00", "Sage's baby died")[^1].Kind.Should().Be(PostKind.Ask);
        yard.Write("Ben", "07:01", words);

        yard.State.Records.Exists(record => record.Fact.Kind == FactKind.Death).Should().Be(dead);
    }

    [Theory]
    [InlineData("9:15", "09:15")]
    [InlineData("9:15 am.", "09:15")]
    [InlineData("9:45", "17 21:45")]
    [InlineData("9:15pm", "17 21:15")]
    public void A_clock_time_answers_the_question_when(string words, string at)
    {
        var yard = TwoBorn();
        yard.Say("09:30", Some.Fact(FactKind.Nursing, at: "11:30"))[^1].Kind.Should().Be(PostKind.Ask);
        yard.Write("Ben", "09:31", words);

        yard.State.Records[^1].Should().Match<HerdBot.Core.Herd.HerdRecord>(record => record.Fact.Kind == FactKind.Nursing && record.At == yard.At(at));
    }

    private static Farmyard TwoBorn()
    {
        var yard = new Farmyard(null, "05:00", Some.Dam("Sage"), Some.Dam("Fern"));
        yard.Say("06:45", Some.Birth("06:40"));
        yard.Say("06:50", Some.Birth("06:45", "Fern"));
        return yard;
    }
}

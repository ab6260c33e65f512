using FluentAssertions;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Decisions;

/// <summary>How things are done, asked in the chat and answered with a card, by the real reader.</summary>
public sealed class CardAnswerTests
{
    [Theory]
    [InlineData("how do I warm her?", "Warming a cold cria")]
    [InlineData("what goes in the kit?", "The birth kit")]
    [InlineData("coat or no coat?", "Coat or no coat?")]
    [InlineData("¿cómo la caliento?", "Warming a cold cria")]
    public void A_question_how_is_answered_with_a_card_and_nothing_is_recorded(string question, string title)
    {
        var yard = new Farmyard();

        var said = yard.Write("Ana", "06:00", question);

        said.Should().ContainSingle().Which.Should().Match<Post>(post => post.Kind == PostKind.Answer && post.Text.StartsWith(title));
        yard.State.Records.Should().BeEmpty();
    }

    [Fact]
    public void What_was_seen_is_recorded_and_the_question_beside_it_gets_its_card()
    {
        var yard = new Farmyard();
        yard.Say("06:00", Some.Birth("05:50"));

        var said = yard.Write("Ana", "06:30", "temp 97.8. how do I warm her?");

        said.Should().Contain(post => post.Text.StartsWith("Warming a cold cria"));
        yard.State.Records.Should().Contain(record => record.Fact.Kind == FactKind.Temperature && record.Fact.Value == 97.8m);
    }

    [Fact]
    public void What_no_card_knows_is_the_vets_to_say()
    {
        var yard = new Farmyard();

        yard.Write("Ana", "06:00", "how do I trim her toenails?").Should().ContainSingle().Which.Text.Should().StartWith("I have no card for that. Ask your vet.");
    }

    [Fact]
    public void A_question_about_an_animal_is_answered_about_the_animal()
    {
        var yard = new Farmyard();
        yard.Say("06:00", Some.Birth("05:50"));

        yard.Write("Ana", "06:30", "is Sage's baby nursing?").Should().ContainSingle().Which.Text.Should().StartWith("Sage's baby");
    }
}

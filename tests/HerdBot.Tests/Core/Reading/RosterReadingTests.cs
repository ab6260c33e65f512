using FluentAssertions;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using Xunit;

namespace HerdBot.Tests.Core.Reading;

/// <summary>Who joins the herd, who leaves it, and under which names.</summary>
public sealed class RosterReadingTests
{
    [Theory]
    [InlineData("we're calling Kestrel's baby Clover", "Kestrel's baby", "named", "Clover")]
    [InlineData("Kestrel's girl is Clover", "Kestrel's baby", "named", "Clover")]
    [InlineData("Clover is Kestrel's girl", "Kestrel's baby", "named", "Clover")]
    [InlineData("the girl is Clover", "Kestrel's baby", "named", "Clover")]
    [InlineData("her name is Luna Grande", "Kestrel's baby", "named", "Luna Grande")]
    [InlineData("new cria: Biscuit, Kestrel's girl", "Kestrel's baby", "named", "Biscuit")]
    [InlineData("se llama Coca", "Kestrel's baby", "named", "Coca")]
    [InlineData("a la cría de Kestrel le pusimos Coca", "Kestrel's baby", "named", "Coca")]
    [InlineData("we call Tansy Pinky", "Tansy", "nickname", "Pinky")]
    [InlineData("Tansy goes by Pinky", "Tansy", "nickname", "Pinky")]
    [InlineData("a Tansy le decimos Pinky", "Tansy", "nickname", "Pinky")]
    [InlineData("Tansy is now Tamsin", "Tansy", "renamed", "Tamsin")]
    [InlineData("renamed Tansy to Tamsin", "Tansy", "renamed", "Tamsin")]
    [InlineData("Tansy ahora se llama Tamsin", "Tansy", "renamed", "Tamsin")]
    public void A_name_is_given_so(string text, string animal, string field, string name)
    {
        var fact = SomeReading.Only(text);

        (fact.Kind, fact.Animal, fact.Field, fact.Name).Should().Be((FactKind.Roster, animal, field, name));
    }

    [Theory]
    [InlineData("Tansy is tag 14")]
    [InlineData("#14 is Tansy")]
    [InlineData("Tansy has ear tag 14")]
    [InlineData("put tag 14 on Tansy")]
    [InlineData("Tansy's tag is 14")]
    [InlineData("Tansy tiene la caravana 14")]
    public void A_tag_is_given_so_and_its_number_is_no_weight(string text)
    {
        var fact = SomeReading.Only(text);

        (fact.Kind, fact.Animal, fact.Field, fact.Traits?.Tag).Should().Be((FactKind.Roster, "Tansy", RosterWords.Tag, "14"));
    }

    [Theory]
    [InlineData("Sold Barley, he leaves Saturday", "sold")]
    [InlineData("vendimos a Barley", "sold")]
    [InlineData("Barley went back to his owner", "gone")]
    public void One_that_leaves_is_told_so(string text, string field) => SomeReading.Only(text).Should().Match<Fact>(fact => fact.Kind == FactKind.Roster && fact.Animal == "Barley" && fact.Field == field);

    [Theory]
    [InlineData("we bought a dam called Hazel, alpaca, brown", "Hazel", HerdRole.Dam, Species.Alpaca, "brown", null)]
    [InlineData("new llama: Luna", "Luna", null, Species.Llama, null, null)]
    [InlineData("llama nueva: Luna", "Luna", null, null, null, null)]
    [InlineData("bought a new stud, Atlas", "Atlas", HerdRole.Sire, null, null, null)]
    [InlineData("welcome Pepper, our new herdsire", "Pepper", HerdRole.Sire, null, null, null)]
    [InlineData("got a new weanling: Maple, fawn, tag 31", "Maple", HerdRole.Young, null, "fawn", "31")]
    public void A_newcomer_is_told_with_what_is_said_of_it(string text, string name, HerdRole? role, Species? species, string? colour, string? tag)
    {
        var fact = SomeReading.Only(text);

        (fact.Kind, fact.Animal, fact.Name, fact.Field).Should().Be((FactKind.Roster, name, name, RosterWords.Added));
        fact.Traits.Should().Be(new AnimalTraits(role, species, colour, tag));
    }

    [Fact]
    public void A_cria_that_nobody_saw_born_joins_with_its_dam_and_sex()
    {
        var fact = SomeReading.Only("new cria: Biscuit, Tansy's girl");

        (fact.Animal, fact.Sex, fact.Traits).Should().Be(("Biscuit", Sex.Female, new AnimalTraits(HerdRole.Young, Dam: "Tansy")));
    }

    [Fact]
    public void Several_newcomers_are_each_told() =>
        Reader.Read("we bought two females, Nova and Stella", SomeReading.Context()).Facts.Select(fact => fact.Name).Should().Equal("Nova", "Stella");

    [Fact]
    public void What_else_the_message_says_is_of_the_one_that_was_named_in_it()
    {
        var facts = Reader.Read("Kestrel's girl is Clover, 24 lb", SomeReading.Context()).Facts;

        facts.Select(fact => (fact.Kind, fact.Animal)).Should().Equal((FactKind.Roster, "Kestrel's baby"), (FactKind.Weight, "Kestrel's baby"));
    }

    [Theory]
    [InlineData("picked up a new halter from Jeffers")]
    [InlineData("bought a female from Hillcrest farm")]
    [InlineData("bought hay from Miller, two bales")]
    [InlineData("bought a new thermometer for the girls, a Vicks")]
    [InlineData("might sell Barley")]
    [InlineData("Barley isn't sold yet")]
    [InlineData("Tansy 14 lb")]
    [InlineData("Kestrel's girl is nursing")]
    [InlineData("New cria, Tansy")]
    public void Other_words_change_nothing_in_the_list(string text) =>
        Reader.Read(text, SomeReading.Context()).Facts.Should().NotContain(fact => fact.Kind == FactKind.Roster);

    [Theory]
    [InlineData("luna's water broke")]
    [InlineData("Luna's water broke")]
    [InlineData("Luna water broke")]
    public void A_name_that_two_bear_in_part_is_asked_for(string text)
    {
        var context = With(new HerdEntry("Luna Grande", HerdRole.Dam), new HerdEntry("Luna Chica", HerdRole.Dam));

        var reading = Reader.Read(text, context);

        reading.Ask.Should().Be(Ask.Animal);
        reading.Facts.Should().ContainSingle().Which.Should().Match<Fact>(fact => fact.Animal == Fact.AskAnimal && string.Equals(fact.Name, "luna", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void A_part_of_a_name_is_enough_where_one_alone_bears_it() =>
        SomeReading.Only("Luna's water broke", With(new HerdEntry("Luna Grande", HerdRole.Dam))).Animal.Should().Be("Luna Grande");

    [Fact]
    public void Two_of_one_name_are_asked_for() =>
        Reader.Read("Luna's water broke", With(new HerdEntry("Luna", HerdRole.Dam), new HerdEntry("Luna", HerdRole.Dam))).Ask.Should().Be(Ask.Animal);

    [Fact]
    public void One_that_is_here_is_meant_before_one_of_the_name_that_has_left() =>
        SomeReading.Only("Luna's water broke", With(new HerdEntry("Luna", HerdRole.Sire) { State = HerdEntryState.Sold }, new HerdEntry("Luna", HerdRole.Dam))).Animal.Should().Be("Luna");

    [Theory]
    [InlineData("Juni's water broke")]
    [InlineData("juni water broke")]
    [InlineData("Junni's water broke")]
    public void A_nickname_is_the_animal(string text) => SomeReading.Only(text, With(new HerdEntry("Juniper", HerdRole.Dam) { OtherNames = ["Juni"] })).Animal.Should().Be("Juniper");

    private static ReadingContext With(params HerdEntry[] more)
    {
        var context = SomeReading.Context();
        return context with { Herd = [.. context.Herd, .. more] };
    }
}

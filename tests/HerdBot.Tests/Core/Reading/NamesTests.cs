using FluentAssertions;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading;
using Xunit;

namespace HerdBot.Tests.Core.Reading;

public sealed class NamesTests
{
    [Theory]
    [InlineData("Tansy's water broke")]
    [InlineData("tansy's water broke")]
    [InlineData("TANSY water broke")]
    [InlineData("Tanzy's water broke")]
    [InlineData("Tasny's water broke")]
    [InlineData("Tannsy water broke")]
    [InlineData("Tans’y water broke")]
    public void A_name_is_found_with_a_slip_of_the_thumb(string text) => SomeReading.Only(text).Animal.Should().Be("Tansy");

    [Theory]
    [InlineData("Kestrel's baby is nursing")]
    [InlineData("Kestrels baby is nursing")]
    [InlineData("Kestrel's is nursing")]
    [InlineData("Kestrel's little girl is nursing")]
    [InlineData("the girl is nursing")]
    [InlineData("she is nursing")]
    [InlineData("Kestrel nursing well")]
    [InlineData("la cría de Kestrel está mamando")]
    public void A_newborn_is_found_however_it_is_named(string text) => SomeReading.Only(text).Animal.Should().Be("Kestrel's baby");

    [Theory]
    [InlineData("Two Stones is in labor", "Two Stones")]
    [InlineData("May is in labor", "May")]
    [InlineData("may's water broke", "May")]
    public void A_name_that_is_a_word_is_a_name_where_it_stands_as_one(string text, string name) => SomeReading.Only(text).Animal.Should().Be(name);

    [Theory]
    [InlineData("may be a while yet")]
    [InlineData("shearing in May, 2 pm I think")]
    public void A_word_that_is_a_name_elsewhere_is_no_animal(string text) =>
        Reader.Read(text, SomeReading.Context()).Facts.Should().NotContain(fact => fact.Animal == "May");

    [Fact]
    public void An_animal_the_herd_does_not_know_is_asked_for_and_its_name_kept()
    {
        var reading = Reader.Read("Juniper had a boy", SomeReading.Context());

        reading.Ask.Should().Be(Ask.Animal);
        reading.Facts.Should().ContainSingle().Which.Should().Be(new Fact(FactKind.Birth) { Animal = Fact.AskAnimal, Sex = Sex.Male, Name = "Juniper" });
    }
}

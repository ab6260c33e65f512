using FluentAssertions;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading;
using Xunit;

namespace HerdBot.Tests.Core.Reading;

/// <summary>What a wrong reading would make grave: who died, and figures that are not an animal's.</summary>
public sealed class GraveReadingTests
{
    [Theory]
    [InlineData("Kestrel lost her baby", "Kestrel's baby")]
    [InlineData("Kestrel lost her cria", "Kestrel's baby")]
    [InlineData("Tansy lost her baby last night", "Tansy's baby")]
    [InlineData("lost Kestrel this morning", "Kestrel")]
    public void Who_was_lost_is_who_died_and_it_is_asked_first(string text, string animal)
    {
        var reading = Reader.Read(text, SomeReading.Context());

        reading.Facts.Should().ContainSingle().Which.Should().Match<Fact>(fact => fact.Kind == FactKind.Death && fact.Animal == animal);
        reading.Ask.Should().Be(Ask.Sure);
    }

    [Theory]
    [InlineData("IgG 12 g/L", 1200)]
    [InlineData("igg: 9.5 g/l", 950)]
    [InlineData("igg 12 g / L", 1200)]
    public void Grams_a_litre_are_no_weight(string text, decimal milligramsADecilitre) =>
        SomeReading.Only(text).Should().Match<Fact>(fact => fact.Kind == FactKind.Igg && fact.Value == milligramsADecilitre && fact.Unit == FactUnit.MgPerDl);

    [Theory]
    [InlineData("its 20F out")]
    [InlineData("it's 20 F out there")]
    [InlineData("95F out today")]
    public void What_it_is_out_is_the_weather(string text) => SomeReading.Only(text).Kind.Should().Be(FactKind.Weather);

    [Theory]
    [InlineData("la cría de Kestrel 38,2 C", FactKind.Temperature, FactUnit.C)]
    [InlineData("la cría de Kestrel 100.4 F", FactKind.Temperature, FactUnit.F)]
    [InlineData("la cría de Kestrel pesó 22 lb", FactKind.Weight, FactUnit.Lb)]
    [InlineData("la cría de Kestrel tomó 4 oz", FactKind.Feed, FactUnit.Oz)]
    public void Units_are_the_same_in_Spanish(string text, FactKind kind, FactUnit unit) =>
        SomeReading.Only(text).Should().Match<Fact>(fact => fact.Kind == kind && fact.Unit == unit && fact.Animal == "Kestrel's baby");
}

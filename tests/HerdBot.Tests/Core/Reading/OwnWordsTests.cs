using FluentAssertions;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading;
using Xunit;

namespace HerdBot.Tests.Core.Reading;

/// <summary>Words that only this farm says.</summary>
public sealed class OwnWordsTests
{
    private static readonly Dictionary<string, string> Farm = new() { ["slurpy"] = "nursing", ["purple stuff"] = "cord_dip", ["a los saltos"] = "standing", ["la corona"] = "placenta" };

    [Theory]
    [InlineData("Kestrel's baby is slurpy", FactKind.Nursing)]
    [InlineData("SLURPY, the girl", FactKind.Nursing)]
    [InlineData("purple stuff on Kestrel's girl", FactKind.CordDip)]
    [InlineData("la cría de Kestrel anda a los saltos", FactKind.Standing)]
    [InlineData("Kestrel pasó la corona", FactKind.Placenta)]
    public void A_word_of_the_farms_own_means_what_the_farm_says(string text, FactKind kind)
    {
        Reader.Read(text, SomeReading.Context()).Facts.Should().NotContain(fact => fact.Kind == kind);

        Reader.Read(text, SomeReading.Context() with { Words = Words(Farm) }).Facts.Should().ContainSingle(fact => fact.Kind == kind);
    }

    [Fact]
    public void It_is_denied_like_any_word() =>
        Reader.Read("not slurpy yet", SomeReading.Context() with { Words = Words(Farm) }).Facts.Should().ContainSingle().Which.Should().Match<Fact>(fact => fact.Kind == FactKind.Nursing && fact.Neg);

    [Theory]
    [InlineData("slurpy", "nursin", "'slurpy' is to mean 'nursin', which is no meaning; there are *nursing*")]
    [InlineData("up", "nursing", "'up' is to mean 'nursing', but it means 'standing' already")]
    [InlineData("mamando", "urine", "'mamando' is to mean 'urine', but it means 'nursing' already")]
    [InlineData("twenty", "urine", "'twenty' is to mean 'urine', but it means 'number' already")]
    [InlineData("Kestrel", "urine", "'Kestrel' is an animal's name")]
    [InlineData("a b c d e f", "urine", "'a b c d e f' must be one to five words")]
    [InlineData("", "urine", "'' must be one to five words")]
    [InlineData("4 5", "urine", "'4 5' must be one to five words")]
    public void A_word_that_cannot_stand_is_told_with_its_reason(string word, string meaning, string problem)
    {
        var (words, problems) = OwnWords.Read(new Dictionary<string, string> { [word] = meaning }, ["kestrel"]);

        words.Should().BeNull();
        problems.Should().ContainSingle().Which.Should().Match(problem);
    }

    [Fact]
    public void A_word_that_means_the_same_already_does_no_harm() => OwnWords.Read(new Dictionary<string, string> { ["nursing"] = "nursing" }, []).Problems.Should().BeEmpty();

    [Fact]
    public void Every_meaning_can_be_given_a_word() =>
        OwnWords.Read(OwnWords.Meanings.ToDictionary(meaning => "zz" + meaning.Replace("_", "", StringComparison.Ordinal), meaning => meaning), []).Problems.Should().BeEmpty();

    private static OwnWords Words(Dictionary<string, string> words) => OwnWords.Read(words, []).Words!;
}

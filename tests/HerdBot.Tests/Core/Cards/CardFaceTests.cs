using System.Text.RegularExpressions;
using FluentAssertions;
using HerdBot.Core.Cards;
using HerdBot.Core.Reading;
using HerdBot.Core.Wording;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Cards;

/// <summary>Cards as the chat shows them: short, with their caution and sources, in the farm's units, and without a dose.</summary>
public sealed class CardFaceTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 4, 18, 13, 0);

    public static TheoryData<string> Ids => new(CardBox.Default.Cards.Select(card => card.Id));

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_card_has_at_most_ninety_words_a_caution_and_a_source(string id)
    {
        var card = Card(id);
        card.Sources.Should().NotBeNullOrWhiteSpace();
        foreach (var text in new[] { card.English, card.Spanish })
        {
            $"{text.Title} {text.Text} {text.Caution}".Split(' ').Should().HaveCountLessThanOrEqualTo(90);
            text.Caution.Should().NotBeNullOrWhiteSpace();
            text.Words.Should().NotBeEmpty();
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_figure_is_filled_in_for_each_farm(string id)
    {
        foreach (var units in Enum.GetValues<UnitSystem>())
        {
            foreach (var language in Enum.GetValues<Language>())
            {
                Shown(id, units, language).Should().NotContainAny("{", "}");
            }
        }
    }

    [Fact]
    public void Figures_are_the_care_tables_in_the_farms_units()
    {
        Shown("warming", UnitSystem.Us).Should().Contain("Read every 15 min; no strong heat over 99.5 °F");
        Shown("warming", UnitSystem.Metric).Should().Contain("no strong heat over 37.5 °C");
        Shown("weight", UnitSystem.Us).Should().Contain("llama 20 lb to 33 lb, alpaca 15 lb to 24 lb").And.Contain("llama 0.55 lb to 1.10 lb");
        Shown("weight", UnitSystem.Metric).Should().Contain("alpaca 7 kg to 11 kg").And.Contain("alpaca 100 g to 250 g");
    }

    [Fact]
    public void The_card_on_the_vet_says_whom_to_phone() => Shown("vet", UnitSystem.Us).Should().Contain("555 0134");

    [Theory]
    [MemberData(nameof(Ids))]
    public void No_card_holds_a_dose(string id)
    {
        // Amounts may stand there for milk, colostrum, a disinfectant's strength, blood antibodies, weight, temperature, length and time.
        foreach (var language in Enum.GetValues<Language>())
        {
            var text = Shown(id, UnitSystem.Metric, language);
            Regex.Matches(text, @"\d[\d.,]*\s*(ml|cc|mg/dL|mg|mcg|iu|ui|drops?|gotas?|tablets?|units?|unidades)\b[^.;:]*", RegexOptions.IgnoreCase)
                .Select(match => match.Value).Where(amount => !Regex.IsMatch(amount, "^[0-9.,]+ ml (per|por) kg|^200 ml'|^[0-9.,]+ mg/dL"))
                .Should().BeEmpty();
            text.Should().NotMatchRegex(@"(?i)\b(inject|inyect|banamine|oxytocin|oxitocina|penicillin|penicilina|glucose|glucosa|syrup)\w*");
        }
    }

    private static Card Card(string id) => CardBox.Default.Cards.First(card => card.Id == id);

    private static string Shown(string id, UnitSystem units, Language language = Language.English) =>
        CardFace.Show(Card(id), new Speaker(new Farmyard().Farm with { Units = units, Language = language }, Now), "Phone 555 0134.");
}

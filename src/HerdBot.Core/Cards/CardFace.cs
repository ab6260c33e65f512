using System.Globalization;
using System.Text.RegularExpressions;
using HerdBot.Core.Care;
using HerdBot.Core.Reading;
using HerdBot.Core.Wording;
using NodaTime;

namespace HerdBot.Core.Cards;

/// <summary>Shows a card as the farm has it: its language, its units, its vet's numbers.</summary>
internal static partial class CardFace
{
    /// <summary>The card as one message.</summary>
    /// <param name="card">The card.</param>
    /// <param name="speaker">Says figures as the farm has them.</param>
    /// <param name="phone">The line with the vet's number.</param>
    public static string Show(Card card, Speaker speaker, string phone)
    {
        var text = speaker.Farm.Language == Language.Spanish ? card.Spanish : card.English;
        string Filled(string words) => Blank().Replace(words, blank => Figure(blank.Groups[1].Value, speaker, phone));
        return string.Join("\n", text.Title, Filled(text.Text), speaker.Phrases.Say("card.caution", ("caution", Filled(text.Caution))), speaker.Phrases.Say("card.sources", ("sources", card.Sources)));
    }

    private static string Figure(string blank, Speaker speaker, string phone) => blank.Split(' ') switch
    {
        ["phone"] => phone,
        ["kg", var kilograms] => Weight(decimal.Parse(kilograms, CultureInfo.InvariantCulture) * 1000, 0, speaker),
        ["g", var grams] => Weight(decimal.Parse(grams, CultureInfo.InvariantCulture), 2, speaker),
        _ => Number(CareKeys.All.First(key => key.Name == blank), speaker),
    };

    private static string Number(CareKey key, Speaker speaker)
    {
        var value = (speaker.Farm.TableOf(speaker.Farm.Species) ?? speaker.Farm.Tables.Values.First()).Number(key);
        return key.Unit switch
        {
            CareUnit.Minutes => speaker.Age(Duration.FromMinutes((double)value)),
            CareUnit.Hours => speaker.Age(Duration.FromHours((double)value)),
            CareUnit.Fahrenheit => speaker.Temperature(value),
            CareUnit.HourOfDay => speaker.Clock(speaker.Farm.Clock.At(speaker.Farm.Clock.Day(speaker.Now), new LocalTime((int)value, 0))),
            CareUnit.Percent => $"{speaker.Figure(value, 0)} %",
            _ => speaker.Figure(value, 0),
        };
    }

    private static string Weight(decimal grams, int poundDecimals, Speaker speaker) => speaker.Farm.Units == UnitSystem.Us
        ? $"{speaker.Figure(grams / Measures.GramsInPound, poundDecimals)} lb"
        : grams >= 1000 ? $"{speaker.Figure(grams / 1000, 0)} kg" : $"{speaker.Figure(grams, 0)} g";

    [GeneratedRegex(@"\{([^}]+)\}")]
    private static partial Regex Blank();
}

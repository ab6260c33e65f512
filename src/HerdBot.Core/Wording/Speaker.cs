using System.Globalization;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using HerdBot.Core.Reading.Lexicon;
using NodaTime;

namespace HerdBot.Core.Wording;

/// <summary>Says times, ages, figures and animals' names as the farm has them.</summary>
/// <param name="Farm">The farm.</param>
/// <param name="Now">What "today" and "ago" run from.</param>
public sealed record Speaker(Farm Farm, Instant Now)
{
    /// <summary>The farm's phrases.</summary>
    public Phrases Phrases { get; } = Phrases.Of(Farm.Language);

    /// <summary>"6:40" or "6:40 pm" on a US farm, "06:40" and "18:40" elsewhere; with the day where it is not today's.</summary>
    public string Clock(Instant at)
    {
        var local = Farm.Clock.Local(at);
        var time = Farm.Units == UnitSystem.Us
            ? local.ToString(local.Hour < 12 ? "h:mm" : "h:mm 'pm'", CultureInfo.InvariantCulture)
            : local.ToString("HH:mm", CultureInfo.InvariantCulture);
        var days = Period.DaysBetween(Farm.Clock.Day(Now), local.Date);
        return days switch
        {
            0 => time,
            -1 => Phrases.Say("time.yesterday", ("at", time)),
            1 when local.Hour < 12 => time + (Farm.Units == UnitSystem.Us ? " am" : ""),
            _ => $"{Date(local.Date)} {time}",
        };
    }

    /// <summary>The hour of something that is still to come, or "now" where it has come already.</summary>
    public string Coming(Instant at) => at <= Now ? Phrases.Say("time.now") : Clock(at);

    /// <summary>"Apr 18" or "18 Apr", the month in the farm's language.</summary>
    public string Date(LocalDate day)
    {
        var month = Phrases.Words("time.months")[day.Month - 1];
        return Farm.Dates == DateOrder.MonthFirst ? $"{month} {Whole(day.Day)}" : $"{Whole(day.Day)} {month}";
    }

    /// <summary>"Sunday".</summary>
    public string Weekday(LocalDate day) => Phrases.Words("time.weekdays")[(int)day.DayOfWeek - 1];

    /// <summary>An animal as people call it: "Sage's baby", "la cría de Sage"; a name of its own as it is.</summary>
    /// <param name="name">The herd's name for it.</param>
    public string Name(string name) => Name(Phrases, name);

    /// <summary>Whether some words name an animal, in any language; letter case, accents and the article aside.</summary>
    /// <param name="name">The herd's name for it.</param>
    /// <param name="words">What somebody wrote.</param>
    public static bool IsName(string name, string words)
    {
        var plain = Phrases.Plain(words);
        return Phrases.All.Select(language => Phrases.Plain(Name(language, name))).Any(said => said == plain || said == "la " + plain)
            || (BabyName.Read(name) is { N: null } baby && Phrases.Is("name.baby.short", words, ("dam", baby.Dam)));
    }

    /// <summary>Lines as they are posted: each begins with a capital letter.</summary>
    public static string Lines(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return string.Join('\n', text.Split('\n').Select(line => line.Length == 0 ? line : char.ToUpperInvariant(line[0]) + line[1..]));
    }

    /// <summary>"45 min", "2 h 5 min", "3 days".</summary>
    public string Age(Duration length)
    {
        var minutes = (int)Math.Round(length.TotalMinutes);
        return minutes < 90 ? Phrases.Say("age.minutes", ("n", Whole(minutes)))
            : minutes < 48 * 60 ? Phrases.Say("age.hours", ("n", Whole(minutes / 60))) + (minutes % 60 == 0 || minutes >= 12 * 60 ? "" : " " + Phrases.Say("age.minutes", ("n", Whole(minutes % 60))))
            : Phrases.Say("age.days", ("n", Whole(minutes / 60 / 24)));
    }

    /// <summary>A temperature in the farm's scale: "99.2 °F".</summary>
    public string Temperature(decimal fahrenheit) => Farm.Units == UnitSystem.Us
        ? Figure(fahrenheit, 1) + " °F"
        : Figure((fahrenheit - 32) * 5 / 9, 1) + " °C";

    /// <summary>A rise of temperature in the farm's scale: "3.2 °F".</summary>
    public string Rise(decimal fahrenheit) => Farm.Units == UnitSystem.Us
        ? Figure(fahrenheit, 1) + " °F"
        : Figure(fahrenheit * 5 / 9, 1) + " °C";

    /// <summary>A gain of weight: "0.55 lb" or "250 g".</summary>
    public string Gain(decimal grams) => Farm.Units == UnitSystem.Us ? Figure(grams / Measures.GramsInPound, 2) + " lb" : Figure(grams, 0) + " g";

    /// <summary>An amount of milk: "30 fl oz (900 ml)" or "900 ml"; "nothing" for none.</summary>
    public string Amount(decimal millilitres) => millilitres == 0 ? Phrases.Say("amount.none") : Farm.Units == UnitSystem.Us
        ? Phrases.Say("amount.us", ("oz", Figure(millilitres / Measures.MillilitresInFluidOunce, 0)), ("ml", Figure(millilitres, 0)))
        : Phrases.Say("amount.metric", ("ml", Figure(millilitres, 0)));

    /// <summary>A fact's figure with its unit, as it was said: "24 lb", "99.2 °F", "37,2 °C"; empty where it has none.</summary>
    public string Said(Fact fact)
    {
        ArgumentNullException.ThrowIfNull(fact);
        if (fact.Value is not { } value)
        {
            return "";
        }
        var figure = fact.Kind == FactKind.Temperature ? Figure(value, 1) : value.ToString("0.####", Numbers);
        return fact.Unit switch
        {
            FactUnit.F => $"{figure} °F",
            FactUnit.C => $"{figure} °C",
            FactUnit.Percent => $"{figure} %",
            FactUnit.Lb => value.ToString("0.##", Numbers) + " lb",
            FactUnit.Score => Phrases.Say("unit.score", ("value", figure)),
            { } unit => $"{figure} {FactWords.Word(unit)}",
            null => figure,
        };
    }

    /// <summary>A figure with some decimals; with a decimal comma on a metric farm that speaks Spanish.</summary>
    public string Figure(decimal value, int decimals) =>
        decimal.Round(value, decimals, MidpointRounding.AwayFromZero).ToString(decimals == 0 ? "0" : "0." + new string('0', decimals), Numbers);

    /// <summary>"a, b and c"; in Spanish "y" before the sound of i is "e".</summary>
    public string List(IEnumerable<string> items)
    {
        var all = items.ToList();
        return all.Count < 2 ? string.Concat(all)
            : string.Join(", ", all.Take(all.Count - 1)) + Phrases.Say(SoundsLikeI(all[^1]) ? "list.and.i" : "list.and") + all[^1];
    }

    private NumberFormatInfo Numbers => Farm is { Language: Language.Spanish, Units: UnitSystem.Metric } ? WithComma : NumberFormatInfo.InvariantInfo;

    private static readonly NumberFormatInfo WithComma = new() { NumberDecimalSeparator = "," };

    private static bool SoundsLikeI(string word) => Letters.Fold(word) switch
    {
        ['h', 'i', 'e' or 'a' or 'o', ..] => false,
        ['i', 'e' or 'a' or 'o', ..] => false,
        ['i', ..] or ['h', 'i', ..] => true,
        _ => false,
    };

    private static string Name(Phrases phrases, string name) => BabyName.Read(name) is not { } baby ? name
        : baby.N is { } n ? phrases.Say("name.baby.twin", ("dam", baby.Dam), ("n", Whole(n))) : phrases.Say("name.baby", ("dam", baby.Dam));

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}

using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Tokens;

namespace HerdBot.Core.Reading.Scanning;

/// <summary>Reads one figure, in digits or words: "23.5", "twenty five", "one oh one", "a hundred and one".</summary>
internal static class NumberWords
{
    private const int LongestRun = 8;

    public static Item? Match(Scan scan, WordLookup lookup, int i)
    {
        var token = scan.Tokens[i];
        if (token.Kind == TokenKind.Number)
        {
            return new Item(ItemKind.Number, i, i + 1) { Value = token.Value };
        }

        if (token.Kind != TokenKind.Word || lookup.NumberOf(i) is not { } first || IsPronoun(scan, lookup, i, first) || token.Text is "o" or "oh")
        {
            return null;
        }

        var (value, end) = Run(scan, lookup, i, first);
        return new Item(ItemKind.Number, i, end) { Value = value };
    }

    // "the brown one", "this one": no figure.
    private static bool IsPronoun(Scan scan, WordLookup lookup, int i, int value) =>
        value == 1 && !IsHour(scan, lookup, i) && !(i + 1 < scan.Tokens.Length && (lookup.NumberOf(i + 1) is not null || lookup.Tags(i + 1).HasAny(TagSet.Of(
            Tag.UnitLb, Tag.UnitKg, Tag.UnitOz, Tag.UnitCc, Tag.UnitMl, Tag.Point, Tag.Hour, Tag.Pm, Tag.Am, Tag.Oclock, Tag.Sex, Tag.Baby))));

    // "38.4 at one", "ten past one"
    private static bool IsHour(Scan scan, WordLookup lookup, int i) =>
        i > 0 && lookup.WordTags(i - 1).HasAny(TagSet.Of(Tag.At, Tag.Past)) && !lookup.WordTags(i - 1).Has(Tag.AfterBirth) | scan.Tokens[i - 1].Text == "past"
        && (i + 1 >= scan.Tokens.Length || scan.Tokens[i + 1].Kind == TokenKind.Mark || lookup.WordTags(i + 1).HasAny(TagSet.Of(Tag.And, Tag.But, Tag.Then)));

    private static (decimal Value, int End) Run(Scan scan, WordLookup lookup, int i, int first)
    {
        decimal value = first;
        var end = i + 1;
        if (first is >= 30 and <= 90 && first % 10 == 0 && end + 1 < scan.Tokens.Length && scan.Tokens[end].Text is "y" or "i" && lookup.NumberOf(end + 1) is >= 1 and <= 9 and var units)
        {
            return (first + units, end + 2);
        }

        while (end < scan.Tokens.Length && end - i < LongestRun && scan.Tokens[end].Kind == TokenKind.Word
            && (lookup.NumberOf(end) ?? Heard(scan, lookup, end, value)) is { } next && Joined(value, first, next, scan.Tokens[end].Text, Ahead(scan, lookup, end)) is { } joined)
        {
            (value, end) = (joined, end + 1);
        }

        return (value, end);
    }

    // "ninety ate point four": what dictation makes of a figure said aloud
    private static int? Heard(Scan scan, WordLookup lookup, int i, decimal value) =>
        value is >= 20 and <= 90 && value % 10 == 0 && i + 1 < scan.Tokens.Length && lookup.WordTags(i + 1).HasAny(TagSet.Of(Tag.Point, Tag.UnitLb, Tag.Degrees)) ? lookup.SoundOf(i) : null;

    private static int? Ahead(Scan scan, WordLookup lookup, int i) => i + 1 < scan.Tokens.Length ? lookup.NumberOf(i + 1) : null;

    private static decimal? Joined(decimal value, int first, int next, string word, int? after) => (value, next) switch
    {
        ( >= 1 and <= 9, 100) => value * 100m,
        ( >= 100, < 100) when value % 100 == 0 => value + next,
        ( >= 20 and < 100, >= 1 and <= 9) when value % 10 == 0 => value + next,
        ( > 100, >= 1 and <= 9) when value % 10 == 0 && value % 100 >= 20 => value + next,
        ( >= 1 and <= 9, 0) when word is "oh" or "o" or "zero" && after is >= 1 and <= 9 => value * 10m,
        (10, >= 1 and <= 9) when first == 1 => value * 10m + next,
        _ => null,
    };
}

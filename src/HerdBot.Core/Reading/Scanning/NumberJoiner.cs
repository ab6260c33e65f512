using HerdBot.Core.Reading.Lexicon;

namespace HerdBot.Core.Reading.Scanning;

/// <summary>Joins figures told in parts: "99 point 2", "101 1/2", "25 and a half", "4 .2", "ninety seven nine".</summary>
internal static class NumberJoiner
{
    public static void Join(Scan scan)
    {
        var joined = new List<Item>(scan.Items.Count);
        for (var i = 0; i < scan.Items.Count;)
        {
            var (item, used) = scan.Items[i].Kind == ItemKind.Number ? JoinAt(scan, i) : HalfAt(scan, i);
            joined.Add(item);
            i += used;
        }

        scan.Items = joined;
    }

    private static (Item Item, int Used) JoinAt(Scan scan, int i)
    {
        var item = scan.Items[i];
        if (Fraction(scan, i) is { } own && !IsNumber(scan, i - 1) && IsUnit(scan.At(i + 3)))
        {
            return (Number(scan, i, 3, own), 3);
        }

        if (Fraction(scan, i + 1) is { } over && scan.At(i + 1)!.Kind == ItemKind.Number && item.Value % 1 == 0)
        {
            return (Number(scan, i, 4, item.Value + over), 4);
        }

        if (scan.At(i + 1) is { Kind: ItemKind.Number } next && Added(scan, item, next, i) is { } sum)
        {
            return (Number(scan, i, 2, sum), 2);
        }

        if (scan.At(i + 2) is { Kind: ItemKind.Number } decimals && item.Value % 1 == 0 && (scan.At(i + 1)!.Is(Tag.Point) || IsWith(scan, i, item, decimals)))
        {
            return Decimals(scan, i, item, decimals);
        }

        return AndHalf(scan, i, item) ?? (item, 1);
    }

    private static (Item Item, int Used) Decimals(Scan scan, int i, Item whole, Item part)
    {
        var value = part.Value >= 10 ? part.Value / 100m : part.Value / 10m;
        return (Number(scan, i, 3, whole.Value + value), 3);
    }

    private static decimal? Added(Scan scan, Item whole, Item part, int i)
    {
        if (whole.Value % 1 != 0)
        {
            return null;
        }

        var token = scan.TokenOf(part);
        var tight = part.Value is > 0 and < 1 && (token.Text[0] == '.' || token.Text.Length == 1);
        if (tight)
        {
            return whole.Value + part.Value;
        }

        // "ninety seven nine": a body temperature said aloud, or typed without its point.
        var spoken = IsWarmth(whole) && IsDigit(part) && !IsUnit(scan.At(i + 2)) && scan.At(i + 2)?.IsMark(':') != true
            && (scan.Tokens[whole.First].Kind == Tokens.TokenKind.Word || scan.Has(Tag.Temperature) || scan.Items.Count == 2);
        return spoken ? whole.Value + (part.Value / 10m) : null;
    }

    private static (Item Item, int Used)? AndHalf(Scan scan, int i, Item item)
    {
        if (item.Value % 1 != 0 || scan.At(i + 1)?.Is(Tag.And) != true)
        {
            return null;
        }

        var at = scan.At(i + 2)?.Is(Tag.A) == true ? i + 3 : i + 2;
        return scan.At(at) is { } part && (part.Is(Tag.Half) || part.Is(Tag.Quarter)) && !AfterClockLead(scan, i) && !IsSpanishClock(scan, item, part, at)
            ? (Number(scan, i, at - i + 1, item.Value + (part.Is(Tag.Half) ? 0.5m : 0.25m)), at - i + 1)
            : null;
    }

    // "10 y cuarto", "11 y media" are clock times, "nueve y medio" is a figure.
    private static bool IsSpanishClock(Scan scan, Item item, Item part, int at) =>
        scan.Words == Vocabulary.Spanish && item.Value is >= 1 and <= 12 && !IsUnit(scan.At(at + 1)) && (part.Is(Tag.Quarter) || scan.Tokens[part.First].Text == "media");

    // "a las 5 y media" is a clock time.
    private static bool AfterClockLead(Scan scan, int i) => scan.At(i - 1)?.Is(Tag.At) == true;

    private static (Item Item, int Used) HalfAt(Scan scan, int i)
    {
        var item = scan.Items[i];
        if (item.Is(Tag.HalfWord))
        {
            return (new Item(ItemKind.Number, item.First, item.End) { Value = 0.5m, Tags = item.Tags }, 1);
        }

        if (item.Is(Tag.A) && scan.At(i + 1) is { Kind: ItemKind.Sense } unit && unit.Tags.HasAny(Tag.UnitLb, Tag.UnitKg, Tag.UnitOz))
        {
            return (new Item(ItemKind.Number, item.First, item.End) { Value = 1m }, 1);
        }

        return item.Is(Tag.Half) && IsUnit(scan.At(i + 1)) && !item.Is(Tag.Hang) ? (new Item(ItemKind.Number, item.First, item.End) { Value = 0.5m }, 1) : (item, 1);
    }

    private static decimal? Fraction(Scan scan, int i) =>
        scan.At(i) is { Kind: ItemKind.Number, Value: 1 or 3 } top && scan.At(i + 1)?.IsMark('/') == true
        && scan.At(i + 2) is { Kind: ItemKind.Number, Value: 2 or 4 or 8 } bottom && top.Value < bottom.Value
            ? top.Value / bottom.Value
            : null;

    // "treinta y siete con cinco": a body temperature alone, for hours are told so too
    private static bool IsWith(Scan scan, int i, Item whole, Item part) => scan.Tokens[scan.At(i + 1)!.First].Text == "con" && IsWarmth(whole) && IsDigit(part);

    private static bool IsWarmth(Item item) => item.Value is (>= 90 and <= 110) or (>= 30 and <= 43);

    private static bool IsDigit(Item item) => item.Value % 1 == 0 && item.Value is >= 0 and <= 9;

    private static bool IsNumber(Scan scan, int i) => scan.At(i)?.Kind == ItemKind.Number;

    private static bool IsUnit(Item? item) => item is not null && item.Tags.HasAny(QuantityReader.Units);

    private static Item Number(Scan scan, int i, int count, decimal value) =>
        new(ItemKind.Number, scan.Items[i].First, scan.Items[i + count - 1].End) { Value = value };
}

using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;

namespace HerdBot.Core.Reading.Scanning;

/// <summary>Joins figures with their units: 24 lb 6, 24-6, 8 kilo 250, 101.5*F, 60cc.</summary>
internal static class QuantityReader
{
    private const decimal OuncesInPound = 16m;
    // "12 g/L": milligrams a decilitre in a gram a litre
    private const decimal MilligramsADecilitre = 100m;

    public static readonly TagSet Units = TagSet.Of(
        Tag.UnitF, Tag.UnitC, Tag.UnitLb, Tag.UnitKg, Tag.UnitG, Tag.UnitOz, Tag.UnitMl, Tag.UnitCc, Tag.UnitMgdl, Tag.Percent);

    public static void Read(Scan scan)
    {
        var read = new List<Item>(scan.Items.Count);
        for (var i = 0; i < scan.Items.Count;)
        {
            var (item, used) = At(scan, i);
            read.Add(item);
            i += used;
        }

        scan.Items = read;
    }

    private static (Item Item, int Used) At(Scan scan, int i)
    {
        var item = scan.Items[i];
        if (item.Kind != ItemKind.Number)
        {
            return HalfKilo(scan, i) ?? (item, 1);
        }

        if (Unit(scan, i + 1) is { } unit)
        {
            return Measured(scan, i, unit);
        }

        return Dashed(scan, i) ?? Paired(scan, i) ?? (item, 1);
    }

    private static (FactUnit Unit, int Used)? Unit(Scan scan, int i)
    {
        var item = scan.At(i);
        if (item is not null && (item.Is(Tag.Degrees) || item.IsMark('*') || item.IsMark('\'')))
        {
            return Unit(scan, i + 1) is { Unit: FactUnit.F or FactUnit.C } degree ? (degree.Unit, degree.Used + 1) : null;
        }

        if (item is null || item.Kind != ItemKind.Sense || !item.Tags.HasAny(Units) || IsOtherLetter(scan, item))
        {
            return null;
        }

        return (UnitOf(item), 1);
    }

    // "24 f" may be a female, "2 m" a male: a bare letter is a unit where it sticks to the figure or the size fits.
    private static bool IsOtherLetter(Scan scan, Item item)
    {
        var token = scan.TokenOf(item);
        return token.Text is "f" or "c" or "m" or "g" && !token.Tight && !token.Capital && item.Tags.HasAny(Tag.Sex);
    }

    public static FactUnit UnitOf(Item item) =>
        item.Is(Tag.UnitLb) ? FactUnit.Lb
        : item.Is(Tag.UnitKg) ? FactUnit.Kg
        : item.Is(Tag.UnitOz) ? FactUnit.Oz
        : item.Is(Tag.UnitG) ? FactUnit.G
        : item.Is(Tag.UnitMl) ? FactUnit.Ml
        : item.Is(Tag.UnitCc) ? FactUnit.Cc
        : item.Is(Tag.UnitMgdl) ? FactUnit.MgPerDl
        : item.Is(Tag.Percent) ? FactUnit.Percent
        : item.Is(Tag.UnitF) ? FactUnit.F
        : FactUnit.C;

    private static (Item Item, int Used) Measured(Scan scan, int i, (FactUnit Unit, int Used) unit)
    {
        var value = Thousands(scan, scan.Items[i], unit.Unit);
        var used = 1 + unit.Used;
        if (unit.Unit == FactUnit.G && scan.At(i + used)?.IsMark('/') == true && scan.At(i + used + 1) is { } litre && scan.TokenOf(litre).Text == "l")
        {
            return (Quantity(scan, i, used + 2, value * MilligramsADecilitre, FactUnit.MgPerDl), used + 2);
        }

        var tail = scan.At(i + used)?.IsMark(',') == true || scan.At(i + used)?.Is(Tag.And) == true ? used + 1 : used;
        if (unit.Unit == FactUnit.Lb && scan.At(i + tail) is { Kind: ItemKind.Number, Value: < 16 } ounces && Unit(scan, i + tail + 1) is { Unit: FactUnit.Oz } oz)
        {
            return (Quantity(scan, i, tail + 1 + oz.Used, value + (ounces.Value / OuncesInPound), unit.Unit), tail + 1 + oz.Used);
        }

        if (unit.Unit == FactUnit.Lb && scan.At(i + used) is { Kind: ItemKind.Number, Value: >= 0 and < 16 } bare && bare.Value % 1 == 0 && value % 1 == 0
            && Unit(scan, i + used + 1) is null && scan.At(i + used + 1)?.IsMark(':') != true)
        {
            return (Quantity(scan, i, used + 1, value + (bare.Value / OuncesInPound), unit.Unit), used + 1);
        }

        if (unit.Unit == FactUnit.Kg && Grams(scan, i + used) is { } grams && value % 1 == 0)
        {
            return (Quantity(scan, i, used + grams.Used, value + (grams.Value / 1000m), unit.Unit), used + grams.Used);
        }

        if (unit.Unit == FactUnit.Kg && scan.At(i + used)?.Is(Tag.And) == true && scan.At(i + used + 1)?.Is(Tag.Half) == true)
        {
            return (Quantity(scan, i, used + 2, value + 0.5m, unit.Unit), used + 2);
        }

        return (Quantity(scan, i, used, value, unit.Unit), used);
    }

    private static (decimal Value, int Used)? Grams(Scan scan, int i)
    {
        var at = scan.At(i)?.Is(Tag.And) == true ? i + 1 : i;
        return scan.At(at) is { Kind: ItemKind.Number, Value: >= 50 and < 1000 } grams && grams.Value % 1 == 0
            ? Unit(scan, at + 1) is { Unit: FactUnit.G } g ? (grams.Value, at - i + 1 + g.Used) : Unit(scan, at + 1) is null ? (grams.Value, at - i + 1) : null
            : null;
    }

    // "kilo y medio"
    private static (Item Item, int Used)? HalfKilo(Scan scan, int i) =>
        scan.Items[i].Is(Tag.UnitKg) && scan.At(i + 1)?.Is(Tag.And) == true && scan.At(i + 2)?.Is(Tag.Half) == true
            ? (Quantity(scan, i, 3, 1.5m, FactUnit.Kg), 3)
            : null;

    // "5.8 and 6.4 kilos": the unit is said once
    private static (Item Item, int Used)? Paired(Scan scan, int i) =>
        (scan.At(i + 1)?.Is(Tag.And) == true || scan.At(i + 1)?.IsMark(',') == true) && scan.At(i + 2) is { Kind: ItemKind.Number } second
            && Unit(scan, i + 3) is { Unit: FactUnit.Kg or FactUnit.Lb } unit && second.Value < scan.Items[i].Value * 2m && scan.Items[i].Value < second.Value * 2m
            ? (Quantity(scan, i, 1, scan.Items[i].Value, unit.Unit), 1)
            : null;

    // 24-6: pounds and ounces, where the farm weighs in pounds
    private static (Item Item, int Used)? Dashed(Scan scan, int i)
    {
        var first = scan.Items[i];
        return scan.At(i + 1) is { Kind: ItemKind.Mark } dash && dash.Text is "-" && scan.TokenOf(dash).Tight
            && scan.At(i + 2) is { Kind: ItemKind.Number, Value: >= 0 and < 16 } ounces && scan.TokenOf(ounces).Tight
            && first.Value is >= 3 and <= 60 && first.Value % 1 == 0 && ounces.Value % 1 == 0 && scan.Context.Units != UnitSystem.Metric && Unit(scan, i + 3) is null
                ? (Quantity(scan, i, 3, first.Value + (ounces.Value / OuncesInPound), FactUnit.Lb), 3)
                : null;
    }

    private static decimal Thousands(Scan scan, Item item, FactUnit unit) =>
        scan.TokenOf(item) is { Comma: true, Decimals: 3 } && item.End == item.First + 1 && unit is not FactUnit.Kg ? item.Value * 1000m : item.Value;

    private static Item Quantity(Scan scan, int i, int count, decimal value, FactUnit unit) =>
        new(ItemKind.Quantity, scan.Items[i].First, scan.Items[i + count - 1].End) { Value = value, Unit = unit };
}

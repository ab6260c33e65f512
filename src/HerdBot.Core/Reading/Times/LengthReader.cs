using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;
using NodaTime;

namespace HerdBot.Core.Reading.Times;

/// <summary>Reads lengths of time and what they are counted from: "20 min ago", "at 32 min", "in 15", "hace 20 min".</summary>
internal static class LengthReader
{
    private const int MostDays = 500;

    public static (When When, int Used)? Read(Scan scan, int i, Lead lead)
    {
        if (Length(scan, i) is not { } length)
        {
            return lead.In && !lead.At && scan.At(i) is { Kind: ItemKind.Number, Value: > 0 and <= 120 } bare && bare.Value % 1 == 0 && EndsClause(scan.At(i + 1))
                ? (new When(WhenKind.Ahead) { Length = Duration.FromMinutes((long)bare.Value) }, 1)
                : null;
        }

        var used = length.Used;
        var next = scan.At(i + used);
        if (next?.Is(Tag.Ago) == true || lead.Hace)
        {
            return (new When(WhenKind.Ago) { Length = length.Length }, lead.Hace ? used : used + 1);
        }

        if (lead.At && !lead.In && length.IsShort)
        {
            return (new When(WhenKind.Age) { Length = length.Length }, next?.Is(Tag.AfterBirth) == true ? used + 1 : used);
        }

        if (lead.In)
        {
            return (new When(WhenKind.Ahead) { Length = length.Length }, used);
        }

        return next?.Is(Tag.AfterBirth) == true && length.IsShort && !next.Is(Tag.Before)
            ? (new When(scan.Tokens[next.First].Text is "old" or "of" ? WhenKind.Length : WhenKind.Age) { Length = length.Length }, used + 1)
            : (new When(WhenKind.Length) { Length = length.Length, Since = lead.Since }, used);
    }

    private static bool EndsClause(Item? item) => item is null || item.Kind == ItemKind.Mark || item.Is(Tag.And);

    private static (Duration Length, int Used, bool IsShort)? Length(Scan scan, int i)
    {
        var first = scan.At(i);
        var (amount, at) = first switch
        {
            { Kind: ItemKind.Number } => (first.Value, i + 1),
            not null when first.Is(Tag.Couple) => (2m, i + 1),
            not null when first.Is(Tag.A) && Unit(scan.At(i + 1)) is not null && scan.At(i + 2) is { } ago && (ago.Is(Tag.Ago) || ago.Is(Tag.AfterBirth)) => (1m, i + 1),
            _ => (0m, i),
        };
        if (at == i || Unit(scan.At(at)) is not { } unit || amount > 10_000m || Minutes(amount, unit) is not { } minutes)
        {
            return null;
        }

        // "1 h 20 min"
        if (unit == Tag.Hour && scan.At(at + 1) is { Kind: ItemKind.Number, Value: < 60 } more && Unit(scan.At(at + 2)) == Tag.Minute)
        {
            return (Duration.FromMinutes(minutes + (long)more.Value), at + 3 - i, true);
        }

        return (Duration.FromMinutes(minutes), at + 1 - i, unit is Tag.Minute or Tag.Hour);
    }

    private static long? Minutes(decimal amount, Tag unit)
    {
        var minutes = amount * unit switch { Tag.Minute => 1, Tag.Hour => 60, Tag.Day => 1440, Tag.Week => 7 * 1440, _ => 30 * 1440 };
        return minutes <= MostDays * 1440m ? (long)minutes : null;
    }

    private static Tag? Unit(Item? item) =>
        item is null ? null
        : item.Is(Tag.Minute) ? Tag.Minute
        : item.Is(Tag.Hour) ? Tag.Hour
        : item.Is(Tag.Day) ? Tag.Day
        : item.Is(Tag.Week) ? Tag.Week
        : item.Is(Tag.MonthUnit) ? Tag.MonthUnit
        : null;
}

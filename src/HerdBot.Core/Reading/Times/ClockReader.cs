using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;
using HerdBot.Core.Reading.Tokens;

namespace HerdBot.Core.Reading.Times;

/// <summary>Reads clock times: 6:40, 0640, 6.30 this morning, 4 30, 2pm, half six, ten past, a las 9 y media.</summary>
internal static class ClockReader
{
    private const int FarthestBack = 24;
    private static readonly TagSet Figures = TagSet.Of(Tag.Weight, Tag.Temperature, Tag.Igg, Tag.Weather);
    private static readonly TagSet Aged = TagSet.Of(Tag.Standing, Tag.Nurse, Tag.Placenta, Tag.Urine, Tag.Meconium, Tag.Passed, Tag.Out);
    private static readonly TagSet Starters = TagSet.Of(
        Tag.B, Tag.Born, Tag.Standing, Tag.Nurse, Tag.Dip, Tag.Placenta, Tag.Urine, Tag.Meconium, Tag.WaterBroke, Tag.Labour, Tag.Cord, Tag.Baby, Tag.Sex);

    private static readonly TagSet Events = TagSet.Of(Tag.Standing, Tag.Nurse, Tag.Dip, Tag.Placenta, Tag.Urine, Tag.Meconium, Tag.WaterBroke, Tag.Passed);
    private static readonly TagSet PartsOfDay = TagSet.Of(Tag.Morning, Tag.Afternoon, Tag.Evening, Tag.LastNight);

    public static (When When, int Used)? Read(Scan scan, int i, Lead lead)
    {
        if (Fraction(scan, i) is { } spoken)
        {
            return spoken;
        }

        if (scan.At(i) is { Kind: ItemKind.Sense } word && word.When is null && (word.Is(Tag.Noon) || word.Is(Tag.Midnight)))
        {
            return (When.Clock(word.Is(Tag.Noon) ? 12 : 0, 0, HalfOfDay.Exact), 1);
        }

        if (scan.At(i) is not { Kind: ItemKind.Number } number || number.Value < 0)
        {
            return null;
        }

        return Colon(scan, i, number) ?? WithHalf(scan, i, number) ?? Run(scan, i, number, lead) ?? Dotted(scan, i, number, lead)
            ?? Split(scan, i, number, lead) ?? Joined(scan, i, number) ?? Bare(scan, i, number, lead);
    }

    // half six, quarter past 4, ten past, 20 to 7
    private static (When When, int Used)? Fraction(Scan scan, int i)
    {
        var first = scan.At(i);
        if (first is null)
        {
            return null;
        }

        if (first.Is(Tag.Half) || first.Is(Tag.HalfWord))
        {
            var at = scan.At(i + 1)?.Is(Tag.Past) == true ? i + 2 : i + 1;
            return Hour(scan, at) is { } hour && !IsMeasure(scan.At(at + 1)) ? With(scan, hour, 30, at - i + 1, i) : null;
        }

        var minutes = first.Is(Tag.Quarter) ? 15 : first is { Kind: ItemKind.Number, Value: >= 1 and <= 29 } && first.Value % 1 == 0 ? (int)first.Value : -1;
        var next = scan.At(i + 1)?.Is(Tag.Minute) == true ? i + 2 : i + 1;
        if (minutes < 0 || scan.At(next) is not { } joint || !(joint.Is(Tag.Past) || joint.Is(Tag.To)))
        {
            return null;
        }

        if (Hour(scan, next + 1) is { } o && !IsMeasure(scan.At(next + 2)))
        {
            return joint.Is(Tag.Past) ? With(scan, o, minutes, next - i + 2, i) : scan.Tokens[joint.First].Text is "to" or "til" ? With(scan, o == 1 ? 12 : o - 1, 60 - minutes, next - i + 2, i) : null;
        }

        return joint.Is(Tag.Past) && scan.Tokens[joint.First].Text == "past" && scan.At(next + 1) is null or { Kind: ItemKind.Mark }
            ? (When.Clock(0, minutes, HalfOfDay.Unsaid) with { AnyHour = true }, next - i + 1)
            : null;
    }

    private static (When When, int Used)? Colon(Scan scan, int i, Item number)
    {
        if (scan.At(i + 1)?.IsMark(':') != true || scan.At(i + 2) is not { Kind: ItemKind.Number } minute || !scan.TokenOf(minute).Tight
            || number.Value > 23 || minute.Value > 59 || number.Value % 1 != 0 || minute.Value % 1 != 0)
        {
            return null;
        }

        var used = scan.At(i + 3)?.IsMark(':') == true && scan.At(i + 4) is { Kind: ItemKind.Number } ? 5 : 3;
        return Finish(scan, i, used, (int)number.Value, (int)minute.Value, scan.TokenOf(number).LeadingZero || number.Value > 12);
    }

    // 2pm, 6.30 am, 640pm, 7 oclock, 7ish
    private static (When When, int Used)? WithHalf(Scan scan, int i, Item number)
    {
        var next = scan.At(i + 1);
        var meridiem = next is not null && (IsHalf(scan, next, Tag.Am) || IsHalf(scan, next, Tag.Pm));
        if (next is null || !(meridiem || next.Is(Tag.Oclock) || (next.Is(Tag.Ish) && number.Value <= 12)))
        {
            return null;
        }

        return Parts(scan, number) is { } clock ? Finish(scan, i, meridiem ? 1 : 2, clock.Hour, clock.Minute, false) : null;
    }

    // 0640, 1430, at 620
    private static (When When, int Used)? Run(Scan scan, int i, Item number, Lead lead)
    {
        var token = scan.TokenOf(number);
        if ((lead.In && !lead.At) || (lead.Used == 0 && scan.At(i - 1) is { } before && before.Is(Tag.InFuture) && !before.Is(Tag.At)) || number.End != number.First + 1 || token.Decimals > 0 || token.Digits is not (3 or 4) || IsMeasure(scan.At(i + 1)) || Parts(scan, number) is not { } clock)
        {
            return null;
        }

        var led = lead.At || lead.Since || lead.Approx;
        var starts = StartsClause(scan, i) && scan.At(i + 1)?.Tags.HasAny(Starters) == true;
        var plain = token.LeadingZero || led || starts || (token.Digits == 4 && !HasFigure(scan, i));
        return plain && !(HasFigure(scan, i) && !led && !starts) ? Finish(scan, i, 1, clock.Hour, clock.Minute, token.LeadingZero || clock.Hour > 12) : null;
    }

    // at 6.30, 6.30 this morning, 7.30 where nothing else it could be
    private static (When When, int Used)? Dotted(Scan scan, int i, Item number, Lead lead)
    {
        var token = scan.TokenOf(number);
        if (number.End != number.First + 1 || token.Decimals != 2 || token.Comma || IsMeasure(scan.At(i + 1)) || Parts(scan, number) is not { } clock)
        {
            return null;
        }

        var led = lead.At || lead.Since || scan.At(i + 1)?.Tags.HasAny(TagSet.Of(Tag.Morning, Tag.Afternoon, Tag.Evening, Tag.LastNight, Tag.Yesterday)) == true;
        var starts = StartsClause(scan, i) || scan.At(i - 1)?.Is(Tag.And) == true;
        var alone = scan.Context.Dates == DateOrder.DayFirst && starts && (EndsClause(scan, i + 1) || scan.At(i + 1)!.Tags.HasAny(Starters)) && !SharesUnit(scan, i);
        var told = EndsClause(scan, i + 1) && !SharesUnit(scan, i) && InClause(scan, i, scan.Context.Dates == DateOrder.DayFirst ? Starters : Events);
        return (led || alone || told) && !HasFigure(scan, i) ? Finish(scan, i, 1, clock.Hour, clock.Minute, token.LeadingZero || clock.Hour > 12) : null;
    }

    // "5.20 and 5.45 kilos"
    private static bool SharesUnit(Scan scan, int i) =>
        scan.At(i + 1)?.Is(Tag.And) == true && scan.At(i + 2)?.Kind == ItemKind.Number && IsMeasure(scan.At(i + 3));

    // at 4 30, abt 6 40; "six forty" said aloud
    private static (When When, int Used)? Split(Scan scan, int i, Item number, Lead lead)
    {
        var minute = scan.At(i + 1);
        var spoken = scan.TokenOf(number).Kind == TokenKind.Word && minute is { Kind: ItemKind.Number } && scan.TokenOf(minute).Kind == TokenKind.Word;
        return (lead.At || lead.Approx || lead.Since || spoken || StartsClause(scan, i)) && number.Value is >= 1 and <= 12 && number.Value % 1 == 0
            && minute is { Kind: ItemKind.Number, Value: >= 10 and <= 59 } && minute.Value % 1 == 0 && (scan.TokenOf(minute).Digits == 2 || spoken)
            && !IsMeasure(scan.At(i + 2)) && !HasFigure(scan, i)
                ? Finish(scan, i, 2, (int)number.Value, (int)minute.Value, false)
                : null;
    }

    // 8 y 20
    private static (When When, int Used)? Joined(Scan scan, int i, Item number) =>
        scan.Words == Vocabulary.Spanish && number.Value is >= 1 and <= 12 && number.Value % 1 == 0 && scan.TokenOf(number).Decimals == 0 && scan.At(i + 1)?.Is(Tag.And) == true
            && scan.At(i + 2) is { Kind: ItemKind.Number, Value: >= 5 and <= 59 } minute && minute.Value % 1 == 0 && scan.TokenOf(minute).Decimals == 0 && !IsMeasure(scan.At(i + 3)) && !HasFigure(scan, i)
            ? Finish(scan, i, 3, (int)number.Value, (int)minute.Value, false)
            : null;

    private static (When When, int Used)? Bare(Scan scan, int i, Item number, Lead lead)
    {
        if (Spoken(scan, i, number) is { } spoken)
        {
            return spoken;
        }

        if (number.Value % 1 != 0 || number.Value is < 1 or > 59 || scan.TokenOf(number).Decimals > 0 || IsMeasure(scan.At(i + 1)) || !(lead.At || lead.Since || lead.Approx || lead.Before))
        {
            return null;
        }

        if (!lead.At && !lead.Since && !lead.Before && (number.Value > 12 || HasFigure(scan, i) || !EndsClause(scan, i + 1)))
        {
            return null;
        }

        if (number.Value > 12 && !InClause(scan, i, Aged))
        {
            return null;
        }

        return number.Value > 12
            ? (new When(WhenKind.HourOrAge) { Hour = (int)number.Value, Half = HalfOfDay.Exact }, 1)
            : Finish(scan, i, 1, (int)number.Value, 0, false);
    }

    // "10 y cuarto", "5 this morning"
    private static (When When, int Used)? Spoken(Scan scan, int i, Item number)
    {
        var quarters = scan.Words == Vocabulary.Spanish && scan.At(i + 1)?.Is(Tag.And) == true && (scan.At(i + 2)?.Is(Tag.Half) == true || scan.At(i + 2)?.Is(Tag.Quarter) == true) && !IsMeasure(scan.At(i + 3));
        var parted = scan.At(i + 1)?.Tags.HasAny(PartsOfDay) == true && !HasFigure(scan, i);
        return number.Value is >= 1 and <= 12 && number.Value % 1 == 0 && scan.TokenOf(number).Decimals == 0 && (quarters || parted)
            ? Finish(scan, i, 1, (int)number.Value, 0, false)
            : null;
    }

    private static (When When, int Used) With(Scan scan, int hour, int minute, int used, int i) => Finish(scan, i, used, hour, minute, false);

    private static (When When, int Used) Finish(Scan scan, int i, int used, int hour, int minute, bool exact)
    {
        if (scan.At(i + used)?.Is(Tag.And) == true && minute == 0 && scan.At(i + used + 1) is { } part && (part.Is(Tag.Half) || part.Is(Tag.Quarter)))
        {
            (minute, used) = (part.Is(Tag.Half) ? 30 : 15, used + 2);
        }
        else if (scan.At(i + used)?.Is(Tag.Menos) == true && minute == 0 && scan.At(i + used + 1)?.Is(Tag.Quarter) == true)
        {
            (hour, minute, used) = (hour == 1 ? 12 : hour - 1, 45, used + 2);
        }

        var half = exact ? HalfOfDay.Exact : HalfOfDay.Unsaid;
        var next = scan.At(i + used);
        if (next is not null && hour <= 12 && (IsHalf(scan, next, Tag.Am) || IsHalf(scan, next, Tag.Pm)))
        {
            (half, used) = (IsHalf(scan, next, Tag.Am) ? HalfOfDay.Am : HalfOfDay.Pm, used + 1);
        }

        used += scan.At(i + used)?.Is(Tag.Ish) == true || scan.At(i + used)?.Is(Tag.Oclock) == true ? 1 : 0;
        return (When.Clock(hour, minute, half), used);
    }

    private static (int Hour, int Minute)? Parts(Scan scan, Item number)
    {
        var token = scan.TokenOf(number);
        var (hour, minute) = token.Decimals == 2 && number.Value < 24 ? ((int)number.Value, (int)(number.Value % 1 * 100m))
            : token.Decimals > 0 || number.Value > 2359 || number.Value % 1 != 0 ? (-1, 0)
            : token.Digits >= 3 ? ((int)number.Value / 100, (int)number.Value % 100)
            : ((int)number.Value, 0);
        return hour is >= 0 and <= 23 && minute < 60 ? (hour, minute) : null;
    }

    private static int? Hour(Scan scan, int i) =>
        scan.At(i) is { Kind: ItemKind.Number, Value: >= 1 and <= 12 } number && number.Value % 1 == 0 && scan.TokenOf(number).Decimals == 0 ? (int)number.Value : null;

    private static bool IsHalf(Scan scan, Item item, Tag half) => item.Is(half) && item.End == item.First + 1 && scan.Tokens[item.First].Text.Length <= 3;

    private static bool IsMeasure(Item? item) => item is not null && item.Tags.HasAny(QuantityReader.Units | TagSet.Of(Tag.Minute, Tag.Hour, Tag.Day, Tag.Week, Tag.MonthUnit, Tag.Percent, Tag.Degrees));

    private static bool StartsClause(Scan scan, int i) => scan.At(i - 1) is null or { Kind: ItemKind.Mark };

    private static bool EndsClause(Scan scan, int i) => scan.At(i) is null or { Kind: ItemKind.Mark } || scan.At(i)!.Tags.HasAny(TagSet.Of(Tag.And, Tag.But, Tag.Then));

    // "was 14.. no sorry 1400"
    private static bool IsPause(Scan scan, int k) =>
        scan.Items[k].IsMark('.') && (scan.At(k + 1)?.IsMark('.') == true || scan.At(k - 1)?.IsMark('.') == true);

    private static bool HasFigure(Scan scan, int i) => InClause(scan, i, Figures);

    private static bool InClause(Scan scan, int i, TagSet tags)
    {
        for (var k = i - 1; k >= Math.Max(0, i - FarthestBack) && (scan.Items[k].Kind != ItemKind.Mark || IsPause(scan, k)); k--)
        {
            if (scan.Items[k].Tags.HasAny(tags))
            {
                return true;
            }
        }

        return false;
    }
}

using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;
using HerdBot.Core.Reading.Tokens;
using NodaTime;

namespace HerdBot.Core.Reading.Times;

/// <summary>Reads days and ranges of days: 5/14, June 12, 3 de enero, the 27th, Apr 28 - Jun 9.</summary>
internal static class DateReader
{
    public static (When When, int Used)? Read(Scan scan, int i, Lead lead)
    {
        if (ShortRange(scan, i, lead) is { } span)
        {
            return span;
        }

        if (Date(scan, i) is not { } start)
        {
            return null;
        }

        var dash = scan.At(i + start.Used);
        if (dash is not null && (dash.IsMark('-') || dash.Is(Tag.To) || dash.Is(Tag.Before)) && Date(scan, i + start.Used + 1) is { } end)
        {
            return (new When(WhenKind.Range) { Date = start.Date, EndDate = end.Date }, start.Used + end.Used + 1);
        }

        return (new When(WhenKind.Day) { Date = start.Date }, start.Used);
    }

    // "del 3 al 20 de enero", "May 3-20"
    private static (When When, int Used)? ShortRange(Scan scan, int i, Lead lead)
    {
        if (lead.Since && DayOf(scan, i) is { } first && scan.At(i + 1)?.Is(Tag.To) == true && Date(scan, i + 2) is { } end && first <= end.Date.Day)
        {
            return (new When(WhenKind.Range) { Date = new LocalDate(end.Date.Year, end.Date.Month, first), EndDate = end.Date }, end.Used + 2);
        }

        return scan.At(i)?.Is(Tag.Month) == true && Date(scan, i) is { } start && scan.At(i + start.Used)?.IsMark('-') == true
            && scan.At(i + start.Used + 1) is { Kind: ItemKind.Number } && DayOf(scan, i + start.Used + 1) is { } last && last > start.Date.Day
            && Make(scan, start.Date.Month, last, null) is { } lastDay
                ? (new When(WhenKind.Range) { Date = start.Date, EndDate = lastDay }, start.Used + 2)
                : null;
    }

    private static (LocalDate Date, int Used)? Date(Scan scan, int i) => Slashed(scan, i) ?? Named(scan, i) ?? TheNth(scan, i) ?? TheDay(scan, i);

    private static (LocalDate Date, int Used)? Slashed(Scan scan, int i)
    {
        if (Tight(scan, i) is not { } first || scan.At(i + 1) is not { Kind: ItemKind.Mark } mark || mark.Text is not ("/" or "-" or ".")
            || !scan.TokenOf(mark).Tight || Tight(scan, i + 2) is not { } second || !scan.TokenOf(scan.At(i + 2)!).Tight)
        {
            return null;
        }

        var third = scan.At(i + 3) is { Kind: ItemKind.Mark } again && again.Text == mark.Text ? Tight(scan, i + 4) : null;
        if (third is { } tail)
        {
            return first > 31
                ? Make(scan, second, tail, first) is { } iso ? (iso, 5) : null
                : Ordered(scan, first, second, tail < 100 ? tail + 2000 : tail) is { } full ? (full, 5) : null;
        }

        return mark.Text == "/" && Ordered(scan, first, second, null) is { } date ? (date, 3) : null;
    }

    private static LocalDate? Ordered(Scan scan, int first, int second, int? year) =>
        scan.Context.Dates == DateOrder.MonthFirst
            ? Make(scan, first, second, year) ?? Make(scan, second, first, year)
            : Make(scan, second, first, year) ?? Make(scan, first, second, year);

    private static (LocalDate Date, int Used)? Named(Scan scan, int i)
    {
        if (scan.At(i) is { } month && month.Is(Tag.Month) && DayOf(scan, i + 1) is { } day && !IsClock(scan, i + 2))
        {
            var comma = scan.At(i + 2)?.IsMark(',') == true ? 1 : 0;
            return YearOf(scan, i + 2 + comma) is { } year && Make(scan, month.Argument, day, year) is { } whole ? (whole, 3 + comma)
                : Make(scan, month.Argument, day, null) is { } date ? (date, 2) : null;
        }

        var at = scan.At(i + 1)?.Is(Tag.Prep) == true ? i + 2 : i + 1;
        return DayOf(scan, i) is { } lead && scan.At(at) is { } after && after.Is(Tag.Month) && Make(scan, after.Argument, lead, null) is { } led
            ? (led, at - i + 1)
            : null;
    }

    // "May 1 2026": four digits that can be a year, and no clock
    private static int? YearOf(Scan scan, int i) => scan.At(i) is { Kind: ItemKind.Number, Value: >= 2000 and <= 2100 } number && number.Value % 1 == 0 && scan.TokenOf(number).Digits == 4 && !IsClock(scan, i + 1)
        && number.Value >= scan.Context.Now.Year - 20 && number.Value <= scan.Context.Now.Year + 2 ? (int)number.Value : null;

    private static (LocalDate Date, int Used)? TheNth(Scan scan, int i) =>
        scan.At(i) is { } article && article.Is(Tag.Article) && scan.At(i + 1) is { Kind: ItemKind.Unknown or ItemKind.Sense } nth
            && nth.End == nth.First + 1 && Ordinal(scan.TokenOf(nth)) is { } day && LatestNth(scan, day) is { } date
            ? (date, 2)
            : null;

    // "el día 12"
    private static (LocalDate Date, int Used)? TheDay(Scan scan, int i) =>
        scan.At(i) is { Kind: ItemKind.Sense } article && article.Is(Tag.Article) && scan.At(i + 1)?.Is(Tag.Day) == true && DayOf(scan, i + 2) is { } day && LatestNth(scan, day) is { } date
            ? (date, 3)
            : null;

    private static LocalDate? LatestNth(Scan scan, int day)
    {
        var today = scan.Context.Now.Date;
        for (var back = 0; back < 3; back++)
        {
            var month = today.PlusMonths(-back);
            if (day <= month.Calendar.GetDaysInMonth(month.Year, month.Month) && new LocalDate(month.Year, month.Month, day) is var date && date <= today)
            {
                return date;
            }
        }

        return null;
    }

    private static int? DayOf(Scan scan, int i) =>
        scan.At(i) is { Kind: ItemKind.Number } number && number.Value is >= 1 and <= 31 && number.Value % 1 == 0 && scan.TokenOf(number).Decimals == 0 ? (int)number.Value
        : scan.At(i) is { Kind: ItemKind.Unknown } word ? Ordinal(scan.TokenOf(word))
        : null;

    private static int? Ordinal(Token token) =>
        token.Text.Length is 3 or 4 && char.IsAsciiDigit(token.Text[0]) && int.TryParse(token.Text.AsSpan(0, token.Text.Length - 2), out var day) && day is >= 1 and <= 31
            ? day
            : null;

    private static int? Tight(Scan scan, int i) =>
        scan.At(i) is { Kind: ItemKind.Number, Value: <= 9999 } number && scan.TokenOf(number) is { Kind: TokenKind.Number, Decimals: 0, Digits: <= 4 } ? (int)number.Value : null;

    // Without a year: the latest such day before now, or one soon to come for plans.
    private static LocalDate? Make(Scan scan, int month, int day, int? year)
    {
        var today = scan.Context.Now.Date;
        if (month is < 1 or > 12 || day < 1 || (year ?? today.Year) is < 1900 or > 9000 || day > CalendarSystem.Iso.GetDaysInMonth(year ?? today.Year, month))
        {
            return null;
        }

        var date = new LocalDate(year ?? today.Year, month, day);
        return year is null && date > today && !(month == 2 && day == 29) ? date.PlusYears(-1) : date;
    }

    private static bool IsClock(Scan scan, int i) => scan.At(i)?.IsMark(':') == true && scan.At(i + 1) is { Kind: ItemKind.Number } minute && scan.TokenOf(minute).Tight;
}

using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Times;

/// <summary>Finds clock times, days and lengths of time among the items and puts one item in the place of each.</summary>
internal static class TimeReader
{
    private static readonly TagSet Openers = TagSet.Of(
        Tag.At, Tag.Approx, Tag.Since, Tag.StartRange, Tag.Before, Tag.InFuture, Tag.Hace,
        Tag.Noon, Tag.Midnight, Tag.AtBirth, Tag.Yesterday, Tag.LastNight, Tag.Today, Tag.Tonight, Tag.Tomorrow, Tag.Morning, Tag.Afternoon, Tag.Evening, Tag.VaguePast,
        Tag.Month, Tag.Weekday, Tag.Article, Tag.A, Tag.Couple, Tag.Half, Tag.HalfWord, Tag.Quarter);

    public static void Read(Scan scan)
    {
        var read = new List<Item>(scan.Items.Count);
        for (var i = 0; i < scan.Items.Count;)
        {
            var (when, used) = At(scan, i);
            if (when is null)
            {
                read.Add(scan.Items[i++]);
                continue;
            }

            var item = new Item(ItemKind.Time, scan.Items[i].First, scan.Items[i + used - 1].End) { When = when };
            item.Tags = Kept(scan, i, used);
            i += used;
            Append(read, item);
        }

        scan.Items = read;
    }

    // A part of the day may mean something else as well (a note, a weather word); the tags stay on it.
    private static TagSet Kept(Scan scan, int i, int used)
    {
        var tags = default(TagSet);
        for (var k = i; k < i + used; k++)
        {
            tags |= scan.Items[k].Tags & TagSet.Of(Tag.Tonight, Tag.Tomorrow, Tag.LastNight, Tag.Since, Tag.Before, Tag.AtBirth);
        }

        return tags;
    }

    private static void Append(List<Item> read, Item item)
    {
        var back = read.Count - 1;
        while (back >= 0 && back >= read.Count - 2 && (read[back].IsMark(',') || read[back].Is(Tag.Article) || read[back].Is(Tag.Prep)))
        {
            back--;
        }

        if (back >= 0 && read[back] is { Kind: ItemKind.Time } before && before.When!.With(item.When!) is { } both
            && !(read.Count - 1 > back && both.Kind == WhenKind.Clock && before.When!.Kind == WhenKind.Clock && read[^1].IsMark(',')))
        {
            read.RemoveRange(back + 1, read.Count - back - 1);
            before.When = both;
            before.End = item.End;
            before.Tags |= item.Tags;
            return;
        }

        read.Add(item);
    }

    // A time begins with a figure, an ordinal or one of some words; most items need no closer look.
    private static bool MayBegin(Scan scan, Item item) => item.Kind switch
    {
        ItemKind.Number => true,
        ItemKind.Sense => item.Tags.HasAny(Openers),
        ItemKind.Unknown => scan.TokenOf(item).Text is [>= '0' and <= '9', ..],
        _ => false,
    };

    // "on tuesday": the latest one; "next tuesday" and "by tuesday" lie ahead.
    private static When? Weekday(Scan scan, int i, int at, Lead lead)
    {
        if (scan.At(at) is not { Kind: ItemKind.Sense } item || !item.Is(Tag.Weekday) || scan.At(at + 1)?.Kind == ItemKind.Number)
        {
            return null;
        }

        var ahead = lead.Before || scan.At(i - 1) is { } before && (before.Is(Tag.Another) || before.Is(Tag.Due) || scan.Tokens[before.First].Text is "next" or "this" or "coming" or "proximo" or "by");
        var today = scan.Context.Now.Date;
        return ahead ? new When(WhenKind.Vague) : new When(WhenKind.Day) { Date = today.PlusDays(-((((int)today.DayOfWeek - item.Argument) % 7 + 7) % 7)), IsWeekday = true };
    }

    private static (When? When, int Used) At(Scan scan, int i)
    {
        var item = scan.Items[i];
        if (!MayBegin(scan, item))
        {
            return (null, 0);
        }

        if (item.Kind is ItemKind.Sense && PartReader.Read(item) is { } part)
        {
            return (part, 1);
        }

        var lead = Lead.Read(scan, i);
        var at = i + lead.Used;
        if (lead.Used > 0 && scan.At(at) is { Kind: ItemKind.Sense } word && PartReader.Read(word) is { } led)
        {
            return (lead.Before ? new When(WhenKind.Vague) : led with { Since = lead.Since }, lead.Used + 1);
        }

        if (Weekday(scan, i, at, lead) is { } weekday)
        {
            return (weekday, lead.Used + 1);
        }

        var found = DateReader.Read(scan, at, lead) ?? LengthReader.Read(scan, at, lead) ?? ClockReader.Read(scan, at, lead);
        if (found is not { } hit)
        {
            return (null, 0);
        }

        var when = lead.Before && hit.When.Kind is WhenKind.Clock or WhenKind.HourOrAge && lead.Before ? new When(WhenKind.Vague) : hit.When;
        return (when with { Since = lead.Since }, hit.Used + lead.Used);
    }
}

using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Animals;

/// <summary>Joins rows of names: "Fern, Hazel and May", "Fern and Clover both".</summary>
internal static class MentionGroups
{
    public static List<Item> Join(Scan scan, List<Item> items)
    {
        var joined = new List<Item>(items.Count);
        for (var i = 0; i < items.Count;)
        {
            var used = 1;
            if (IsEither(scan, items, i))
            {
                items[i].End = items[i + 2].End;
                items[i].Mention = new Mention(MentionKind.Unknown) { OneOf = true };
                used = 3;
            }
            else if (CanLead(items[i]) && RowEnd(scan, items, i) is var end && end > i + 1 && IsRow(scan, items, i, end))
            {
                used = end - i;
                Absorb(items, i, end);
            }

            if (joined.Count > 0 && joined[^1].Mention is { Plural: true, Kind: MentionKind.Named } && items[i].Mention is { Plural: true, Count: 2, Kind: MentionKind.SomeBaby, Colour: 0 })
            {
                joined[^1].End = items[i].End;
            }
            else
            {
                joined.Add(items[i]);
            }

            i += used;
        }

        return joined;
    }

    // "Hazel's or Clover's": which one has to be asked
    private static bool IsEither(Scan scan, List<Item> items, int i) =>
        CanLead(items[i]) && i + 2 < items.Count && scan.Tokens[items[i + 1].First].Text is "or" or "o" && CanLead(items[i + 2]);

    private static bool CanLead(Item item) => item is { Kind: ItemKind.Animal, Mention: { Kind: MentionKind.Named or MentionKind.BabyOf, Entries.Count: > 0 } };

    // "lay down for Bruno and Aspen wouldn't": a male after "for", then a female, are no row
    private static bool PartsMatings(List<Item> items, int i, int at, Scan scan) =>
        i > 0 && items[i - 1].Kind != ItemKind.Mark && items[i].Mention is { Kind: MentionKind.Named } first && items[at].Mention is { Kind: MentionKind.Named } second
        && scan.Herd.Entry(first.Entries[0]).Role == Core.Herd.HerdRole.Sire && scan.Herd.Entry(second.Entries[0]).Role != Core.Herd.HerdRole.Sire;

    private static int RowEnd(Scan scan, List<Item> items, int i)
    {
        var end = i + 1;
        var closed = false;
        while (end + 1 < items.Count)
        {
            var at = end + 1;
            if (!(items[end].IsMark(',') || items[end].Is(Tag.And)))
            {
                break;
            }

            if (items[end].IsMark(',') && closed)
            {
                break;
            }

            closed |= items[end].Is(Tag.And) || items[at].Is(Tag.And);
            at = items[end].IsMark(',') && items[at].Is(Tag.And) ? at + 1 : at;
            at += items[end].Is(Tag.And) && items[at].Is(Tag.Prep) && at + 1 < items.Count ? 1 : 0;
            var babies = at < items.Count && items[at].Mention is { Kind: MentionKind.BabyOf, Plural: true } && items[i].Mention!.Kind == MentionKind.Named;
            if (at >= items.Count || !CanLead(items[at]) || (items[at].Mention!.Kind != items[i].Mention!.Kind && !babies) || PartsMatings(items, i, at, scan))
            {
                break;
            }

            end = at + 1;
        }

        return end;
    }

    // With commas alone, what follows the last name may be about that one only.
    private static bool IsRow(Scan scan, List<Item> items, int i, int end)
    {
        var starts = i == 0 || items[i - 1].Kind == ItemKind.Mark;
        var ends = end >= items.Count || items[end].Kind == ItemKind.Mark;
        var and = items.GetRange(i, end - i).Exists(item => item.Is(Tag.And));
        return and || ends || starts || scan.Items.Count == 0;
    }

    private static void Absorb(List<Item> items, int i, int end)
    {
        var mention = items[i].Mention!;
        for (var k = i + 1; k < end; k++)
        {
            mention.Kind = items[k].Mention?.Kind == MentionKind.BabyOf ? MentionKind.BabyOf : mention.Kind;
            mention.Entries.AddRange(items[k].Mention?.Entries ?? []);
            mention.BareGenitive |= items[k].Mention?.BareGenitive == true;
        }

        mention.Plural = true;
        items[i].End = items[end - 1].End;
    }
}

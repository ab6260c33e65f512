using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Cuts the items into sentences and clauses and notes what each holds.</summary>
internal static class ClauseSplitter
{
    // More than anybody types; what comes after is not read.
    private const int MostClauses = 120;
    private const int LongestClause = 48;
    private static readonly TagSet Parts = TagSet.Of(Tag.Part, Tag.Presents);

    private static readonly TagSet Idle = TagSet.Of(
        Tag.Cord, Tag.Known, Tag.Article, Tag.Prep, Tag.Be, Tag.Fine, Tag.Plain, Tag.Not, Tag.Still, Tag.Yet, Tag.Again, Tag.Placenta, Tag.On, Tag.Off, Tag.Temperature, Tag.Weight);

    private static readonly TagSet Joints = TagSet.Of(Tag.And, Tag.But, Tag.Then, Tag.So);

    private static readonly TagSet Events = TagSet.Of(Tag.Standing, Tag.Nurse, Tag.Dip, Tag.Urine, Tag.Meconium, Tag.Out, Tag.Passed);

    public static List<Clause> Split(Scan scan)
    {
        var clauses = new List<Clause>();
        var items = new List<Item>();
        var sentence = 0;
        for (var i = 0; i < scan.Items.Count && clauses.Count < MostClauses; i++)
        {
            var item = scan.Items[i];
            var ends = EndsSentence(item) && !IsPause(scan, i);
            if (ends || items.Count >= LongestClause || EndsClause(scan, i))
            {
                Close(scan, clauses, items, sentence, item);
                items = item.Kind == ItemKind.Mark || item.Tags.HasAny(Joints) ? [] : [item];
                sentence += ends ? 1 : 0;
            }
            else
            {
                items.Add(item);
            }
        }

        Close(scan, clauses, items, sentence, null);
        return clauses;
    }

    // "nice and dry": only where both sides tell something does an "and" part them.
    private static bool Tells(Scan scan, int i, int step)
    {
        for (var k = i + step; scan.At(k) is { } item && item.Kind != ItemKind.Mark && !item.Is(Tag.And); k += step)
        {
            if (item.Kind is not ItemKind.Sense || !item.Tags.HasAny(Idle) || item.Tags.HasAny(Events))
            {
                return true;
            }
        }

        return false;
    }

    private static void Close(Scan scan, List<Clause> clauses, List<Item> items, int sentence, Item? mark)
    {
        if (items.Count > 0)
        {
            clauses.Add(new Clause(items, sentence) { Tags = Tags(scan, items), EndMark = mark?.Kind == ItemKind.Mark ? mark.Text : "" });
        }

        if (mark?.IsMark('?') == true)
        {
            var last = clauses.Count > 0 ? clauses[^1].Sentence : -1;
            foreach (var clause in clauses.Where(clause => clause.Sentence == last))
            {
                clause.Asked = true;
            }
        }
    }

    // "14.. no sorry 1400", "hmm... 98"
    private static bool IsPause(Scan scan, int i) =>
        scan.Items[i].IsMark('.') && ((scan.At(i + 1)?.IsMark('.') == true && scan.TokenOf(scan.Items[i + 1]).Tight) || (scan.At(i - 1)?.IsMark('.') == true && scan.TokenOf(scan.Items[i]).Tight));

    private static bool EndsSentence(Item item) => item.Kind == ItemKind.Mark && item.Text is "." or "!" or "?" or "\n" or ";";

    private static bool EndsClause(Scan scan, int i)
    {
        var item = scan.Items[i];
        if (item.Kind == ItemKind.Mark)
        {
            return item.Text is "," or ":" or "." or "(" or ")" or "-" or "|" or "/";
        }

        if (IsCondition(scan, i) || IsNextSubject(scan, i))
        {
            return true;
        }

        if (item.Kind != ItemKind.Sense || item.End > item.First + 1)
        {
            return false;
        }

        var parts = scan.At(i - 1)?.Tags.HasAny(Parts) == true && scan.At(i + 1) is { } next && (next.Tags.HasAny(Parts) || scan.At(i + 2)?.Tags.HasAny(Parts) == true);
        return item.Is(Tag.But) || item.Is(Tag.Then) || (item.Is(Tag.So) && scan.At(i + 1)?.Kind == ItemKind.Sense && scan.At(i - 1) is not null)
            || (item.Is(Tag.And) && !item.Is(Tag.Point) && !parts && Tells(scan, i, -1) && Tells(scan, i, 1));
    }

    // "tube her if she's not up": the condition is a clause of its own, unless somebody is not sure whether
    private static bool IsCondition(Scan scan, int i) =>
        i > 0 && scan.Items[i] is { Kind: ItemKind.Sense, Argument: 1 } item && item.Is(Tag.Mood) && !scan.Items[i - 1].Tags.HasAny(TagSet.Of(Tag.Hedge, Tag.NoIdea, Tag.Known));

    // "he ate 4 oz she ate 3"
    private static bool IsNextSubject(Scan scan, int i) =>
        scan.At(i - 1) is { Kind: ItemKind.Number or ItemKind.Quantity } && scan.Items[i].Tags.HasAny(TagSet.Of(Tag.She, Tag.He)) && scan.At(i + 1) is { Kind: ItemKind.Sense };

    private static TagSet Tags(Scan scan, List<Item> items)
    {
        var tags = default(TagSet);
        foreach (var item in items)
        {
            tags |= item.Tags | TagSet.Of(item.Kind switch
            {
                ItemKind.Quantity => Tag.HasQuantity,
                ItemKind.Number => Tag.HasNumber,
                ItemKind.Time => Tag.HasTime,
                ItemKind.Animal when item.Mention is { Vague: false } => Tag.HasAnimal,
                _ => Tag.None,
            });
            tags |= item.Kind == ItemKind.Quantity ? Measure(item) : item.Mention is { } mention ? Kin(scan, mention) : default;
        }

        var person = items[0].Kind == ItemKind.Person || items[0].Is(Tag.Me);
        return person && !tags.HasAny(TagSet.Of(Tag.HasAnimal, Tag.Hearsay))
            ? tags | TagSet.Of(Tag.PersonUp)
            : tags;
    }

    private static TagSet Measure(Item item) => TagSet.Of(item.Unit switch
    {
        FactUnit.Ml or FactUnit.Cc or FactUnit.Oz => Tag.HasVolume,
        FactUnit.Lb or FactUnit.Kg or FactUnit.G => Tag.HasMass,
        _ => Tag.None,
    });

    private static TagSet Kin(Scan scan, Mention mention)
    {
        if (mention.Kind == MentionKind.SomeMale)
        {
            return TagSet.Of(Tag.HasMale);
        }

        if (mention.Kind is MentionKind.BabyOf or MentionKind.SomeBaby)
        {
            return TagSet.Of(Tag.HasBaby);
        }

        return mention.Kind == MentionKind.Named && mention.Entries.Count > 0
            ? mention.Entries.Aggregate(default(TagSet), (tags, entry) => tags | TagSet.Of(scan.Herd.Entry(entry).Role switch { HerdRole.Dam => Tag.HasDam, HerdRole.Sire => Tag.HasMale, _ => Tag.HasBaby }))
            : mention.Kind is MentionKind.Unknown or MentionKind.SomeDam ? TagSet.Of(Tag.HasDam) : default;
    }
}

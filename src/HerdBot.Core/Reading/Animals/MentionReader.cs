using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Animals;

/// <summary>Joins the words that name an animal: "Sage's little girl", "la cría de Luna", "the tan girl", "both of them".</summary>
internal static class MentionReader
{
    private static readonly TagSet Looks = TagSet.Of(Tag.Colour, Tag.Article, Tag.SmallOne, Tag.BigOne);
    private static readonly TagSet Babies = TagSet.Of(Tag.Baby, Tag.LittleOnes);
    private static readonly TagSet Nouns = Babies | TagSet.Of(Tag.Sex, Tag.FirstOne, Tag.SecondOne, Tag.Twins);
    private static readonly TagSet Pronouns = TagSet.Of(Tag.She, Tag.He, Tag.It, Tag.They, Tag.Her, Tag.Him);

    // An animal that is not named begins with one of these.
    private static readonly TagSet Openers = Looks | Nouns | Pronouns | TagSet.Of(Tag.Hers, Tag.DamWord, Tag.GirlsWord, Tag.MaleWord, Tag.OneWord, Tag.All, Tag.Both);

    public static void Read(Scan scan)
    {
        var read = new List<Item>(scan.Items.Count);
        Children(scan);
        for (var i = 0; i < scan.Items.Count;)
        {
            var (item, used) = At(scan, i);
            if (item.Mention is { } mention && read.Count > 0 && read[^1].Kind == ItemKind.Sense && read[^1].Is(Tag.Prep))
            {
                mention.AfterPreposition = true;
            }

            read.Add(item);
            i += used;
        }

        scan.Items = MentionGroups.Join(scan, read);
    }

    // Where no goats are kept, kids are somebody's children.
    private static void Children(Scan scan)
    {
        if (scan.Herd.HasGoats || !scan.Has(Tag.LittleOnes))
        {
            return;
        }

        foreach (var item in scan.Items.Where(item => item.Kind == ItemKind.Sense && item.Is(Tag.LittleOnes) && scan.Tokens[item.First].Text == "kids"))
        {
            item.Tags = TagSet.Of(Tag.Own);
        }
    }

    private static (Item Item, int Used) At(Scan scan, int i)
    {
        var item = scan.Items[i];
        if (item.Kind == ItemKind.Animal)
        {
            return item.Mention is { Kind: MentionKind.Unknown } alike ? Unknown(scan, i, alike) : Named(scan, i, item);
        }

        if (OneOf(scan, i) is { } one)
        {
            return one;
        }

        if (item.Kind == ItemKind.Unknown)
        {
            return UnknownName(scan, i) ?? (item, 1);
        }

        return item.Kind is not (ItemKind.Sense or ItemKind.Number) || !item.Tags.HasAny(Openers) ? (item, 1)
            : OwnDam(scan, i) ?? OfNamed(scan, i) ?? PronounBaby(scan, i) ?? Ordinal(scan, i) ?? Described(scan, i) ?? Male(scan, i) ?? Pronoun(scan, i) ?? (item, 1);
    }

    // "one of the twins", "one of them": which one has to be asked
    private static (Item Item, int Used)? OneOf(Scan scan, int i)
    {
        var item = scan.Items[i];
        if (item.Kind != ItemKind.Sense || scan.Tokens[item.End - 1].Text is not ("of" or "de") || !item.Is(Tag.OneWord) || scan.At(i + 1) is null)
        {
            return null;
        }

        var (whole, used) = At(scan, i + 1);
        if (whole.Mention is null && whole.Is(Tag.Article) && scan.At(i + 2) is { Kind: ItemKind.Sense or ItemKind.Unknown } noun && !noun.Tags.HasAny(TagSet.Of(Tag.Thing, Tag.Goods, Tag.KitThing)))
        {
            return (new Item(ItemKind.Animal, item.First, noun.End) { Mention = new Mention(MentionKind.Unknown) { OneOf = true } }, 3);
        }

        return whole.Mention is { Kind: not MentionKind.Named }
            ? (new Item(ItemKind.Animal, item.First, whole.End) { Mention = new Mention(MentionKind.Unknown) { OneOf = true }, Tags = whole.Tags & Babies }, used + 1)
            : null;
    }

    private static (Item Item, int Used) Named(Scan scan, int i, Item item)
    {
        var mention = item.Mention!;
        var genitive = mention.BareGenitive || IsClitic(scan, i + 1);
        var after = i + (IsClitic(scan, i + 1) ? 2 : 1);
        var noun = SkipLooks(scan, after);
        if (scan.At(noun) is { Kind: ItemKind.Sense } next && Noun(next) && (genitive || next.Is(Tag.Baby) || HasBaby(scan, mention)) && (genitive || noun == after))
        {
            return (Baby(scan, i, noun + 1, mention.Entries, next), noun + 1 - i);
        }

        if (scan.At(after)?.Is(Tag.SelfWord) == true)
        {
            mention.Self = true;
            after++;
        }

        mention.BareGenitive = genitive && !(scan.At(after) is { } tail && tail.Tags.HasAny(Tag.Due, Tag.Labour, Tag.Placenta, Tag.Pregnant));
        return (Whole(scan, item, i, after), after - i);
    }

    private static Item Whole(Scan scan, Item item, int i, int after)
    {
        item.End = scan.Items[after - 1].End;
        item.Kind = ItemKind.Animal;
        _ = i;
        return item;
    }

    private static bool HasBaby(Scan scan, Mention mention) => mention.Entries.Count > 0 && scan.Herd.BabiesOf(mention.Entries[0]).Count > 0;

    private static bool Noun(Item item) => item.Tags.HasAny(Nouns) && !item.Is(Tag.Born);

    private static bool IsClitic(Scan scan, int i) => scan.At(i) is { } item && item.End == item.First + 1 && scan.Tokens[item.First].Text == "'s";

    private static int SkipLooks(Scan scan, int i)
    {
        var at = i;
        while (at < i + 3 && scan.At(at) is { Kind: ItemKind.Sense } item && item.Tags.HasAny(Looks) && !Noun(item))
        {
            at++;
        }

        return at;
    }

    private static Item Baby(Scan scan, int from, int end, List<int> dams, Item noun)
    {
        var mention = new Mention(MentionKind.BabyOf) { Sex = SexOf(noun), Plural = IsPlural(scan, noun) };
        mention.Entries.AddRange(dams);
        mention.Ordinal = noun.Is(Tag.FirstOne) ? 1 : noun.Is(Tag.SecondOne) ? 2 : null;
        if (mention.Ordinal is null && scan.At(end) is { Kind: ItemKind.Number, Value: 1 or 2 } n && scan.Tokens[n.First].Decimals == 0 && noun.Is(Tag.Baby) && EndsHere(scan.At(end + 1)))
        {
            mention.Ordinal = null;
        }

        return new Item(ItemKind.Animal, scan.Items[from].First, scan.Items[end - 1].End) { Mention = mention, Tags = TagSet.Of(Tag.Baby) };
    }

    private static bool EndsHere(Item? item) => item is null;

    private static bool IsPlural(Scan scan, Item noun) => noun.Is(Tag.Twins) || noun.Is(Tag.LittleOnes) && scan.Tokens[noun.End - 1].Text.EndsWith('s');

    private static Sex? SexOf(Item item) => !item.Is(Tag.Sex) ? null : item.Argument == 1 ? Sex.Female : item.Argument == 2 ? Sex.Male : null;

    // "la cría de la Luna", "baby of Sage", "la de Luna", "both of Nutmeg's kids"
    private static (Item Item, int Used)? OfNamed(Scan scan, int i)
    {
        var item = scan.Items[i];
        var article = item.Is(Tag.Article) && scan.Tokens[item.First].Text is "la" or "el" or "lo" or "las" or "los";
        var noun = article && scan.At(i + 1) is { Kind: ItemKind.Sense } second && Noun(second) ? i + 1 : i;
        if (!article && !Noun(item) && !item.Is(Tag.Both))
        {
            return null;
        }

        var of = noun + 1;
        if (scan.At(of) is not { Kind: ItemKind.Sense } prep || !prep.Is(Tag.Prep) || scan.Tokens[prep.First].Text is not ("de" or "of"))
        {
            return null;
        }

        var at = scan.At(of + 1)?.Is(Tag.Article) == true ? of + 2 : of + 1;
        if (scan.At(at) is not { Kind: ItemKind.Animal, Mention: { Kind: MentionKind.Named } owner } named)
        {
            return null;
        }

        if (item.Is(Tag.Both))
        {
            var (whole, used) = Named(scan, at, named);
            whole.Mention!.Plural = true;
            whole.First = item.First;
            return (whole, at - i + used);
        }

        return (Baby(scan, i, at + 1, owner.Entries, scan.Items[noun]), at + 1 - i);
    }

    // "momma 101.3": the mother's own
    private static (Item Item, int Used)? OwnDam(Scan scan, int i)
    {
        if (scan.Items[i] is not { Kind: ItemKind.Sense, Argument: 0 } item || !item.Is(Tag.DamWord))
        {
            return null;
        }

        var at = scan.At(i + 1)?.Is(Tag.Be) == true ? i + 2 : i + 1;
        return scan.At(at) is { Kind: ItemKind.Number or ItemKind.Quantity } ? (Some(scan, i, i + 1, new Mention(MentionKind.SomeDam) { Self = true }), 1) : null;
    }

    // "her baby": that of the dam named before
    private static (Item Item, int Used)? PronounBaby(Scan scan, int i)
    {
        if (!scan.Items[i].Tags.HasAny(Tag.Her, Tag.Hers) || scan.Items[i].Is(Tag.Article))
        {
            return null;
        }

        var noun = SkipLooks(scan, i + 1);
        return scan.At(noun) is { Kind: ItemKind.Sense } next && Noun(next) ? (Baby(scan, i, noun + 1, [], next), noun + 1 - i) : null;
    }

    private static (Item Item, int Used)? Ordinal(Scan scan, int i)
    {
        var item = scan.Items[i];
        if (BareSecond(scan, i) is { } second)
        {
            return second;
        }

        if (!item.Tags.HasAny(Tag.FirstOne, Tag.SecondOne, Tag.SmallOne, Tag.BigOne) || item.Kind != ItemKind.Sense)
        {
            return null;
        }

        var mention = item.Tags.HasAny(TagSet.Of(Tag.SmallOne, Tag.BigOne)) ? new Mention(MentionKind.SomeBaby) { Size = item.Is(Tag.SmallOne) ? -1 : 1 }
            : new Mention(MentionKind.SomeBaby) { Ordinal = item.Is(Tag.FirstOne) ? 1 : 2, Other = scan.Tokens.AsSpan(item.First, item.End - item.First).ToArray().Any(token => token.Text is "other" or "otra" or "otro") };
        return (new Item(ItemKind.Animal, item.First, item.End) { Mention = mention }, 1);
    }

    // "first lamb 4.6, second 4.1"
    private static (Item Item, int Used)? BareSecond(Scan scan, int i) =>
        scan.Items[i] is { Kind: ItemKind.Sense } item && scan.Tokens[item.First].Text is "second" or "2nd" && scan.At(i + 1) is { Kind: ItemKind.Number or ItemKind.Quantity } && scan.Has(Tag.FirstOne)
            ? (new Item(ItemKind.Animal, scan.Items[i].First, scan.Items[i].End) { Mention = new Mention(MentionKind.SomeBaby) { Ordinal = 2 } }, 1)
            : null;

    private static (Item Item, int Used)? Described(Scan scan, int i)
    {
        var (plural, count, colour, at) = (false, (int?)null, 0, i);
        var article = false;
        while (scan.At(at) is { } item && at < i + 5 && (item.Kind == ItemKind.Number || item.Tags.HasAny(Looks | TagSet.Of(Tag.All, Tag.Both)))
            && !item.Tags.HasAny(Babies | TagSet.Of(Tag.Sex, Tag.OneWord)) && item.Kind is ItemKind.Sense or ItemKind.Number)
        {
            count = item.Kind == ItemKind.Number && item.Value % 1 == 0 && item.Value is >= 2 and <= 30 ? (int)item.Value : count;
            count = item.Is(Tag.Both) ? 2 : count;
            plural = plural || count is not null || item.Is(Tag.All) || item.Is(Tag.Both);
            colour = item.Is(Tag.Colour) ? item.Argument : colour;
            article = article || (item.Is(Tag.Article) && scan.Tokens[item.First].Text is not ("a" or "an" or "un" or "una" or "new")) || item.Is(Tag.Both) || item.Is(Tag.All);
            at++;
            if (item.Kind == ItemKind.Number && !article)
            {
                return null;
            }
        }

        return scan.At(at) is { Kind: ItemKind.Sense } noun ? Described(scan, i, at, noun, (plural, count, colour, article)) : BareBoth(scan, i, at, plural, count);
    }

    private static (Item Item, int Used)? BareBoth(Scan scan, int i, int at, bool plural, int? count) =>
        scan.Items[i].Is(Tag.Done) || scan.At(at)?.Is(Tag.Own) == true ? null
        : at > i && plural && scan.Items[i].Is(Tag.All) && count is not null ? (Some(scan, i, at, new Mention(MentionKind.SomeBaby) { Plural = true, Count = count }), at - i)
        : at > i && plural && scan.Items[at - 1].Is(Tag.Both) ? (Denied(Some(scan, i, at, new Mention(MentionKind.SomeBaby) { Plural = true, Count = 2 }), scan.Items[at - 1]), at - i) : null;

    // "neither has nursed"
    private static Item Denied(Item item, Item word)
    {
        item.Tags = word.Tags & TagSet.Of(Tag.Not);
        return item;
    }

    private static (Item Item, int Used)? Described(Scan scan, int i, int at, Item noun, (bool Plural, int? Count, int Colour, bool Article) seen)
    {
        var grown = noun.Is(Tag.GirlsWord) || noun.Is(Tag.DamWord);
        var isBaby = noun.Tags.HasAny(Babies);
        if (!(grown && (seen.Article || seen.Plural)) && !(isBaby && !noun.Is(Tag.Born) && (seen.Article || seen.Colour > 0)) && !(noun.Is(Tag.Sex) && (seen.Article || seen.Colour > 0))
            && !(noun.Is(Tag.OneWord) && (seen.Colour > 0 || seen.Article && at > i + 1)))
        {
            return isBaby && seen.Plural ? (Some(scan, i, at + 1, new Mention(MentionKind.SomeBaby) { Plural = true, Count = seen.Count }), at + 1 - i) : BareBoth(scan, i, at, seen.Plural, seen.Count);
        }

        var size = noun.Is(Tag.SmallOne) ? -1 : noun.Is(Tag.BigOne) ? 1 : 0;
        var mention = new Mention(grown && (seen.Plural || noun.Is(Tag.DamWord)) && !noun.Is(Tag.LittleOnes) ? MentionKind.SomeDam : MentionKind.SomeBaby)
        {
            Sex = SexOf(noun),
            Colour = seen.Colour,
            Size = size,
            Plural = seen.Plural || IsPlural(scan, noun),
            Count = noun.Is(Tag.Twins) ? 2 : seen.Count,
            Species = !noun.Is(Tag.DamWord) ? null : noun.Argument switch { 1 => Core.Herd.Species.Sheep, 2 => Core.Herd.Species.Goat, _ => null },
        };
        var some = Some(scan, i, at + 1, mention);
        some.Tags = noun.Tags & (Babies | TagSet.Of(Tag.Sex, Tag.MaleWord));
        some.Argument = noun.Argument;
        return (some, at + 1 - i);
    }

    private static (Item Item, int Used)? Male(Scan scan, int i)
    {
        var at = scan.Items[i].Is(Tag.Article) ? i + 1 : i;
        return scan.At(at) is { Kind: ItemKind.Sense } item && item.Is(Tag.MaleWord) && !(item.Is(Tag.Sex) && at == i)
            ? (Some(scan, i, at + 1, new Mention(MentionKind.SomeMale)), at + 1 - i)
            : null;
    }

    private static (Item Item, int Used)? Pronoun(Scan scan, int i)
    {
        var item = scan.Items[i];
        if (!item.Tags.HasAny(Pronouns) || item.End > item.First + 1 || item.Is(Tag.Article) || item.Kind != ItemKind.Sense)
        {
            return null;
        }

        var they = item.Is(Tag.They);
        var mention = new Mention(MentionKind.Pronoun)
        {
            Sex = item.Is(Tag.She) || item.Is(Tag.Her) ? Sex.Female : item.Is(Tag.He) || item.Is(Tag.Him) ? Sex.Male : null,
            Vague = item.Is(Tag.It),
            Plural = they,
        };
        var pronoun = Some(scan, i, i + 1, mention);
        pronoun.Tags = item.Tags;
        return (pronoun, 1);
    }

    private static Item Some(Scan scan, int i, int end, Mention mention) =>
        new(ItemKind.Animal, scan.Items[i].First, scan.Items[end - 1].End) { Mention = mention };

    // "UPS", "NZ": letters that stand for something, unless all of the message is in capitals.
    private static bool IsShouted(Scan scan, Tokens.Token token) =>
        token.End - token.Start is 2 or 3 or 4 && !scan.Text.AsSpan(token.Start, token.End - token.Start).ContainsAnyExceptInRange('A', 'Z') && scan.Text.AsSpan().ContainsAnyInRange('a', 'z');

    // A capitalised word that nobody knows, where a name would stand.
    private static (Item Item, int Used)? UnknownName(Scan scan, int i)
    {
        var item = scan.Items[i];
        var token = scan.Tokens[item.First];
        if (!token.Capital || IsShouted(scan, token) || token.Text.Length < 2 || token.Text.Length > 24 || !char.IsLetter(token.Text[0]))
        {
            return null;
        }

        return Unknown(scan, i, new Mention(MentionKind.Unknown) { Name = item.Text });
    }

    private static (Item Item, int Used) Unknown(Scan scan, int i, Mention mention)
    {
        var item = scan.Items[i];
        var genitive = IsClitic(scan, i + 1);
        var end = genitive ? i + 2 : i + 1;
        var noun = SkipLooks(scan, end);
        if (genitive && scan.At(noun) is { Kind: ItemKind.Sense } next && Noun(next))
        {
            end = noun + 1;
        }

        return (new Item(ItemKind.Animal, item.First, scan.Items[end - 1].End) { Mention = mention, Text = item.Text }, end - i);
    }
}

using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Reads the sentences in which an animal joins the herd: "we bought a dam called Hazel, alpaca, brown".</summary>
internal static class NewcomerReader
{
    private static readonly TagSet AnimalWords = TagSet.Of(Tag.Species, Tag.DamWord, Tag.MaleWord, Tag.GirlsWord, Tag.Sex, Tag.Baby, Tag.Youngster);
    private static readonly TagSet Plain = AnimalWords | TagSet.Of(Tag.Colour, Tag.TagWord, Tag.Article, Tag.Prep, Tag.Be, Tag.And, Tag.Added, Tag.NameIs, Tag.JustNow);
    private static readonly TagSet Figures = TagSet.Of(Tag.HasQuantity, Tag.HasTime, Tag.HasVolume, Tag.HasMass);
    private static readonly TagSet Doubt = TagSet.Of(Tag.Hedge, Tag.Hearsay, Tag.Not, Tag.History, Tag.Goods, Tag.KitThing, Tag.Medicine, Tag.Vaccine, Tag.Bottle);

    public static void Read(Statement statement)
    {
        if (!statement.Scan.Has(Tag.Added))
        {
            return;
        }

        foreach (var sentence in statement.Clauses.GroupBy(clause => clause.Sentence).ToList())
        {
            var clauses = sentence.ToList();
            var lead = clauses.Find(clause => clause.Has(Tag.Added));
            if (lead is not null && !lead.Asked && !clauses.Exists(clause => clause.Tags.HasAny(Doubt)) && Speaks(statement, clauses) && Name(statement, clauses, lead) is { } name)
            {
                Add(statement, clauses, lead, name);
            }
        }
    }

    // "new llama" is one phrase: what its words mean alone counts.
    private static bool Speaks(Statement statement, List<Clause> clauses) => clauses.Exists(clause => clause.Items.Exists(item => Alone(statement, item).HasAny(AnimalWords)));

    private static TagSet Alone(Statement statement, Item item)
    {
        var tags = item.Tags;
        for (var i = item.First; i < item.End; i++)
        {
            tags |= Sense(statement, i).Tags;
        }

        return tags;
    }

    private static Sense Sense(Statement statement, int token) =>
        statement.Scan.Words.Phrases.Alone(statement.Scan.Words.Words.Find(statement.Scan.Tokens[token].Exact, statement.Scan.Tokens[token].Text));

    // Behind "called", or alone behind a mark, or at the end of what tells of the newcomer.
    private static (Clause Clause, NewName Name)? Name(Statement statement, List<Clause> clauses, Clause lead)
    {
        foreach (var clause in clauses.Skip(clauses.IndexOf(lead)).Where(clause => !Figured(clause)))
        {
            var called = clause.Items.FindLastIndex(item => item.Is(Tag.NameIs));
            var alone = clause != lead && NameReader.IsName(statement, clause) && (clause.Items.Exists(item => item.Mention is null or { Kind: MentionKind.Unknown }) || !lead.HasAny(Tag.Born, Tag.Sex, Tag.Baby));
            if ((called >= 0 || alone ? NameReader.In(statement, clause, called) : NameReader.Unknown(statement, clause)) is { } name
                && (alone || called >= 0 || clause.Items[^1] == name.Items[^1] || IsPlain(clause)))
            {
                return (clause, name);
            }
        }

        return null;
    }

    // Tells what sort of animal it is, and nothing else.
    private static bool IsPlain(Clause clause) =>
        clause.Items.TrueForAll(item => item.Mention is not null || item.Tags.HasAny(Plain) || item.Tags == TagSet.Of(Tag.Known) || item.Kind is ItemKind.Number or ItemKind.Unknown);

    private static bool Figured(Clause clause) => clause.Tags.HasAny(Figures);

    private static void Add(Statement statement, List<Clause> clauses, Clause lead, (Clause Clause, NewName Name) found)
    {
        var herd = statement.Scan.Herd;
        var told = clauses.Skip(clauses.IndexOf(lead)).Where(clause => clause == lead || clause == found.Clause || (!Figured(clause) && IsPlain(clause))).ToList();
        var items = told.SelectMany(clause => clause.Items).Where(item => !found.Name.Items.Contains(item)).ToList();
        var baby = items.Find(item => item.Mention?.Kind == MentionKind.BabyOf)?.Mention;
        var born = baby?.Entries.Exists(dam => herd.BabiesOf(dam).Any(one => herd.Entry(one).Role == HerdRole.Newborn)) == true;
        var words = items.Aggregate(default(TagSet), (all, item) => all | Alone(statement, item));
        var sex = baby?.Sex ?? (items.Find(item => item.Is(Tag.Sex) && item.Argument is 1 or 2) is { } word ? word.Argument == 1 ? Sex.Female : Sex.Male : words.Has(Tag.GirlsWord) ? Sex.Female : null);
        foreach (var one in told.Where(clause => clause != found.Clause && clause != lead && clause.Items is [{ Mention.Kind: MentionKind.Unknown }])
            .Select(clause => (Clause: clause, Name: NameReader.Unknown(statement, clause)!)).Where(one => one.Name is not null).Prepend(found).ToList())
        {
            var draft = RosterReader.Add(statement, one.Clause, one.Name.Items[0], born ? null : RosterWords.Added, born ? baby : new Mention(MentionKind.Unknown) { Name = one.Name.Text });
            (draft.Name, draft.Text) = (one.Name.Text, born ? RosterWords.Named : RosterWords.Added);
            if (!born)
            {
                (draft.Animal, draft.Settled, draft.Sex, draft.Traits) = (one.Name.Text, true, sex, Traits(statement, items, words, baby));
            }
        }

        foreach (var clause in told)
        {
            clause.Told = true;
            clause.Items.ForEach(item => item.Used = true);
        }
    }

    private static AnimalTraits Traits(Statement statement, List<Item> items, TagSet words, Mention? baby)
    {
        var dam = baby?.Entries ?? items.Find(item => item.Mention is { Kind: MentionKind.Named } one && statement.Scan.Herd.Entry(one.Entries[0]).Role == HerdRole.Dam)?.Mention?.Entries;
        var young = words.HasAny(TagSet.Of(Tag.Baby, Tag.Youngster)) || dam is { Count: > 0 };
        var colour = items.Find(item => item.Is(Tag.Colour));
        var tag = items.Find(item => item.Is(Tag.TagWord) && item.End < statement.Scan.Tokens.Length && statement.Scan.Tokens[item.End].Kind == Tokens.TokenKind.Number);
        return new AnimalTraits(
            young ? HerdRole.Young : words.Has(Tag.DamWord) ? HerdRole.Dam : words.Has(Tag.MaleWord) && !words.Has(Tag.Sex) ? HerdRole.Sire : null,
            SpeciesOf(statement, items),
            colour is null ? null : statement.Scan.Slice(colour, colour).ToLowerInvariant(),
            tag is null ? null : statement.Scan.Tokens[tag.End].Text,
            dam is { Count: > 0 } ? statement.Scan.Herd.Entry(dam[0]).Name : null);
    }

    private static Species? SpeciesOf(Statement statement, List<Item> items)
    {
        foreach (var item in items)
        {
            for (var i = item.First; i < item.End; i++)
            {
                var sense = Sense(statement, i);
                if (sense.Tags.Has(Tag.Species))
                {
                    return (Species)(sense.Argument - 1);
                }

                if (sense.Tags.Has(Tag.DamWord) && sense.Argument > 0)
                {
                    return sense.Argument == 1 ? Species.Sheep : Species.Goat;
                }
            }
        }

        return null;
    }
}

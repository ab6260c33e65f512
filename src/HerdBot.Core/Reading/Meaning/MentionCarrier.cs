using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Gives each fact the animal it was said of: the nearest one named, or the one named last.</summary>
internal static class MentionCarrier
{
    public static void Carry(Statement statement, Clause clause, int from)
    {
        foreach (var item in clause.Items.Where(item => item.Mention?.Kind == MentionKind.BabyOf && item.Mention.Entries.Count == 0))
        {
            item.Mention!.Entries.AddRange(statement.Named?.Entries ?? []);
        }

        var own = clause.Items.FindAll(item => IsSubject(statement, item));
        for (var i = from; i < statement.Drafts.Count; i++)
        {
            var draft = statement.Drafts[i];
            draft.Mention ??= Nearest(own, draft) is { } near ? Merged(statement, clause, near.Mention!, draft) : statement.Named ?? Spoken(statement, draft);
        }

        LateNames(statement, clause, own, from);
        if ((own.FindLast(item => item.Mention!.Kind is not MentionKind.Pronoun && !IsSire(statement, item)) ?? own.FindLast(item => item.Mention!.Kind is not MentionKind.Pronoun)) is { } named)
        {
            statement.Named = named.Mention;
        }
    }

    /// <summary>Facts that named nobody take the one name of their sentence, or of the message.</summary>
    public static void Lend(Statement statement)
    {
        foreach (var draft in statement.Drafts)
        {
            if (draft.Mention is null or { Kind: MentionKind.Pronoun } && !draft.Settled && draft.Kind is not (FactKind.Claim or FactKind.Roster)
                && !draft.Clause.Items.Exists(item => item.Is(Tag.All) && item.Argument == Completion.WholeHerd))
            {
                draft.Mention = Sole(statement, draft.Clause.Sentence) ?? draft.Mention;
            }

            if (draft.Mention is null or { Kind: MentionKind.Pronoun } && statement.SentenceHas(draft.Clause, Tag.Whose))
            {
                (draft.Animal, draft.Settled) = (Fact.AskAnimal, true);
            }
        }
    }

    // The one name of a sentence; where it has none, the one name of the message.
    private static Mention? Sole(Statement statement, int sentence)
    {
        var (near, all) = (0, 0);
        Mention? nearest = null, only = null;
        foreach (var clause in statement.Clauses)
        {
            foreach (var item in clause.Items)
            {
                if (IsSubject(statement, item) && item.Mention!.Kind is MentionKind.Named or MentionKind.BabyOf or MentionKind.Unknown)
                {
                    (only, all) = (item.Mention, all + 1);
                    (nearest, near) = clause.Sentence == sentence ? (item.Mention, near + 1) : (nearest, near);
                }
            }
        }

        return near == 1 ? nearest : near == 0 && all == 1 && only!.Kind == MentionKind.Named ? only : null;
    }

    // "took his temp": the phrase itself says of whom; "el ombligo" does not
    private static Mention? Spoken(Statement statement, Draft draft)
    {
        if (draft.Anchor is not { Kind: ItemKind.Sense } anchor || anchor.End <= anchor.First + 1)
        {
            return null;
        }

        var words = statement.Scan.Words;
        for (var i = anchor.First; i < anchor.End; i++)
        {
            var tags = words.Phrases.Alone(words.Words.Find(statement.Scan.Tokens[i].Exact, statement.Scan.Tokens[i].Text)).Tags;
            if (tags.HasAny(TagSet.Of(Tag.Him, Tag.He, Tag.Her, Tag.She)) && !tags.Has(Tag.Article))
            {
                return new Mention(MentionKind.Pronoun) { Sex = tags.HasAny(TagSet.Of(Tag.Him, Tag.He)) ? Sex.Male : Sex.Female };
            }
        }

        return null;
    }

    private static bool IsSire(Statement statement, Item item) =>
        item.Mention is { Kind: MentionKind.Named, Plural: false } mention && statement.Scan.Herd.Entry(mention.Entries[0]).Role == Core.Herd.HerdRole.Sire;

    private static bool IsSubject(Statement statement, Item item) =>
        item.Mention is { } mention && mention.Kind != MentionKind.SomeMale && !mention.Vague
        && !(mention is { Kind: MentionKind.Named, Plural: false } && statement.Scan.Herd.Entry(mention.Entries[0]).Role == Core.Herd.HerdRole.Sire && (mention.AfterPreposition || item.Used));

    // A name just before the fact, else the nearest after it; pronouns only where nothing better is there.
    private static Item? Nearest(List<Item> own, Draft draft) =>
        own.FindLast(item => item.First <= draft.Position && item.Mention!.Kind != MentionKind.Pronoun)
        ?? own.Find(item => item.Mention is { Kind: not MentionKind.Pronoun, Self: false })
        ?? own.FindLast(item => item.First <= draft.Position)
        ?? own.Find(item => !item.Mention!.Self);

    // "she" goes back to the one named last, where that one can be a she.
    private static Mention Merged(Statement statement, Clause clause, Mention mention, Draft draft)
    {
        if (mention.Kind != MentionKind.Pronoun || statement.Named is not { } named || named.Kind == MentionKind.Unknown && clause.Sentence > 0)
        {
            return mention;
        }

        var grown = named.Kind == MentionKind.Named && named.Entries.Count == 1 && statement.Scan.Herd.Entry(named.Entries[0]).Role == Core.Herd.HerdRole.Dam;
        return mention.Sex is null || mention.Plural || grown || named.Sex is null || named.Sex == mention.Sex || Kinship.Of(draft.Kind) == Whom.Dam ? named : mention;
    }

    // "Exposed to Gus: Fern, Hazel, May", "2 cc all the girls": the names come after the fact.
    private static void LateNames(Statement statement, Clause clause, List<Item> own, int from)
    {
        if (from != statement.Drafts.Count || own.Count == 0 || clause.Items.Exists(item => item is { Kind: ItemKind.Sense, Used: false } && item.Tags.HasAny(Tag.Not.Alone())) || own[0].Mention!.Kind == MentionKind.Pronoun)
        {
            return;
        }

        var sole = clause.Items.TrueForAll(item => item.Mention is not null || item.Tags.HasAny(TagSet.Of(Tag.Article, Tag.Prep, Tag.And, Tag.Both, Tag.Known, Tag.Banter)));
        var waiting = statement.Drafts.Where(draft => draft.Mention is null && sole).ToList();
        foreach (var draft in waiting)
        {
            draft.Mention = own[0].Mention;
        }

        if (sole && waiting.Count == 0 && statement.Drafts.LastOrDefault() is { Kind: FactKind.Breeding or FactKind.Birth or FactKind.Vaccination or FactKind.Medication } last && last.Mention != own[0].Mention)
        {
            Again(statement, clause, last, own);
        }
    }

    private static void Again(Statement statement, Clause clause, Draft last, List<Item> own)
    {
        if (last.Kind == FactKind.Birth && last.N is not null)
        {
            statement.Drafts.RemoveAll(draft => draft.Kind == FactKind.Birth && draft != last);
            last.N = null;
        }

        foreach (var item in own)
        {
            statement.Drafts.Add(new Draft(last.Kind, clause, item.First)
            {
                Mention = item.Mention,
                Value = last.Value,
                Unit = last.Unit,
                When = last.When,
                Sire = last.Sire,
                Text = last.Text,
                Sex = last.Sex,
            });
        }
    }

    private static TagSet Alone(this Tag tag) => TagSet.Of(tag);
}

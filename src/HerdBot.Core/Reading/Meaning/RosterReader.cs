using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Reads who got which name or tag, and who left the herd.</summary>
internal static class RosterReader
{
    private static readonly TagSet Doubt = TagSet.Of(Tag.Hedge, Tag.Hearsay, Tag.Not);
    private static readonly TagSet Small = TagSet.Of(Tag.Be, Tag.Article, Tag.Prep, Tag.Had, Tag.Known, Tag.Me, Tag.JustNow, Tag.TagWord, Tag.On, Tag.Gave, Tag.So);
    private static readonly TagSet Says = TagSet.Of(Tag.NameIs, Tag.Nick, Tag.Renamed);

    public static void Read(Statement statement, Clause clause)
    {
        if (clause.Asked)
        {
            return;
        }

        if (clause.Tags.HasAny(Says) && NameReader.In(statement, clause, clause.Items.FindLastIndex(item => item.Tags.HasAny(Says))) is { } name)
        {
            Name(statement, clause, name, Whose(statement, clause, name), clause.Has(Tag.Nick) ? RosterWords.Nickname : IsCalling(statement, clause) ? null : RosterWords.Renamed);
        }
        else if (clause.HasAny(Tag.Be, Tag.Call) && Equated(statement, clause) is { } pair)
        {
            Name(statement, clause, pair.Name, pair.Of, pair.Field);
        }
        else if (clause.HasAny(Tag.HasNumber, Tag.Be, Tag.TagWord) && TagOf(statement, clause) is { } tag)
        {
            var draft = Add(statement, clause, tag.Item, RosterWords.Tag, tag.Of);
            tag.Of.Self = tag.Of.Kind == MentionKind.Named;
            draft.Traits = new(Tag: tag.Tag);
            draft.Text = $"tag {tag.Tag}";
        }
        else if (clause.First(Tag.Sold) is { } sold && !clause.HasAny(Tag.Hedge, Tag.Not) && clause.Mentions.FirstOrDefault(mention => mention.Entries.Count > 0) is { } leaves)
        {
            var draft = Add(statement, clause, sold, statement.Scan.TokenOf(sold).Text is "sold" or ['v', 'e', 'n', 'd', ..] ? RosterWords.Sold : RosterWords.Gone, leaves);
            draft.Text = statement.Scan.Slice(clause.Items[0], clause.Items[^1]);
        }
    }

    public static Draft Add(Statement statement, Clause clause, Item anchor, string? field, Mention? of)
    {
        var draft = statement.Add(FactKind.Roster, clause, anchor);
        (draft.Field, draft.Text, draft.Mention) = (field, field, of);
        foreach (var item in clause.Items)
        {
            item.Used = true;
        }

        return draft;
    }

    private static void Name(Statement statement, Clause clause, NewName name, Mention of, string? field)
    {
        if (statement.Drafts.Exists(given => given.Kind == FactKind.Roster && string.Equals(given.Name, name.Text, StringComparison.OrdinalIgnoreCase)))
        {
            return;
        }

        var draft = Add(statement, clause, name.Items[0], field, of);
        (draft.Name, draft.Text) = (name.Text, field ?? RosterWords.Named);
    }

    // "we're calling her Biscuit": a name beside the name, where there is one
    private static bool IsCalling(Statement statement, Clause clause) =>
        clause.Items.Exists(item => item.Is(Tag.NameIs) && Enumerable.Range(item.First, item.End - item.First).Any(i => statement.Scan.Tokens[i].Text.StartsWith("call", StringComparison.Ordinal)));

    // The one that the clause names; else the young one of the one named before; else whoever "her" is.
    private static Mention Whose(Statement statement, Clause clause, NewName name)
    {
        if (clause.Items.Find(item => item.Mention is not null && !name.Items.Contains(item)) is { Mention: { } own } named)
        {
            own.Self |= own.BareGenitive && statement.Scan.Tokens.AsSpan(named.End).Length > 0 && statement.Scan.Tokens[named.End].Text.StartsWith("name", StringComparison.Ordinal);
            return own;
        }

        if (statement.Named is not { Kind: MentionKind.Named, Plural: false } before)
        {
            return statement.Named ?? Spoken(statement, clause);
        }

        var young = new Mention(MentionKind.Named) { BareGenitive = statement.Scan.Herd.BabiesOf(before.Entries[0]).Count > 0 || statement.Drafts.Exists(draft => draft.Kind == FactKind.Birth && draft.Mention == before) };
        young.Entries.AddRange(before.Entries);
        return young;
    }

    // "calling her Biscuit"
    private static Mention Spoken(Statement statement, Clause clause)
    {
        var verb = clause.Items.FindLast(item => item.Tags.HasAny(Says))!;
        var (her, him) = (false, false);
        foreach (var word in statement.Scan.Tokens.AsSpan(verb.First, verb.End - verb.First))
        {
            her |= word.Text is "her" or "la";
            him |= word.Text is "him" or "his" or "lo";
        }

        return new Mention(MentionKind.Pronoun) { Sex = her ? Sex.Female : him ? Sex.Male : null };
    }

    // "Sage's girl is Clover", "Clover is Sage's girl", "Hazel is now Hazelnut", "we call Juniper Juni", and nothing else in the clause
    private static (NewName Name, Mention Of, string? Field)? Equated(Statement statement, Clause clause)
    {
        var known = clause.Items.Find(item => item.Mention is { Kind: MentionKind.Named or MentionKind.BabyOf, Plural: false, Entries.Count: 1 } or { Kind: MentionKind.SomeBaby, Plural: false });
        if (known?.Mention is not { } of || clause.Tags.HasAny(Doubt) || NameReader.Unknown(statement, clause) is not { } name
            || !clause.Items.TrueForAll(item => item == known || name.Items.Contains(item) || item.Tags.HasAny(TagSet.Of(Tag.Be, Tag.JustNow, Tag.Call, Tag.Me, Tag.Article))))
        {
            return null;
        }

        var now = clause.Has(Tag.JustNow);
        return clause.Has(Tag.Call) && known.End == name.Items[0].First && !of.BareGenitive ? (name, of, RosterWords.Nickname)
            : clause.Has(Tag.Be) && !clause.Has(Tag.Call) && (now || of.Kind == MentionKind.SomeBaby || (of.Kind == MentionKind.BabyOf && statement.Scan.Herd.BabiesOf(of.Entries[0]).Count > 0)) ? (name, of, now ? RosterWords.Renamed : null)
            : null;
    }

    // "Juniper is tag 14", "#14 is Juniper", "tagged Juniper 14"
    private static (string Tag, Item Item, Mention Of)? TagOf(Statement statement, Clause clause)
    {
        var taken = clause.Items.Find(item => item.Mention is { Kind: MentionKind.Named } && item.End == item.First + 2 && statement.Scan.Tokens[item.End - 1].Kind == Tokens.TokenKind.Number);
        var word = taken ?? clause.Items.Find(item => IsTagWord(statement, item));
        var number = taken ?? (clause.Items.FindAll(item => item.Kind == ItemKind.Number) is [var only] ? only : null);
        var of = clause.Items.Find(item => item != taken && item.Mention is { Kind: MentionKind.Named or MentionKind.BabyOf, Plural: false, Entries.Count: 1 });
        return word is null || number is null || of is null || clause.Tags.HasAny(Doubt) || (!clause.HasAny(Tag.Be, Tag.Had) && statement.Scan.TokenOf(word).Text == "#")
            || !clause.Items.TrueForAll(item => item == of || item == word || item == number || item.Tags.HasAny(Small))
            ? null : (statement.Scan.Tokens[number.End - 1].Text, word, of.Mention!);
    }

    private static bool IsTagWord(Statement statement, Item item) =>
        statement.Scan.TokenOf(item).Text is var text && (text == "#" || (item.Is(Tag.TagWord) && text is not ("number" or "no" or "numero")));
}

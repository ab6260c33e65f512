using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Tokens;

namespace HerdBot.Core.Reading.Scanning;

/// <summary>Finds names of animals and people, and tells May the llama from May the month.</summary>
internal sealed class NameFinder(Scan scan, WordLookup lookup)
{
    // A capital may well begin a name: only a word that tells something is mended.
    private static readonly TagSet Faint = TagSet.Of(Tag.Known, Tag.Mood, Tag.Thing, Tag.Foreign, Tag.Plain, Tag.Banter, Tag.Article, Tag.Prep, Tag.Goods);

    private static readonly TagSet MonthLead = TagSet.Of(Tag.InFuture, Tag.Since, Tag.History, Tag.Before, Tag.StartRange);

    /// <summary>What may follow a name that is also a plain word.</summary>
    private static readonly TagSet Cue = TagSet.Of(
        Tag.Be, Tag.Had, Tag.Not, Tag.Still, Tag.Standing, Tag.Nurse, Tag.Urine, Tag.Meconium, Tag.Passed, Tag.Dropped,
        Tag.Labour, Tag.WaterBroke, Tag.Bred, Tag.Pregnant, Tag.Open, Tag.SpitOff, Tag.Spit, Tag.Died, Tag.Weight, Tag.Temperature,
        Tag.Baby, Tag.Sex, Tag.Cleaned, Tag.Refuse, Tag.Due, Tag.Born, Tag.NotStanding, Tag.NotNurse, Tag.NoteBaby, Tag.Twins, Tag.Weaned, Tag.NoteDam, Tag.Sold, Tag.Gave, Tag.BredWeak);

    /// <summary>What a number at the start can do only as somebody's tag: "34 lambed".</summary>
    private static readonly TagSet Does = TagSet.Of(
        Tag.Born, Tag.Had, Tag.Be, Tag.Passed, Tag.Dropped, Tag.Labour, Tag.Bred, Tag.Cleaned, Tag.SpitOff, Tag.Nurse, Tag.Standing, Tag.Pregnant, Tag.Open);

    private readonly string[] people = [.. scan.Context.People.Append(scan.Context.From ?? "").Select(Letters.Fold)];
    private readonly bool anyCapital = Array.Exists(scan.Tokens, token => token.Capital);


    public Item? Match(int i, int phraseLength)
    {
        var token = scan.Tokens[i];
        if (token.Kind == TokenKind.Mark && token.Text == "#" && Tagged(i) is { } tagged)
        {
            return tagged;
        }

        if (token is { Kind: TokenKind.Number, Decimals: 0 } && (i == 0 || IsSentenceStart(i)) && i + 1 < scan.Tokens.Length && scan.Tokens[i + 1].Kind == TokenKind.Word
            && lookup.Tags(i + 1).HasAny(Does) && scan.Herd.FindTag(token.Text) is >= 0 and var bare)
        {
            return Named(i, 1, bare, false);
        }

        if (lookup.WordTags(i).HasAny(Tag.TagWord, Tag.DamWord) && Numbered(i) is { } numbered)
        {
            return numbered;
        }

        var (entry, length) = scan.Herd.Names.Match(scan.Tokens, i);
        if (length > 0 && length < phraseLength)
        {
            return null;
        }

        if (entry == NameIndex.Alike && (length > 1 || !lookup.Knows(i) || IsName(i)))
        {
            var said = scan.Text[token.Start..scan.Tokens[i + length - 1].End];
            return new Item(ItemKind.Animal, i, i + length) { Text = said, Mention = new Mention(MentionKind.Unknown) { Name = said } };
        }

        if (token.Kind != TokenKind.Word)
        {
            return entry >= 0 && length > 1 ? Named(i, length, entry, false) : null;
        }

        if (entry >= 0 && length == 1 && (IsOwned(i) || IsWord(i)))
        {
            return null;
        }

        if (entry >= 0 && (length > 1 || !lookup.Knows(i) || IsName(i)))
        {
            return Named(i, length, entry, false);
        }

        return Person(i) ?? (lookup.Knows(i) ? null : Mended(i, token));
    }

    // "opal earrings", where Opal is a llama
    private bool IsWord(int i) =>
        !scan.Tokens[i].Capital && scan.Tokens[i].Kind == TokenKind.Word && i + 1 < scan.Tokens.Length && scan.Tokens[i + 1] is { Kind: TokenKind.Word, Capital: false, Text.Length: > 3 } next && next.Text[^1] == 's'
        && !lookup.Knows(i + 1) && scan.Herd.Names.Match(scan.Tokens, i + 1).Entry < 0;

    // "lost her patience", where Patience is a llama
    private bool IsOwned(int i) =>
        anyCapital && i > 0 && !scan.Tokens[i].Capital && lookup.WordTags(i - 1).HasAny(TagSet.Of(Tag.Her, Tag.Him, Tag.Own)) && !(i + 1 < scan.Tokens.Length && scan.Tokens[i + 1].Text == "'s");

    private Item? Tagged(int i) =>
        i + 1 < scan.Tokens.Length && scan.Tokens[i + 1] is { Kind: TokenKind.Number, Tight: true } number
        && (scan.Herd.Names.Match(scan.Tokens, i) is { Entry: >= 0 and var named } ? named : scan.Herd.FindTag(number.Text)) is >= 0 and var entry
            ? Named(i, 2, entry, false)
            : null;

    // "tag 22", "ewe 14"
    private Item? Numbered(int i) =>
        i + 1 < scan.Tokens.Length && scan.Tokens[i + 1] is { Kind: TokenKind.Number } number && scan.Herd.FindTag(number.Text) is >= 0 and var entry ? Named(i, 2, entry, false) : null;

    private Item? Mended(int i, Token token)
    {
        if (token.Text.Length > 4 && token.Text[^1] == 's' && scan.Herd.Names.Match(scan.Tokens, i, token.Text[..^1]) is { Entry: >= 0, Length: 1 } owner)
        {
            return Named(i, 1, owner.Entry, true);
        }

        if (scan.Herd.Names.Mend(token.Text) is { } mended && scan.Herd.Names.Match(scan.Tokens, i, mended) is { Entry: >= 0 } found)
        {
            return Named(i, found.Length, found.Entry, false);
        }

        return null;
    }

    /// <summary>Words that are neither known nor a name may be a slip of a known one.</summary>
    public void MendWords()
    {
        for (var i = 0; i < scan.Tokens.Length; i++)
        {
            var token = scan.Tokens[i];
            if (token.Kind == TokenKind.Word && !lookup.Knows(i) && (!token.Capital || IsSentenceStart(i)) && !people.Contains(token.Text)
                && scan.Herd.Names.Match(scan.Tokens, i).Length == 0 && scan.Herd.Names.Mend(token.Text) is null)
            {
                lookup.Mend(i, token.Text);
                if (token.Capital && lookup.Knows(i) && Faint.HasAll(lookup.WordTags(i)))
                {
                    lookup.Forget(i);
                }
            }
        }
    }

    private Item? Person(int i) =>
        scan.Tokens[i].Text.Length > 0 && people.Contains(scan.Tokens[i].Text) && (scan.Tokens[i].Capital || !lookup.Knows(i))
            ? new Item(ItemKind.Person, i, i + 1) { Text = scan.Tokens[i].Text }
            : null;

    private static Item Named(int i, int length, int entry, bool genitive)
    {
        var mention = new Mention(MentionKind.Named) { BareGenitive = genitive };
        mention.Entries.Add(entry);
        return new Item(ItemKind.Animal, i, i + length) { Mention = mention };
    }

    private bool IsName(int i)
    {
        var token = scan.Tokens[i];
        if (i + 1 < scan.Tokens.Length && scan.Tokens[i + 1].Text == "'s")
        {
            return true;
        }

        var own = lookup.WordTags(i);
        var next = i + 1 < scan.Tokens.Length ? scan.Tokens[i + 1] : default;
        var before = i > 0 ? lookup.WordTags(i - 1) : default;
        if (token.Capital && next is { Kind: TokenKind.Word, Capital: false } && next.Text == token.Text)
        {
            return true;
        }

        if (own.Has(Tag.Month) && (next is { Kind: TokenKind.Number } || before.HasAny(MonthLead) || (i > 0 && scan.Tokens[i - 1].Kind == TokenKind.Number) || (next.Text is not null && lookup.WordTags(i + 1).Has(Tag.Modal))))
        {
            return false;
        }

        if (own.Has(Tag.Claim))
        {
            return IsNamedWill(i, token);
        }

        var ordinary = token.Capital && !IsSentenceStart(i);
        return ordinary || IsCued(i, next) || (i > 0 && IsLedIn(i, before)) || (token.Capital && TagSet.Of(Tag.Known, Tag.Thing, Tag.Plain).HasAll(own));
    }

    // "Will is up", "weigh Will", but "will weigh" and "Will weigh him later".
    private bool IsNamedWill(int i, Token token)
    {
        var after = lookup.Tags(i + 1) | lookup.WordTags(i + 1);
        return after.HasAny(Tag.Be, Tag.Had, Tag.Standing) || after.Has(Tag.Claim)
            || (token.Capital && (!IsSentenceStart(i) || i + 1 >= scan.Tokens.Length || scan.Tokens[i + 1].Kind != TokenKind.Word));
    }

    private bool IsCued(int i, Token next) =>
        next is { Kind: TokenKind.Number } || (lookup.Tags(i + 1) | lookup.WordTags(i + 1)).HasAny(Cue)
        || (scan.Tokens[i].Capital && next is { Kind: TokenKind.Mark } && next.Text is "," or ":");

    private bool IsLedIn(int i, TagSet before) =>
        (before.Has(Tag.Prep) && !before.Has(Tag.Article) && !lookup.WordTags(i).Has(Tag.Month))
        || (lookup.Primary == Vocabulary.Spanish && scan.Tokens[i - 1].Text is "la" or "el" or "de")
        || (!anyCapital && before.HasAny(Tag.And) && lookup.WordTags(i) == TagSet.Of(Tag.Known));

    private bool IsAlone(int i) => scan.Tokens.Length == 1 && i == 0;

    private bool IsSentenceStart(int i) => i == 0 || scan.Tokens[i - 1].Text is "." or "!" or "?" or "\n" or "-";
}

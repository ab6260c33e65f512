using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>A name that is given here.</summary>
/// <param name="Text">As typed.</param>
/// <param name="Items">What it is made of.</param>
internal sealed record NewName(string Text, List<Item> Items);

/// <summary>Finds the name in words that give one: a word nobody knows, or a known one that serves as a name here.</summary>
internal static class NameReader
{
    // "le puse vitamina ADE": what is put on or into an animal is not its name
    private static readonly TagSet NoNames = TagSet.Of(Tag.Medicine, Tag.Vaccine, Tag.Iodine, Tag.Vet, Tag.Igg, Tag.Coat);

    /// <summary>The last unknown word of a clause; else a capitalised one, or a name of the herd, behind what announces it.</summary>
    /// <param name="statement">The message.</param>
    /// <param name="clause">The clause.</param>
    /// <param name="after">The item that announces it.</param>
    public static NewName? In(Statement statement, Clause clause, int after)
    {
        if (Unknown(statement, clause, after) is { } unknown)
        {
            return unknown;
        }

        // "renamed Hazel to Hazelnut"
        if (clause.Items.FindLastIndex(item => item.Mention?.Kind == MentionKind.Unknown && item.First > 0 && statement.Scan.Tokens[item.First - 1].Text is "to" or "a") is var late && late > after)
        {
            return Joined(statement, clause, late, after);
        }

        var word = clause.Items.FindLastIndex(item => item.Mention is null && item.Kind is ItemKind.Sense or ItemKind.Time && statement.Scan.TokenOf(item).Capital && !item.Tags.HasAny(NoNames));
        if (word > after)
        {
            return Joined(statement, clause, word, after);
        }

        var taken = clause.Items.FindLastIndex(item => item.Mention is { Kind: MentionKind.Named, BareGenitive: false, Plural: false });
        return taken > after && (IsName(statement, clause) || clause.Items.FindIndex(item => item.Mention is not null) < taken) ? Joined(statement, clause, taken, after) : null;
    }

    /// <summary>The last word of a clause that nobody knows, where it does not tell from or to whom.</summary>
    public static NewName? Unknown(Statement statement, Clause clause, int after = int.MaxValue)
    {
        var at = clause.Items.FindLastIndex(item => item.Mention is { Kind: MentionKind.Unknown, AfterPreposition: false });
        return at < 0 ? null : Joined(statement, clause, at, after);
    }

    /// <summary>The clause is nothing but a name: capitalised words.</summary>
    public static bool IsName(Statement statement, Clause clause) =>
        clause.Items.TrueForAll(item => statement.Scan.TokenOf(item).Capital && statement.Scan.Tokens[item.End - 1].Text != "'s" && item.Mention is null or { Kind: MentionKind.Unknown or MentionKind.Named });

    // "Luna Grande", "Biscuit Moon": capitalised words in a row are one name.
    private static NewName Joined(Statement statement, Clause clause, int at, int after)
    {
        var named = IsName(statement, clause) ? -1 : clause.Items.FindIndex(item => item.Mention is not null);
        bool Capital(Item item, int place) => statement.Scan.Tokens[item.End - 1].Text != "'s" && (item.Mention is null or { Kind: MentionKind.Unknown } || (item.Mention.Kind == MentionKind.Named && place > named)) && (item.Kind == ItemKind.Unknown || item.Mention is not null || (item.Kind == ItemKind.Sense && place > after))
            && statement.Scan.TokenOf(item).Capital;
        var (first, last) = (at, at);
        while (first > 0 && Capital(clause.Items[first - 1], first - 1))
        {
            first--;
        }

        while (last + 1 < clause.Items.Count && Capital(clause.Items[last + 1], last + 1))
        {
            last++;
        }

        var items = clause.Items.GetRange(first, last - first + 1);
        return new NewName(string.Join(' ', items.Select(item => item.Text.Length > 0 ? item.Text : statement.Scan.Slice(item, item))), items);
    }
}

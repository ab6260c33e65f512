using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Reads who came, went or was named.</summary>
internal static class RosterReader
{
    // "le puse vitamina ADE": what is put on or into an animal is not its name
    private static readonly TagSet NoNames = TagSet.Of(Tag.Medicine, Tag.Vaccine, Tag.Iodine, Tag.Vet, Tag.Igg, Tag.Coat);

    public static void Read(Statement statement, Clause clause)
    {
        if (clause.Has(Tag.NameIs) && NewName(statement, clause) is { } name)
        {
            var draft = statement.Add(FactKind.Roster, clause, clause.First(Tag.NameIs));
            draft.Name = name.Text.Length > 0 ? name.Text : NameOf(statement, name);
            draft.Text = "named";
            draft.Mention = clause.Items.Find(item => item != name && item.Mention is not null)?.Mention ?? statement.Named ?? Spoken(statement, clause);
            UseAll(clause);
        }
        else if (clause.Has(Tag.Sold) && clause.Items.Exists(item => item.Mention?.Entries.Count > 0) && !clause.Asked)
        {
            var draft = statement.Add(FactKind.Roster, clause, clause.First(Tag.Sold));
            draft.Text = statement.Scan.Slice(clause.Items[0], clause.Items[^1]);
            draft.Mention = clause.Mentions.First();
            UseAll(clause);
        }
        else if (clause.Has(Tag.Added) && Newcomer(statement, clause) is { } added)
        {
            var draft = statement.Add(FactKind.Roster, clause, added);
            (draft.Name, draft.Animal, draft.Settled) = (added.Text, added.Text, true);
            draft.Sex = clause.First(Tag.Sex) is { } sex ? sex.Argument == 1 ? Sex.Female : Sex.Male : null;
            draft.Text = "added";
            UseAll(clause);
        }
    }

    // "new llama coming home: Juno, female"
    private static Item? Newcomer(Statement statement, Clause clause) =>
        statement.Clauses.Where(other => other.Sentence == clause.Sentence).SelectMany(other => other.Items).LastOrDefault(item => item.Mention?.Kind == MentionKind.Unknown);

    // "calling her Biscuit"
    private static Mention Spoken(Statement statement, Clause clause)
    {
        var verb = clause.First(Tag.NameIs)!;
        var words = statement.Scan.Tokens.AsSpan(verb.First, verb.End - verb.First);
        var (her, him) = (false, false);
        foreach (var word in words)
        {
            her |= word.Text is "her" or "la";
            him |= word.Text is "him" or "his" or "lo";
        }

        return new Mention(MentionKind.Pronoun) { Sex = her ? Sex.Female : him ? Sex.Male : null };
    }

    // The name comes last: an unknown word, or a known one that serves as a name here.
    private static Item? NewName(Statement statement, Clause clause)
    {
        var verb = clause.Items.FindLastIndex(item => item.Is(Tag.NameIs));
        var unknown = clause.Items.FindLast(item => item.Mention?.Kind == MentionKind.Unknown);
        if (unknown is not null)
        {
            return unknown;
        }

        var last = clause.Items.FindLast(item => item.Mention is null && item.Kind is ItemKind.Sense or ItemKind.Time && statement.Scan.TokenOf(item).Capital && clause.Items.IndexOf(item) > verb && !item.Tags.HasAny(NoNames));
        if (last is not null)
        {
            last.Text = statement.Scan.Slice(last, last);
        }

        return last;
    }

    private static string NameOf(Statement statement, Item item) => statement.Scan.Slice(item, item);

    private static void UseAll(Clause clause)
    {
        foreach (var item in clause.Items)
        {
            item.Used = true;
        }
    }
}

using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Tells the male of a mating from the female.</summary>
internal static class SireReader
{
    public static void Read(Statement statement, Draft draft, AnimalResolver resolver)
    {
        var herd = statement.Scan.Herd;
        var named = statement.Clauses.Where(clause => clause.Sentence == draft.Clause.Sentence).SelectMany(clause => clause.Items).ToList();
        var male = named.Find(item => item.Mention is { Kind: MentionKind.Named, Entries.Count: 1 } mention && herd.Entry(mention.Entries[0]).Role == HerdRole.Sire);
        var some = named.Exists(item => item.Mention?.Kind == MentionKind.SomeMale || item.Mention is { Kind: MentionKind.Pronoun, Sex: Sex.Male });
        Part(herd, named, draft);
        draft.Sire = male is not null ? herd.Entry(male.Mention!.Entries[0]).Name : some ? resolver.Males() is [var only, ..] ? only : null : draft.Sire;
        if (draft.Mention is null or { Kind: MentionKind.SomeMale } || (draft.Mention.Kind == MentionKind.Named && herd.Entry(draft.Mention.Entries[0]).Role == HerdRole.Sire))
        {
            draft.Mention = Female(herd, named) ?? She(named) ?? (draft.Mention is { Kind: MentionKind.Unknown or MentionKind.SomeDam or MentionKind.SomeBaby } ? draft.Mention : null);
        }
    }

    // "Flax and Opal together": one row of names holds both
    private static void Part(HerdIndex herd, List<Item> named, Draft draft)
    {
        var row = named.Find(item => item.Mention is { Kind: MentionKind.Named, Entries.Count: > 1 } mention && mention.Entries.Exists(entry => herd.Entry(entry).Role == HerdRole.Sire))?.Mention;
        if (row is null)
        {
            return;
        }

        draft.Sire = herd.Entry(row.Entries.Find(entry => herd.Entry(entry).Role == HerdRole.Sire)).Name;
        draft.Mention = new Mention(MentionKind.Named);
        draft.Mention.Entries.AddRange(row.Entries.Where(entry => herd.Entry(entry).Role != HerdRole.Sire));
    }

    // "she was in with Inti"
    private static Mention? She(List<Item> named) =>
        named.Find(item => item.Mention is { Kind: MentionKind.Pronoun, Sex: Sex.Female, Plural: false })?.Mention;

    private static Mention? Female(HerdIndex herd, List<Item> named) =>
        named.Find(item => item.Mention is { Kind: MentionKind.Named, Entries.Count: > 0 } mention && herd.Entry(mention.Entries[0]).Role != HerdRole.Sire)?.Mention;
}

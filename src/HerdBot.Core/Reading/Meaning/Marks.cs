using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Puts "not" and "perhaps" on the facts they belong to.</summary>
internal static class Marks
{
    private static readonly TagSet Loose = TagSet.Of(Tag.Hedge, Tag.CantBeRight, Tag.NoIdea);

    private static readonly TagSet Fillers = TagSet.Of(
        Tag.Also, Tag.Be, Tag.Yet, Tag.Still, Tag.And, Tag.But, Tag.Article, Tag.Known, Tag.Vet, Tag.Hedge, Tag.Hearsay, Tag.JustNow, Tag.Me, Tag.Had, Tag.NoteAny);

    public static void Apply(Statement statement, Clause clause, int from)
    {
        var not = clause.Items.Find(item => item.Is(Tag.Not) && !item.Used && !(item.Is(Tag.NotDone) && clause.Items.Count == 1));
        var almost = clause.Has(Tag.Almost);
        var hearsay = IsHearsay(statement, clause);
        var hedge = clause.Tags.HasAny(Loose) || (clause.Asked && !clause.Has(Tag.Question));
        for (var i = from; i < statement.Drafts.Count; i++)
        {
            var draft = statement.Drafts[i];
            draft.Neg ^= not is not null && !draft.Neg && CanBeDenied(draft) && !IsAlready(clause, draft);
            draft.Neg |= almost && draft.Kind is FactKind.Standing or FactKind.Nursing && almost;
            draft.Unsure |= (hedge || (hearsay && draft.Kind != FactKind.Note)) && draft.Kind is not (FactKind.Roster or FactKind.Weather or FactKind.Kit) && !(draft.Kind == FactKind.Placenta && clause.Has(Tag.NoIdea));
        }

        Doubted(statement, clause);
        Stopped(statement, clause, not);
        Skipped(statement, clause, not, from);
        Likewise(statement, clause, not, from);
    }

    // "vet thinks Mesa is too" doubts what comes after it; "she's up, says Ben" what came before.
    private static bool IsHearsay(Statement statement, Clause clause)
    {
        if (!statement.SentenceHas(clause, Tag.Hearsay))
        {
            return false;
        }

        var at = statement.Clauses.IndexOf(clause);
        return statement.Clauses.Exists(other => other.Sentence == clause.Sentence && other.Has(Tag.Hearsay) && (statement.Clauses.IndexOf(other) <= at || other.Items.Count <= 3));
    }

    private static bool CanBeDenied(Draft draft) => draft.Value is null && draft.Ask is null
        && draft.Kind is not (FactKind.Roster or FactKind.Note or FactKind.Kit or FactKind.Weather or FactKind.Death or FactKind.Presentation or FactKind.LabourSign);

    // A frame that denies by itself ("still down") is not denied twice.
    private static bool IsAlready(Clause clause, Draft draft) =>
        draft.Kind == FactKind.CordDry && clause.Has(Tag.Wet);

    // "that can't be right": the figure before it is in doubt
    private static void Doubted(Statement statement, Clause clause)
    {
        if (clause.Has(Tag.CantBeRight) && statement.Drafts.LastOrDefault(draft => draft.Value is not null) is { } last)
        {
            last.Unsure = true;
        }

        // "sucking noises but not sure she's swallowing"
        if (clause.Has(Tag.Swallow) && clause.Tags.HasAny(Loose | TagSet.Of(Tag.Not)) && statement.Drafts.LastOrDefault(draft => draft.Kind == FactKind.Nursing) is { } nursing)
        {
            nursing.Unsure = true;
        }
    }

    private static void Stopped(Statement statement, Clause clause, Item? not)
    {
        if (clause.Has(Tag.Stopped) && not is not null && statement.Drafts.LastOrDefault(draft => draft.Clause == clause && draft.Kind == FactKind.CordBleeding) is { } bleeding)
        {
            bleeding.Neg = false;
        }
    }

    // "Wren's is up, Kestrel's isn't", "and Wren's too"
    private static void Likewise(Statement statement, Clause clause, Item? not, int from)
    {
        if (statement.Drafts.Skip(from).Any(draft => draft.Kind != FactKind.Note) || statement.Drafts.Take(from).LastOrDefault() is not { Value: null, Kind: not (FactKind.Note or FactKind.Birth) } last || !(not is not null || clause.Has(Tag.Also) || (last.Neg && clause.HasAny(Tag.Be, Tag.Had)))
            || (clause.Items.Find(item => item.Mention is { Kind: not MentionKind.Pronoun }) ?? clause.Items.Find(item => item.Is(Tag.Sex) && item.Argument is 1 or 2)) is not { } animal
            || !clause.Items.TrueForAll(item => item == animal || item == not || item.Tags.HasAny(Fillers)))
        {
            return;
        }

        statement.Drafts.Add(new Draft(last.Kind, clause, animal.First) { Mention = animal.Mention ?? new Mention(MentionKind.SomeBaby) { Sex = animal.Argument == 1 ? Sex.Female : Sex.Male }, Neg = not is not null ? !last.Neg : last.Neg && clause.Has(Tag.Also), Sire = last.Sire, Unsure = clause.Tags.HasAny(Loose | TagSet.Of(Tag.Hearsay)) });
    }

    // "CDT all the girls, skipped Fern"
    private static void Skipped(Statement statement, Clause clause, Item? not, int from)
    {
        if (not is null || from != statement.Drafts.Count || clause.Items.Find(item => item.Mention?.Entries.Count > 0) is not { } animal
            || statement.Drafts.LastOrDefault() is not { Kind: FactKind.Vaccination or FactKind.Medication or FactKind.Breeding } last)
        {
            return;
        }

        statement.Drafts.Add(new Draft(last.Kind, clause, animal.First) { Mention = animal.Mention, Neg = true, Text = last.Text });
    }
}

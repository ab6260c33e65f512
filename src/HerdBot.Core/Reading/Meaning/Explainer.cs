using System.Globalization;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Says which words gave which fact, and why others gave none. For people; nothing is decided here.</summary>
/// <param name="statement">The message as it was understood.</param>
/// <param name="clauses">All its clauses, also those that questions took.</param>
/// <param name="facts">The facts, each with the token at which it was said.</param>
internal sealed class Explainer(Statement statement, IReadOnlyList<Clause> clauses, IEnumerable<(Fact Fact, int Position)> facts)
{
    private readonly Scan scan = statement.Scan;

    /// <summary>The reasons, in the order of the message.</summary>
    public IEnumerable<ReadingReason> Reasons(Ask? ask)
    {
        var told = facts.Select(one => (one.Fact, Draft: DraftOf(one.Fact, one.Position))).ToList();
        foreach (var clause in clauses.Where(clause => clause.Items.Count > 0))
        {
            var own = told.Where(one => one.Draft?.Clause == clause).ToList();
            foreach (var (fact, draft) in own)
            {
                yield return new ReadingReason(Words(clause), Why(fact, draft!));
            }

            if (own.Count == 0)
            {
                yield return new ReadingReason(Words(clause), $"nothing recorded: {Nothing(clause)}");
            }
        }

        if (ask is { } missing)
        {
            yield return new ReadingReason(scan.Text, $"asked before anything of it is recorded: {FactWords.Word(missing)}");
        }
    }

    /// <summary>Which record a correction or undo means.</summary>
    public static ReadingReason Mended(Scan scan, Fact fact) => new(scan.Text, fact.Kind == FactKind.Undo
        ? $"undo: takes back {(fact.Field is { } field ? $"{field} of {fact.Animal}" : "the last message")}"
        : $"correction: {(fact.Neg ? "denies" : "mends")} {fact.Field} of {fact.Animal}{(fact.Was is { } was ? $", which was {was}" : "")}");

    private Draft? DraftOf(Fact fact, int position) => statement.Drafts.Find(draft => draft.Kind == fact.Kind && draft.Position == position && draft.Name == (fact.Kind == FactKind.Roster ? fact.Name : draft.Name))
        ?? statement.Drafts.Find(draft => draft.Kind == fact.Kind);

    private string Why(Fact fact, Draft draft)
    {
        string?[] parts =
        [
            draft.Anchor is { } anchor && Words(anchor) is var by && !string.Equals(by, FactWords.Word(fact.Kind), StringComparison.OrdinalIgnoreCase) ? $"by '{by}'" : null,
            Figure(fact), Animal(fact, draft),
            fact.Neg ? $"denied{By(draft.Clause, Tag.Not)}" : null,
            fact.Unsure ? $"in doubt{By(draft.Clause, Tag.Hedge, Tag.Hearsay, Tag.CantBeRight)}" : null,
            draft.When is not null && fact.At is { } at ? $"at {at.Date:uuuu-MM-dd}{(at.Time is { } time ? " " + time.ToString("HH:mm", CultureInfo.InvariantCulture) : "")}" : null,
        ];
        return string.Join("; ", parts.OfType<string>().Prepend(FactWords.Word(fact.Kind)));
    }

    private static string? Figure(Fact fact) => fact.Value is not { } value ? null
        : $"{value.ToString(CultureInfo.InvariantCulture)}{(fact.Unit is { } unit ? " " + FactWords.Word(unit) : "")}";

    private string? Animal(Fact fact, Draft draft)
    {
        var named = draft.Clause.Items.Find(item => item.Mention == draft.Mention && draft.Mention is not null);
        return fact.Animal switch
        {
            null => null,
            Fact.AskAnimal when draft.Mention is { Kind: MentionKind.Unknown, Name: { } name } => $"animal asked: '{name}' is not known, or two bear it",
            Fact.AskAnimal => "animal asked: none is named, or two are as likely",
            var animal when draft.Settled => $"of {animal}",
            var animal when named is not null && string.Equals(Words(named), animal, StringComparison.OrdinalIgnoreCase) => $"of {animal}",
            var animal when named is not null => $"of {animal}, by '{Words(named)}'",
            var animal => $"of {animal}, by what was said before",
        };
    }

    private string Nothing(Clause clause)
    {
        var known = statement.Reasons.Where(reason => reason.Clause == clause).Select(reason => reason.Why).Distinct().ToList();
        var strange = clause.Items.Where(item => item.Kind == ItemKind.Unknown).Select(Words).ToList();
        return known.Count > 0 ? string.Join("; ", known)
            : clause.Asked ? "a question"
            : statement.Of(clause).Any() || clause.Told ? "it belongs to what is said beside it"
            : clause.Has(Tag.Banter) ? "small talk"
            : strange.Count > 0 ? $"no word in it tells a fact; not known: {string.Join(", ", strange)}"
            : "no word in it tells a fact";
    }

    private string By(Clause clause, params ReadOnlySpan<Tag> tags)
    {
        var set = TagSet.Of(tags);
        return clause.Items.Find(item => item.Kind == ItemKind.Sense && item.Tags.HasAny(set)) is { } item ? $" by '{Words(item)}'" : "";
    }

    private string Words(Item item) => scan.Slice(item, item);

    private string Words(Clause clause) => scan.Slice(clause.Items[0], clause.Items[^1]);
}

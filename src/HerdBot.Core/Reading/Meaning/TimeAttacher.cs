using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;
using HerdBot.Core.Reading.Times;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Gives each told time to the fact it was told with.</summary>
internal static class TimeAttacher
{
    public static void Attach(Statement statement)
    {
        When? waiting = null;
        foreach (var clause in statement.Clauses)
        {
            if (waiting is null && !clause.Has(Tag.HasTime))
            {
                continue;
            }

            var drafts = statement.Drafts.Where(draft => draft.Clause == clause).OrderBy(draft => draft.Position).ToList();
            if (waiting is not null && drafts.Count > 0)
            {
                Give(statement, drafts[0], waiting);
                waiting = null;
            }

            foreach (var item in clause.Items.Where(item => item is { Kind: ItemKind.Time, Used: false } && IsUseful(item.When!)))
            {
                waiting = One(statement, clause, drafts, item) ? waiting : item.When;
            }
        }

        Days(statement);
    }

    private static bool IsUseful(When when) => when.Kind is not WhenKind.Vague && (when.Kind != WhenKind.Length || when.Since) && !(when is { Kind: WhenKind.Day, Since: true, DayOffset: not null });

    private static bool One(Statement statement, Clause clause, List<Draft> drafts, Item item)
    {
        var free = drafts.Where(draft => draft.When is null && !IsAhead(draft, item.When!)).ToList();
        free = free.Exists(draft => draft.Kind != FactKind.Note) ? free.FindAll(draft => draft.Kind != FactKind.Note) : free;
        free = free.Exists(draft => draft.Kind == FactKind.Birth) && !free.Exists(draft => draft.Kind is not (FactKind.Birth or FactKind.Weight)) ? free.FindAll(draft => draft.Kind == FactKind.Birth) : free;
        var target = free.LastOrDefault(draft => draft.Position <= item.First) ?? free.FirstOrDefault();
        target = target is { Kind: FactKind.Weight or FactKind.Assistance } && item.When!.Kind == WhenKind.Clock ? drafts.Find(draft => draft is { Kind: FactKind.Birth, When: null }) ?? target : target;
        target ??= drafts.Count == 0 ? statement.Drafts.LastOrDefault(draft => draft.When is null && !IsAhead(draft, item.When!) && statement.Clauses.IndexOf(draft.Clause) < statement.Clauses.IndexOf(clause) && Near(statement, draft.Clause, clause)) : null;
        if (target is null && drafts.Count == 0 && Repeated(statement, clause) is { } once)
        {
            statement.Drafts.Add(new Draft(once.Kind, once.Clause, item.First) { Mention = once.Mention, When = item.When, Neg = once.Neg, Unsure = once.Unsure, Sire = once.Sire, Text = once.Text });
            return true;
        }

        if (target is null)
        {
            return drafts.Count > 0 || statement.Clauses[^1] == clause;
        }

        Give(statement, target, item.When!);
        return true;
    }

    // "he leaves Saturday": the day has yet to come.
    private static bool IsAhead(Draft draft, When when) => when.IsWeekday && draft.Kind is FactKind.Roster or FactKind.Claim or FactKind.Note && when.IsWeekday;

    // "sprayed 8:10 and again 8:40": the same thing once more
    private static Draft? Repeated(Statement statement, Clause clause) =>
        clause.Items.TrueForAll(item => item.Kind == ItemKind.Time || item.Tags.HasAny(TagSet.Of(Tag.Again, Tag.At, Tag.And, Tag.Then, Tag.Article, Tag.On, Tag.Prep)))
        && statement.Drafts.LastOrDefault(draft => statement.Clauses.IndexOf(draft.Clause) < statement.Clauses.IndexOf(clause)) is { } last
        && last is { Kind: FactKind.CordDip or FactKind.Nursing or FactKind.Urine or FactKind.Meconium, When.Kind: WhenKind.Clock } or { Kind: FactKind.Breeding, When.Kind: WhenKind.Day }
        && Near(statement, last.Clause, clause)
            ? last
            : null;

    // A time on its own belongs to what was said just before it.
    private static bool Near(Statement statement, Clause earlier, Clause clause) =>
        (earlier.Sentence == clause.Sentence || (statement.Clauses.IndexOf(clause) - statement.Clauses.IndexOf(earlier) == 1 && statement.Of(earlier).Any(draft => draft.Kind is FactKind.Birth or FactKind.Death))) && statement.Clauses.IndexOf(clause) - statement.Clauses.IndexOf(earlier) <= 2;

    private static void Give(Statement statement, Draft draft, When when)
    {
        draft.When = when;
        foreach (var twin in statement.Drafts.Where(other => other.Kind == draft.Kind && other.Clause == draft.Clause && other.Position == draft.Position && other.When is null))
        {
            twin.When = when;
        }
    }

    // "weaned Copper 9/3, 64 lb", "scanned yesterday: …": a day is shared by the sentence, an hour is not;
    // "Barley bred Wren 5/3, Fern's baby 99.8" says no day of what is another thing about another animal.
    private static void Days(Statement statement)
    {
        foreach (var draft in statement.Drafts.Where(draft => draft.When is { Kind: WhenKind.Day or WhenKind.Range, Hour: 0, Minute: 0 }).ToList())
        {
            foreach (var other in statement.Drafts.Where(other => other.When is null && other.Clause.Sentence == draft.Clause.Sentence && other.Kind is not FactKind.Claim && !IsAhead(other, draft.When!)
                && !other.Clause.Items.Exists(item => item.Kind == ItemKind.Time) && !IsApart(statement, draft, other)))
            {
                other.When = draft.When;
            }
        }
    }

    private static bool IsApart(Statement statement, Draft draft, Draft other) =>
        other.Kind != draft.Kind && draft.Mention is { Entries: { Count: > 0 } } one && other.Mention is { Entries: { Count: > 0 } } another
        && !another.Entries.Exists(one.Entries.Contains) && !Leads(statement, draft);

    // "yesterday: …", "5/3 Barley bred …": the day stands before all that is said.
    private static bool Leads(Statement statement, Draft draft) =>
        statement.Clauses.Find(clause => clause.Sentence == draft.Clause.Sentence) is { } first && first.Items[0] is { Kind: ItemKind.Time } time && time.When == draft.When;
}

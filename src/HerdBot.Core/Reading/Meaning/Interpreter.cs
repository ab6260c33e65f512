using System.Collections.Immutable;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>From the items of a message to its facts: corrections, questions, statements, bare answers, in that order.</summary>
internal static class Interpreter
{
    public static Reading Read(Scan scan, bool explain)
    {
        var known = new Circumstances(scan.Context);
        var statement = new Statement(scan, known, ClauseSplitter.Split(scan));
        var whole = statement.Clauses.ToList();
        QuestionReader.Read(statement);
        if (CorrectionReader.Read(statement) is { Count: > 0 } mended)
        {
            return new Reading([.. mended], null, explain ? [.. mended.Select(fact => Explainer.Mended(scan, fact))] : []);
        }

        StatementReader.Read(statement);
        ReplyReader.Read(statement);
        Remark(statement);
        BirthOrder(statement, whole);
        var completion = new Completion(statement);
        var (facts, ask) = completion.Finish();
        return new Reading(facts, ask, explain ? [.. new Explainer(statement, whole, completion.Origins).Reasons(ask)] : []);
    }

    // Something is said of an animal by name, and no kind of fact is in it: kept in its own words.
    private static void Remark(Statement statement)
    {
        if (statement.Drafts.Count > 0)
        {
            return;
        }

        foreach (var clause in statement.Clauses.Where(clause => clause.Items.Count > 2 && !StatementReader.IsIdle(statement, clause) && !clause.HasAny(Tag.Banter, Tag.Own)))
        {
            if (clause.Items.Find(item => item.Mention is { Kind: MentionKind.Named or MentionKind.BabyOf }) is { } named)
            {
                var note = statement.Add(FactKind.Note, clause, named);
                note.Mention = named.Mention;
                note.Text = statement.Scan.Slice(clause.Items[0], clause.Items[^1]);
                return;
            }
        }
    }

    // "99.4, 99.9 and 100.1 in the order they were born"
    private static void BirthOrder(Statement statement, List<Clause> clauses)
    {
        var figures = statement.Drafts.Where(draft => draft.Value is not null).ToList();
        if (figures.Count < 2 || !clauses.Exists(clause => clause.Has(Tag.OrderBorn)))
        {
            return;
        }

        var herd = statement.Scan.Herd;
        var young = Enumerable.Range(0, herd.Count).Where(herd.IsYoung).OrderBy(i => herd.Entry(i).Born?.Date).ThenBy(i => herd.Entry(i).Born?.Time).ToImmutableArray();
        for (var i = 0; i < figures.Count && figures.Count == young.Length; i++)
        {
            (figures[i].Animal, figures[i].Settled) = (herd.Entry(young[i]).Name, true);
        }
    }
}

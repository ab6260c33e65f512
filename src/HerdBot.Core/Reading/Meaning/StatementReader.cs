using HerdBot.Core.Reading.Lexicon;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Reads the clauses that state something.</summary>
internal static class StatementReader
{
    // A longer list than anybody types.
    private const int MostFacts = 60;

    public static void Read(Statement statement)
    {
        MoodReader.Read(statement);
        NewcomerReader.Read(statement);
        foreach (var clause in statement.Clauses)
        {
            if (clause.Told)
            {
                statement.Named = statement.Of(clause).FirstOrDefault(draft => draft.Kind == Facts.FactKind.Roster)?.Mention ?? statement.Named;
                continue;
            }

            if (statement.Drafts.Count >= MostFacts)
            {
                break;
            }

            if (IsIdle(statement, clause))
            {
                statement.Because(clause, "history, somebody's own affair or small talk");
                continue;
            }

            var before = statement.Drafts.Count;
            RosterReader.Read(statement, clause);
            ValueReader.Change(statement, clause);
            BirthReader.Read(statement, clause);
            FrameReader.Read(statement, clause);
            FeedReader.Read(statement, clause);
            ValueReader.Read(statement, clause);
            MentionCarrier.Carry(statement, clause, before);
            SubjectGate.Sift(statement, clause, before);
            MoodGate.Sift(statement, clause, before);
            Marks.Apply(statement, clause, before);
            PlanReader.Read(statement, clause, before);
            LookReader.Read(statement, clause);
        }

        MentionCarrier.Lend(statement);
        TimeAttacher.Attach(statement);
        VetDateReader.Read(statement);
    }

    // "born in 2019"
    public static bool InAnotherYear(Statement statement, Clause clause) =>
        clause.Has(Tag.HasNumber) && !clause.HasAny(Tag.Igg, Tag.Weight) && NamesYearBefore(clause, statement.Known.Context.Now.Year);

    private static bool NamesYearBefore(Clause clause, int year) =>
        clause.Items.Exists(item => item is { Kind: Scanning.ItemKind.Number, Value: >= 1990 } && item.Value < year && item.Value % 1 == 0);

    // "can someone check on her" asks one thing; a "please" asks all of its sentence
    private static bool IsRequest(Statement statement, Clause clause) =>
        clause.Has(Tag.Request) || (statement.SentenceHas(clause, Tag.Request) && statement.Clauses.Exists(other => other.Sentence == clause.Sentence && other.Items.Exists(item => item.Is(Tag.Request) && item.Argument == 1)));

    /// <summary>History, somebody's own affair: nothing to record.</summary>
    public static bool IsIdle(Statement statement, Clause clause) =>
        (IsRequest(statement, clause) && !clause.HasAny(Tag.HasQuantity, Tag.HasNumber, Tag.GiveUp)) || clause.Has(Tag.History) || clause.Mood == Mood.Elsewhere || InAnotherYear(statement, clause) || (statement.SentenceHas(clause, Tag.History) && !clause.Has(Tag.HasQuantity));
}

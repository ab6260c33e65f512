using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;
using HerdBot.Core.Reading.Times;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>How a clause is meant: told as a fact, or as something that may be, should be, is done as a rule, or belongs to others.</summary>
internal enum Mood : byte
{
    /// <summary>It is told as it is.</summary>
    Told,
    /// <summary>A condition, a wish, an order, advice: nothing has happened.</summary>
    Supposed,
    /// <summary>A rule or a rate: its figures are no readings.</summary>
    Usual,
    /// <summary>Another farm's animals.</summary>
    Elsewhere,
}

/// <summary>Tells what is meant as a fact from what is not.</summary>
internal static class MoodReader
{
    private const int If = 1;
    private const int Wish = 2;
    private const int Should = 3;
    private const int Rate = 4;
    private const int Order = 5;
    private const int Told = 6;
    private static readonly TagSet Doubt = TagSet.Of(Tag.Hedge, Tag.NoIdea, Tag.Not);
    private static readonly TagSet Small = TagSet.Of(Tag.Article, Tag.Me, Tag.And, Tag.But, Tag.Then, Tag.So, Tag.Banter, Tag.Yes, Tag.Vet, Tag.Also, Tag.Still, Tag.JustNow);

    /// <summary>The mood of each clause.</summary>
    public static void Read(Statement statement)
    {
        Clause? condition = null;
        Clause? before = null;
        var past = false;
        foreach (var clause in statement.Clauses)
        {
            clause.Mood = Of(statement, clause);
            var talk = IsOwn(clause) || IsPast(statement, clause);
            if (talk || (clause.Mood == Mood.Told && before is { Mood: Mood.Elsewhere } && before.Sentence == clause.Sentence && (before.Has(Tag.Foreign) || clause.HasAny(Tag.HasNumber, Tag.HasQuantity) || past) && !clause.HasAny(Tag.HasDam, Tag.HasBaby, Tag.HasMale, Tag.Today, Tag.JustNow, Tag.Morning)))
            {
                clause.Mood = Mood.Elsewhere;
            }

            if (clause.Mood == Mood.Supposed && clause.Items.Exists(item => Is(item, If)))
            {
                condition = clause;
            }

            // "if she's not up by 8, we tube her"
            if (before is { Mood: Mood.Supposed, EndMark.Length: 0 } && clause.Mood == Mood.Told && clause.Sentence == before.Sentence && !clause.Has(Tag.But))
            {
                clause.Mood = Mood.Supposed;
            }

            if (condition is not null && clause.Mood == Mood.Told && clause.Sentence == condition.Sentence && !clause.HasAny(Tag.HasTime, Tag.HasQuantity, Tag.HasNumber))
            {
                clause.Mood = Mood.Supposed;
            }

            past = clause.Mood == Mood.Elsewhere && ((past && before?.Sentence == clause.Sentence) || IsPast(statement, clause));
            before = clause;
        }
    }

    private static Mood Of(Statement statement, Clause clause)
    {
        if (statement.SentenceHas(clause, Tag.Foreign))
        {
            return Mood.Elsewhere;
        }

        if (!clause.HasAny(Tag.Mood, Tag.Need, Tag.Hearsay, Tag.All, Tag.Tomorrow))
        {
            return Mood.Told;
        }

        for (var i = 0; i < clause.Items.Count; i++)
        {
            var item = clause.Items[i];
            if (Supposes(statement, clause, i))
            {
                return Mood.Supposed;
            }

            if (Is(item, Rate) || (item.Is(Tag.All) && clause.Items.Skip(i + 1).FirstOrDefault() is { Kind: ItemKind.Time, When.Kind: WhenKind.Length }))
            {
                return Mood.Usual;
            }
        }

        return Mood.Told;
    }

    // Told of other times; "since last week" reaches to now.
    private static bool IsPast(Statement statement, Clause clause) =>
        StatementReader.InAnotherYear(statement, clause) || (clause.Has(Tag.History) && !clause.HasAny(Tag.Since, Tag.Change, Tag.StartRange));

    // Somebody's own affairs.
    private static bool IsOwn(Clause clause) => clause.Has(Tag.Own) && !clause.HasAny(Tag.HasDam, Tag.HasBaby, Tag.Call, Tag.KitThing, Tag.Assist);

    private static bool Supposes(Statement statement, Clause clause, int i)
    {
        var item = clause.Items[i];
        return (item.Is(Tag.Tomorrow) && !item.Is(Tag.Morning))
            || (Is(item, If) && !(i > 0 && clause.Items.Take(i).Any(before => before.Tags.HasAny(Doubt))))
            || (Is(item, Wish) && Opens(clause, i))
            || (Is(item, Should) && !clause.HasAny(Tag.NoAssist, Tag.Assist, Tag.Weather))
            || (Is(item, Order) && Opens(clause, i))
            || (item.Is(Tag.Hearsay) && Ordered(statement, clause, i));
    }

    private static bool Is(Item item, int mood) => item.Argument == mood && item.Is(Tag.Mood);

    private static bool Opens(Clause clause, int i) => clause.Items.Take(i).All(before => before.Kind == ItemKind.Person || before.Tags.HasAny(Small));

    // "vet says give her 4 oz", "vet said to keep her warm"
    private static bool Ordered(Statement statement, Clause clause, int i)
    {
        var scan = statement.Scan;
        foreach (var item in clause.Items.Skip(i + 1).Take(3))
        {
            var word = scan.Words.Phrases.Alone(scan.Words.Words.Find(scan.TokenOf(item).Exact, scan.TokenOf(item).Text));
            if (word.Tags.Has(Tag.Mood) && word.Argument is Order or Told && word.Argument is not 0)
            {
                return true;
            }

            if (!item.Tags.HasAny(TagSet.Of(Tag.To, Tag.Prep, Tag.Me, Tag.It, Tag.Known, Tag.Mood)))
            {
                return false;
            }
        }

        return false;
    }
}

using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Finds questions; a sentence that asks states nothing.</summary>
internal static class QuestionReader
{
    private static readonly TagSet DueWords = TagSet.Of(Tag.Due, Tag.Born);
    private static readonly TagSet Kinds = TagSet.Of(
        Tag.Cord, Tag.Dip, Tag.Placenta, Tag.Passed, Tag.Nurse, Tag.Standing, Tag.Temperature, Tag.TookReading, Tag.Weight, Tag.Meconium, Tag.Urine,
        Tag.Igg, Tag.Bottle, Tag.Tube, Tag.Colostrum, Tag.Cleaned, Tag.Vaccine, Tag.Born, Tag.Had, Tag.Labour, Tag.Medicine, Tag.Ate, Tag.NurseWeak);

    /// <summary>Reads the sentences that ask and takes them out of the clauses.</summary>
    public static void Read(Statement statement)
    {
        List<Clause> all = [.. statement.Clauses];
        for (var (from, to) = (0, 0); from < all.Count; from = to)
        {
            var sentence = all[from].Sentence;
            to = from;
            while (to < all.Count && all[to].Sentence == sentence)
            {
                to++;
            }

            var clauses = all.GetRange(from, to - from);
            if (Ask(statement, clauses) is not { } draft)
            {
                Drop(statement, clauses);
            }
            else
            {
                draft.Mention = clauses.SelectMany(clause => clause.Items).FirstOrDefault(item => item.Mention is { Vague: false })?.Mention;
                statement.Clauses.RemoveAll(clause => clause.Sentence == sentence);
            }
        }
    }

    // A question that nothing can answer still states nothing.
    private static void Drop(Statement statement, List<Clause> clauses)
    {
        var opens = Opens(clauses[0]);
        if (!clauses[0].Asked || !opens.HasAny(TagSet.Of(Tag.Question, Tag.Request, Tag.Howto)))
        {
            return;
        }

        if (clauses.Exists(clause => clause.Has(Tag.Need)))
        {
            New(statement, FactKind.QuestionHowto, clauses[0]);
        }

        statement.Because(clauses[0], "a question");
        statement.Clauses.RemoveAll(clauses.Contains);
    }

    private static Draft? Ask(Statement statement, List<Clause> clauses)
    {
        var first = clauses.Find(clause => !clause.Items.TrueForAll(item => item.Kind is ItemKind.Person or ItemKind.Unknown || item.Tags.HasAny(TagSet.Of(Tag.Banter, Tag.Yes)))) ?? clauses[0];
        var tags = clauses.Aggregate(default(TagSet), (all, clause) => all | clause.Tags);
        var asked = clauses[0].Asked;
        if (PlanningReader.Read(statement, clauses, tags, asked) is { } planning)
        {
            return planning;
        }

        if (Figure(statement, clauses, tags, asked) is { } figure)
        {
            return figure;
        }

        var opens = Opens(first);
        return tags.Has(Tag.WhoNext) && (asked || opens.Has(Tag.WhoNext)) ? New(statement, FactKind.QuestionDue, first)
            : tags.HasAny(DueWords) && !(tags.Has(Tag.HasBaby) && !tags.Has(Tag.Due)) && (tags.Has(Tag.When) && (asked || opens.Has(Tag.When)) || (asked && tags.Has(Tag.Due) && !tags.Has(Tag.TasksQ))) ? New(statement, FactKind.QuestionDue, first)
            : opens.Has(Tag.Question) && tags.Has(Tag.Due) && !tags.Has(Tag.TasksQ) && tags.HasAny(TagSet.Of(Tag.HasDam, Tag.HasAnimal)) ? New(statement, FactKind.QuestionDue, first)
            : opens.Has(Tag.TasksQ) || (tags.Has(Tag.TasksQ) && asked) ? New(statement, FactKind.QuestionTasks, first)
            : opens.Has(Tag.Howto) || (tags.Has(Tag.Howto) && asked) ? Howto(statement, clauses, tags)
            : opens.Has(Tag.HowIs) || (tags.Has(Tag.HowIs) && asked) ? Status(statement, clauses, first)
            : asked && opens.HasAny(TagSet.Of(Tag.Question)) && tags.HasAny(TagSet.Of(Tag.HasDam, Tag.HasBaby)) && !tags.HasAny(TagSet.Of(Tag.HasNumber, Tag.HasQuantity, Tag.Request)) ? Status(statement, clauses, first)
            : Asks(statement.Scan, first, opens, tags, asked) ? Status(statement, clauses, first)
            : null;
    }

    // "is 98.9 ok for a newborn?"
    private static Draft? Figure(Statement statement, List<Clause> clauses, TagSet tags, bool asked)
    {
        var item = clauses.SelectMany(clause => clause.Items).FirstOrDefault(one => one.Kind is ItemKind.Number or ItemKind.Quantity);
        var plain = Opens(clauses[0]) is var opens && opens.Has(Tag.Question) && opens.Has(Tag.Be) && clauses.Count == 1;
        var length = item is null && plain && clauses[0].Has(Tag.HasTime) && !clauses[0].HasAny(Tag.HasDam, Tag.HasBaby);
        return (item is not null || length) && (asked || plain) && tags.Has(Tag.IsOk) && tags.HasAny(TagSet.Of(Tag.Question, Tag.Be, Tag.Howto)) ? Howto(statement, clauses, tags) : null;
    }

    // A figure in it stands with its unit; a question put twice is one question.
    private static Draft Howto(Statement statement, List<Clause> clauses, TagSet tags)
    {
        var draft = statement.Drafts.Find(one => one is { Kind: FactKind.QuestionHowto, Value: null }) ?? New(statement, FactKind.QuestionHowto, clauses[0]);
        foreach (var item in clauses.SelectMany(clause => clause.Items).Where(one => one.Kind is ItemKind.Number or ItemKind.Quantity))
        {
            draft.Unit = item.Unit ?? Readings.TemperatureScale(item.Value) ?? (item.Value >= 100m && (tags | statement.Scan.Tags).Has(Tag.Igg) ? FactUnit.MgPerDl : null);
            draft.Value = draft.Unit is null ? null : item.Value;
            if (draft.Unit is not null)
            {
                break;
            }
        }

        return draft;
    }

    private static bool Asks(Scan scan, Clause first, TagSet opens, TagSet tags, bool asked)
    {
        var word = first.Items.Find(item => item.Kind is ItemKind.Sense or ItemKind.Animal);
        var auxiliary = word is not null && opens.HasAny(TagSet.Of(Tag.Question, Tag.Anyone));
        var turned = first.Items.Count > 1 && (first.Items[1].Kind is ItemKind.Animal or ItemKind.Person || first.Items[1].Is(Tag.Anyone) || first.Items[1].Is(Tag.They));
        var somebody = opens.Has(Tag.Anyone) && !asked && word is not null && scan.TokenOf(word).Text is "someone" or "somebody" or "alguien";
        var ofThing = tags.HasAny(TagSet.Of(Tag.Thing, Tag.Goods)) && !tags.HasAny(TagSet.Of(Tag.HasAnimal, Tag.Cord, Tag.Placenta, Tag.Temperature, Tag.Weight, Tag.Dip));
        return !somebody && !ofThing && tags.HasAny(Kinds) && !tags.HasAny(TagSet.Of(Tag.Hearsay, Tag.Request)) && !tags.HasAny(TagSet.Of(Tag.HasNumber, Tag.HasQuantity))
            && ((auxiliary && (asked || turned || opens.Has(Tag.Anyone))) || (asked && !tags.HasAny(TagSet.Of(Tag.Hedge, Tag.Claim))));
    }

    private static TagSet Opens(Clause clause)
    {
        foreach (var item in clause.Items)
        {
            if (item.Kind is not (ItemKind.Person or ItemKind.Unknown or ItemKind.Mark))
            {
                return item.Tags;
            }
        }

        return default;
    }

    private static Draft Status(Statement statement, List<Clause> clauses, Clause first)
    {
        var draft = New(statement, FactKind.QuestionStatus, first);
        draft.Task = clauses.Select(PlanReader.TaskOf).FirstOrDefault(task => task is not null)
            ?? (clauses.Exists(clause => clause.HasAny(Tag.Passed, Tag.Cleaned)) ? statement.Known.SoleReminder?.Task ?? "placenta" : null);
        return draft;
    }

    private static Draft New(Statement statement, FactKind kind, Clause clause) => statement.Add(kind, clause, null);
}

using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Holds back facts that the words say of a thing or of no animal of the herd: "the gate is up", "weighed the hay".</summary>
internal static class SubjectGate
{
    private static readonly TagSet Beside = TagSet.Of(Tag.Article, Tag.Colour, Tag.SmallOne, Tag.BigOne);
    private static readonly TagSet PlainNoun = TagSet.Of(Tag.Known);
    private static readonly TagSet Ends = TagSet.Of(Tag.Prep, Tag.At, Tag.JustNow, Tag.VaguePast, Tag.And, Tag.But, Tag.Also, Tag.LastNight, Tag.Morning);
    private static readonly TagSet Joints = TagSet.Of(Tag.Be, Tag.Also, Tag.JustNow, Tag.Still, Tag.Again, Tag.Had);

    /// <summary>Drops what was drawn from the clause and is not an animal's.</summary>
    public static void Sift(Statement statement, Clause clause, int from)
    {
        for (var i = statement.Drafts.Count - 1; i >= from; i--)
        {
            if (NeedsAnimal(statement.Drafts[i].Kind) && IsOfThing(statement, clause, statement.Drafts[i]))
            {
                clause.Mood = Mood.Elsewhere;
                statement.Because(clause, "said of a thing, not of an animal of the herd");
                statement.Drafts.RemoveAt(i);
            }
        }
    }

    /// <summary>The sentence is about goods, not only told of where somebody lies: "12 bales", but "on the straw".</summary>
    public static bool SpeaksOfGoods(Statement statement, Clause clause) =>
        statement.Clauses.Exists(other => other.Sentence == clause.Sentence && Enumerable.Range(0, other.Items.Count).Any(k => other.Items[k].Is(Tag.Goods) && !AfterPreposition(other, k)));

    private static bool NeedsAnimal(FactKind kind) =>
        kind is not (FactKind.Kit or FactKind.Weather or FactKind.Roster or FactKind.Done or FactKind.NotDone);

    private static bool IsOfThing(Statement statement, Clause clause, Draft draft)
    {
        var at = draft.Anchor is null ? -1 : clause.Items.IndexOf(draft.Anchor);
        return (draft.Value is not null && FollowsThing(statement, clause)) || at >= 0 && (LosesSomething(clause, draft, at) || HasThingBefore(statement, clause, at) || HasThingAfter(statement, clause, draft, at));
    }

    // "UPS says the dog bed comes, 14 lb box": a figure after a thing, where no animal is spoken of
    private static bool FollowsThing(Statement statement, Clause clause)
    {
        if (clause.HasAny(Tag.So, Tag.HasAnimal, Tag.Weight, Tag.Temperature, Tag.Weighed, Tag.Igg, Tag.Bottle, Tag.Tube, Tag.Syringe, Tag.Colostrum, Tag.Gave))
        {
            return false;
        }

        var before = statement.Clauses.FindLast(other => other.Sentence == clause.Sentence && other != clause && statement.Clauses.IndexOf(other) < statement.Clauses.IndexOf(clause) && other.HasAny(Tag.HasAnimal, Tag.Thing, Tag.Goods));
        return before is not null && !before.Has(Tag.HasAnimal) && Enumerable.Range(0, before.Items.Count).Any(k => IsThing(before.Items[k]) && !AfterPreposition(before, k));
    }

    // "lost her patience", "lost the tag": what was lost is no animal
    private static bool LosesSomething(Clause clause, Draft draft, int at)
    {
        if (draft.Kind != FactKind.Death || !clause.Items[at].Is(Tag.Lost))
        {
            return false;
        }

        var k = at + 1;
        while (k < clause.Items.Count && clause.Items[k].Tags.HasAny(Beside) && clause.Items[k].Mention is null)
        {
            k++;
        }

        if (k >= clause.Items.Count)
        {
            return at == 0;
        }

        var lost = clause.Items[k];
        var possessive = lost.Mention is { Kind: MentionKind.Pronoun } && k + 1 < clause.Items.Count && clause.Items[k + 1].Kind is ItemKind.Unknown or ItemKind.Sense && !clause.Items[k + 1].Tags.HasAny(Ends);
        return lost.Mention is null ? !lost.Tags.HasAny(TagSet.Of(Tag.Baby, Tag.Sex, Tag.SecondOne, Tag.FirstOne)) : possessive;
    }

    private static bool HasThingBefore(Statement statement, Clause clause, int at)
    {
        for (var k = at - 1; k >= 0; k--)
        {
            var item = clause.Items[k];
            if (item.Kind is ItemKind.Animal or ItemKind.Person || item.Is(Tag.Me))
            {
                return false;
            }

            if (IsThing(item) && !AfterPreposition(clause, k))
            {
                return true;
            }

            if ((IsStranger(statement, item) || (item.Tags == PlainNoun && k > 0 && k + 1 < clause.Items.Count && clause.Items[k - 1].Is(Tag.Article) && clause.Items[k + 1].Is(Tag.Be))) && !AfterPreposition(clause, k) && (k > 0 ? clause.Items[k - 1].Is(Tag.Article) : clause.Items[k + 1].Is(Tag.Be) || (k + 1 == at && BeginsWithBe(statement, clause.Items[at]))))
            {
                return true;
            }
        }

        return false;
    }

    // "clip is holding": the phrase itself begins with "is"
    private static bool BeginsWithBe(Statement statement, Item item)
    {
        var words = statement.Scan.Words;
        return item.End > item.First + 1 && words.Phrases.Alone(words.Words.Find(statement.Scan.TokenOf(item).Exact, statement.Scan.TokenOf(item).Text)).Tags.Has(Tag.Be);
    }

    private static bool HasThingAfter(Statement statement, Clause clause, Draft draft, int at)
    {
        var k = at + 1;
        var led = false;
        while (k < clause.Items.Count && ((clause.Items[k].Mention is null && clause.Items[k].Tags.HasAny(Beside | TagSet.Of(Tag.History))) || clause.Items[k].Kind == ItemKind.Number))
        {
            led = true;
            k++;
        }

        return k < clause.Items.Count && clause.Items[k] is var item && !(IsFood(draft.Kind) && clause.Items.Skip(k).Take(2).Any(one => one.Tags.HasAny(TagSet.Of(Tag.Milk, Tag.Colostrum))))
            && (IsThing(item) || (led && IsStranger(statement, item) && draft.Value is null));
    }

    private static bool IsFood(FactKind kind) => kind is FactKind.Feed or FactKind.Colostrum or FactKind.Nursing;

    private static bool IsThing(Item item) => item.Kind == ItemKind.Sense && item.Tags.HasAny(TagSet.Of(Tag.Thing, Tag.Goods)) && !item.Tags.HasAny(TagSet.Of(Tag.Baby, Tag.Urine, Tag.Meconium, Tag.WaterBroke, Tag.Bubble));

    // A plain word that nobody knows.
    private static bool IsStranger(Statement statement, Item item) => item.Kind == ItemKind.Unknown && !statement.Scan.TokenOf(item).Capital;

    private static bool AfterPreposition(Clause clause, int k)
    {
        var at = k - 1;
        while (at >= 0 && clause.Items[at].Tags.HasAny(Beside) && !clause.Items[at].Is(Tag.Prep))
        {
            at--;
        }

        return at >= 0 && (clause.Items[at].Is(Tag.Prep) || clause.Items[at].Is(Tag.InFuture)) && !clause.Items[at].Tags.HasAny(Joints);
    }
}

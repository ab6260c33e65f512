using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Feeds that were told of without an amount.</summary>
internal static class FeedReader
{
    private static readonly TagSet Given = TagSet.Of(Tag.Gave, Tag.Tube, Tag.Syringe, Tag.Done, Tag.Bottle, Tag.Not);
    private static readonly TagSet Means = TagSet.Of(Tag.Bottle, Tag.Tube, Tag.Syringe, Tag.Colostrum);

    public static void Read(Statement statement, Clause clause)
    {
        var told = clause.Has(Tag.HasVolume) || clause.HasAny(Tag.KitState, Tag.Claim, Tag.NoMilk, Tag.Medicine, Tag.NotNurse) || !clause.Tags.HasAny(Means);
        if (told || !clause.Tags.HasAny(Given) || clause.Asked || statement.Of(clause).Any(draft => draft.Kind is FactKind.Feed or FactKind.Colostrum or FactKind.Kit or FactKind.Medication))
        {
            return;
        }

        var anchor = clause.First(Tag.Colostrum) ?? clause.First(Tag.Bottle) ?? clause.First(Tag.Tube) ?? clause.First(Tag.Syringe);
        var later = statement.Clauses.Exists(other => other.Sentence == clause.Sentence && other != clause && other.Has(Tag.HasVolume));
        if (anchor is null || later || (clause.Has(Tag.Bottle) && !clause.HasAny(Tag.Gave, Tag.Done, Tag.Not) && statement.Known.Reply?.Task is not ("feed" or "colostrum")))
        {
            return;
        }

        statement.Add(clause.Has(Tag.Colostrum) ? FactKind.Colostrum : FactKind.Feed, clause, anchor).Route = RouteOf(clause);
    }

    public static FeedRoute? RouteOf(Clause clause) =>
        clause.Has(Tag.Tube) ? FeedRoute.Tube
        : clause.Has(Tag.Syringe) ? FeedRoute.Syringe
        : clause.Has(Tag.Bottle) ? FeedRoute.Bottle
        : null;
}

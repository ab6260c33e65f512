using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;

namespace HerdBot.Core.Decisions;

/// <summary>What is said to milk given by hand: so far, what is missing, and the cautions of bottle and tube.</summary>
internal static class MilkLines
{
    public static IEnumerable<string> Of(Draft draft, HerdRecord record, NewbornView baby)
    {
        if (baby.Warmth.HoldSince is not null)
        {
            yield return draft.Phrases.Say("reply.fed_cold", SpecialLines.Again(draft, baby));
        }
        else if (record.Fact.Kind == FactKind.Colostrum && draft.Now - baby.Born < baby.Table.Time(CareKeys.ColostrumLapses))
        {
            var (target, assumed) = baby.ColostrumTarget();
            yield return draft.Phrases.Say("reply.colostrum", ("given", draft.Speaker.Amount(baby.ColostrumGiven(draft.Now))), ("target", draft.Speaker.Amount(target)), ("assumed", Assumed(draft, assumed)));
        }
        else
        {
            yield return Today(draft, baby);
        }
        var most = FeedPlan.Most(baby.Table, Grams(baby));
        if (baby.Warmth.HoldSince is null && Measures.Millilitres(record.Fact) > most)
        {
            yield return draft.Phrases.Say("reply.feed.big", ("most", draft.Speaker.Amount(most)));
        }
        if (record.Fact.Route == FeedRoute.Tube)
        {
            yield return draft.Phrases.Say("reply.feed.tube");
        }
    }

    private static string Today(Draft draft, NewbornView baby)
    {
        var plan = FeedPlan.Of(baby);
        var had = FeedPlan.Had(baby, draft.Now);
        return draft.Phrases.Say("reply.feed", ("had", draft.Speaker.Amount(had)), ("day", draft.Speaker.Amount(plan.ADay)), ("left", draft.Speaker.Amount(Math.Max(0, plan.ADay - had))),
            ("feed", draft.Speaker.Amount(plan.OneFeed)), ("assumed", Assumed(draft, plan.Assumed)));
    }

    private static decimal Grams(NewbornView baby) => baby.Weights.Length > 0 ? baby.Weights[^1].Grams : baby.Table.Number(CareKeys.ColostrumAssumedWeight) * 1000;

    private static string Assumed(Draft draft, bool assumed) => assumed ? draft.Phrases.Say("post.assumed") : "";
}

using System.Collections.Immutable;
using System.Globalization;
using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Feeds by hand: asked for from the hour at which its dam feeds it no more.</summary>
internal static class Feeding
{
    private static readonly Duration Ends = Duration.FromDays(120);

    public static IEnumerable<CareTask> Tasks(NewbornView baby)
    {
        if (baby.ByHandSince is not { } since || Weaning.WeanedAt(baby) is not null || baby.Age > Ends)
        {
            yield break;
        }
        var plan = FeedPlan.Of(baby);
        var last = baby.Certain(FactKind.Feed).Concat(baby.Certain(FactKind.Colostrum)).Select(record => record.At).Where(at => at >= since - Duration.FromHours(1)).DefaultIfEmpty(Instant.MinValue).Max();
        var asked = last == Instant.MinValue ? since : Next(baby, last, plan);
        var key = new TaskKey(CareTaskName.Feed, baby.Animal.Id, last == Instant.MinValue ? "first" : $"after {last.ToUnixTimeSeconds()}");
        yield return Steps.From(baby.Table, baby.Farm, key, baby.Pair, asked, baby.Table.Time(CareKeys.FeedLate), null) with
        {
            Held = baby.Warmth.HoldSince is not null,
            Prompt = true,
            Figures = Figures(baby, plan),
        };
    }

    /// <summary>The day's milk, one feed of it, what it had today and what is missing, for the wording.</summary>
    public static ImmutableDictionary<string, string> Figures(NewbornView baby, FeedPlan plan)
    {
        var had = FeedPlan.Had(baby, baby.Now);
        return ImmutableDictionary<string, string>.Empty
            .Add("whole", Whole(plan.ADay)).Add("feed", Whole(plan.OneFeed)).Add("had", Whole(had)).Add("left", Whole(Math.Max(0, plan.ADay - had)))
            .Add("assumed", plan.Assumed ? "yes" : "no");
    }

    /// <summary>The day is parted evenly; once it takes fewer feeds, none falls into the night.</summary>
    private static Instant Next(NewbornView baby, Instant last, FeedPlan plan)
    {
        var waking = baby.Farm.WakingHours;
        var clock = baby.Farm.Clock;
        if (plan.Feeds >= baby.Table.Count(CareKeys.FeedADay))
        {
            return last + Duration.FromHours(24.0 / plan.Feeds);
        }
        var minutes = Period.Between(waking.From, waking.To, PeriodUnits.Minutes).Minutes;
        var next = last + Duration.FromMinutes((minutes > 0 ? minutes : minutes + 24 * 60) / plan.Feeds);
        return waking.Holds(clock.Local(next).TimeOfDay) ? next : clock.Next(next, waking.From);
    }

    private static string Whole(decimal millilitres) => decimal.Round(millilitres, 0).ToString(CultureInfo.InvariantCulture);
}

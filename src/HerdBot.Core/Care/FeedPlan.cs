using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>The milk that a newborn fed by hand should have on a day. If it nurses too, it may leave some.</summary>
/// <param name="ADay">Millilitres a day.</param>
/// <param name="Feeds">Feeds a day.</param>
/// <param name="OneFeed">Millilitres in one feed, never over what its weight can take at once.</param>
/// <param name="Assumed">Its weight is assumed.</param>
public sealed record FeedPlan(decimal ADay, int Feeds, decimal OneFeed, bool Assumed)
{
    /// <summary>The plan of a newborn for today, from its newest weight and its age in farm days.</summary>
    /// <param name="newborn">What is on record of it.</param>
    public static FeedPlan Of(NewbornView newborn)
    {
        ArgumentNullException.ThrowIfNull(newborn);
        var weighed = newborn.Weights.Length > 0;
        var grams = weighed ? newborn.Weights[^1].Grams : newborn.Table.Number(CareKeys.ColostrumAssumedWeight) * 1000;
        var days = Period.DaysBetween(newborn.Farm.Clock.Day(newborn.Born), newborn.Farm.Clock.Day(newborn.Now));
        return Of(newborn.Table, grams, days) with { Assumed = !weighed };
    }

    /// <summary>10 % of the weight, a point more every three days up to 15; six feeds, then five, then four. One ml of milk is taken as one gram.</summary>
    /// <param name="table">The species' numbers.</param>
    /// <param name="grams">Today's weight.</param>
    /// <param name="days">Age in days, 0 on the day of birth.</param>
    public static FeedPlan Of(CareTable table, decimal grams, int days)
    {
        ArgumentNullException.ThrowIfNull(table);
        var percent = Math.Min(table.Number(CareKeys.FeedPercent) + days / table.Count(CareKeys.FeedStepDays), table.Number(CareKeys.FeedPercentTop));
        var feeds = table.Count(days >= table.Count(CareKeys.FeedThirdFrom) ? CareKeys.FeedADayThird : days >= table.Count(CareKeys.FeedSecondFrom) ? CareKeys.FeedADaySecond : CareKeys.FeedADay);
        var aDay = grams * percent / 100;
        return new FeedPlan(aDay, feeds, Math.Min(aDay / feeds, Most(table, grams)), false);
    }

    /// <summary>The most that a weight takes in one feed, in millilitres.</summary>
    public static decimal Most(CareTable table, decimal grams)
    {
        ArgumentNullException.ThrowIfNull(table);
        return grams / 1000 * table.Number(CareKeys.FeedMostPerKg);
    }

    /// <summary>What it had by hand on the farm day of an instant, colostrum and milk, in millilitres.</summary>
    public static decimal Had(NewbornView newborn, Instant at)
    {
        ArgumentNullException.ThrowIfNull(newborn);
        var clock = newborn.Farm.Clock;
        return newborn.Certain(FactKind.Colostrum).Concat(newborn.Certain(FactKind.Feed))
            .Where(record => clock.Day(record.At) == clock.Day(at)).Sum(record => Measures.Millilitres(record.Fact) ?? 0);
    }
}

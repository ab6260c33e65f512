using System.Collections.Immutable;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>How a newborn's weight stands by its newest weighing.</summary>
/// <param name="At">The newest weighing.</param>
/// <param name="Level">How grave.</param>
/// <param name="Band">Which rule, for the wording; "" where all is well.</param>
/// <param name="GainADay">Grams a day by the trend; null before there are two days.</param>
public sealed record Growth(Instant At, Level Level, string Band, decimal? GainADay)
{
    /// <summary>Judges the newest weight; null where there is none.</summary>
    /// <param name="newborn">What is on record of it.</param>
    public static Growth? Of(NewbornView newborn)
    {
        ArgumentNullException.ThrowIfNull(newborn);
        return newborn.Weights.Length == 0 ? null
            : Of(newborn.Table, newborn.Farm.Clock.Day(newborn.Born), [.. newborn.Weights.Select(weight => (newborn.Farm.Clock.Day(weight.At), weight.At, weight.Grams))]);
    }

    /// <summary>Judges the newest of some weights. Loss and standing still go by the raw weights, a slow gain by the trend.</summary>
    /// <param name="table">The species' numbers.</param>
    /// <param name="born">The farm's day of the birth.</param>
    /// <param name="weights">In grams, oldest first; not empty. Of one day the last counts, and on the day of birth the first.</param>
    public static Growth Of(CareTable table, LocalDate born, ImmutableArray<(LocalDate Day, Instant At, decimal Grams)> weights)
    {
        ArgumentNullException.ThrowIfNull(table);
        var days = weights.GroupBy(weight => weight.Day).Select(day => day.Key == born ? day.First() : day.Last()).ToList();
        var (newest, at) = (days[^1], weights[^1].At);
        var first = days[0].Day <= born.PlusDays(1) ? days[0].Day : born;
        var trend = days.Where(weight => weight.Day > newest.Day.PlusDays(-table.Count(CareKeys.WeightTrendDays))).Select(weight => ((decimal)Period.DaysBetween(born, weight.Day), weight.Grams)).ToList();
        var gain = TheilSen.Slope(trend);
        Growth Stands(Level level, string band) => new(at, level, band, gain);
        if (days.Count == 1)
        {
            return newest.Day == first && newest.Grams < table.Number(CareKeys.WeightSmall) * 1000 ? Stands(Level.Act, "small") : Stands(Level.Fine, "");
        }
        var change = newest.Grams - days[^2].Grams;
        if (change < 0 && days.Count > 2 && days[^2].Grams < days[^3].Grams)
        {
            return Stands(Level.Vet, "falling");
        }
        if (newest.Day == first.PlusDays(1) && days.Count == 2)
        {
            var most = Math.Min(days[0].Grams * table.Number(CareKeys.WeightFirstLossPercent) / 100, table.Number(CareKeys.WeightFirstLoss));
            return -change > most ? Stands(Level.Act, "first_loss") : Stands(Level.Fine, change < 0 ? "first_day" : "");
        }
        if (newest.Day > first.PlusDays(1) && change <= 0)
        {
            return Stands(Level.Act, change < 0 ? "loss" : "flat");
        }
        var span = trend.Count < 2 ? 0 : trend[^1].Item1 - trend[0].Item1;
        return span >= table.Count(CareKeys.WeightSlowDays) && gain < table.Number(CareKeys.WeightGainLow) / 2 ? Stands(Level.Act, "slow") : Stands(Level.Fine, "");
    }
}

using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>How long a dam has carried.</summary>
public static class Pregnancy
{
    private static readonly Duration Longest = Duration.FromDays(430);

    /// <summary>Days from the newest mating to an instant; null where none since the last birth can still be carried.</summary>
    /// <param name="dam">Her records, oldest first.</param>
    /// <param name="at">The birth, or now.</param>
    /// <param name="farm">Whose days are counted.</param>
    public static int? Days(IEnumerable<HerdRecord> dam, Instant at, Farm farm)
    {
        ArgumentNullException.ThrowIfNull(dam);
        ArgumentNullException.ThrowIfNull(farm);
        Instant? mated = null;
        foreach (var record in dam.Where(record => record.Certain && record.At < at))
        {
            mated = record.Fact.Kind switch
            {
                FactKind.Breeding when !record.Fact.Says(NoteTopics.Grafted) => record.At,
                FactKind.Birth => null,
                _ => mated,
            };
        }
        return mated > at - Longest ? Period.DaysBetween(farm.Clock.Day(mated.Value), farm.Clock.Day(at)) : null;
    }
}

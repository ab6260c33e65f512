using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Who is at risk.</summary>
public static class Risk
{
    private static readonly Duration BeforeBirth = Duration.FromDays(2);

    /// <summary>
    /// Assisted, early, small, a twin, weak, cold at birth, its dam dry, ill or dead, rejected, without antibodies or with too few.
    /// </summary>
    /// <param name="newborn">What is on record of it and of its dam.</param>
    public static bool Of(NewbornView newborn)
    {
        ArgumentNullException.ThrowIfNull(newborn);
        return newborn.Animal.Twin is not null
            || newborn.Warmth.WasCold
            || (newborn.Weights.Length > 0 && newborn.Weights[0].Grams < newborn.Table.Number(CareKeys.WeightSmall) * 1000)
            || newborn.About(NoteTopics.Weak, NoteTopics.HeadDown, NoteTopics.Rejects, NoteTopics.Grafted).Any()
            || Prematurity.Of(newborn) is { IsEarly: true }
            || Antibodies.Lowest(newborn) < newborn.Table.Number(CareKeys.IggLow)
            || newborn.Dam.All.Any(record => record.At > newborn.Born - BeforeBirth && record is { Withdrawn: false, Fact: { Neg: false, Unsure: false } }
                && (record.Fact.Kind == FactKind.Assistance || record is { Newborn: null, Fact.Kind: FactKind.Death }
                    || record.Fact.Says(NoteTopics.NoMilk, NoteTopics.Rejects, NoteTopics.DamIll, NoteTopics.Bleeds, NoteTopics.Prolapse, NoteTopics.Colic, NoteTopics.Infection)));
    }
}

using System.Collections.Immutable;
using System.Globalization;
using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Colostrum while the gut still takes it: a target from the weight, half of it early.</summary>
internal static class Colostrum
{
    public static IEnumerable<CareTask> Tasks(NewbornView baby)
    {
        var table = baby.Table;
        var asked = table.Time(baby.AtRisk ? CareKeys.ColostrumRiskAsked : CareKeys.ColostrumAsked);
        if (baby.Nursed.Length > 0 && baby.Nursed[0] <= baby.Born + asked)
        {
            yield break;
        }
        var (target, assumed) = baby.ColostrumTarget();
        var plain = Steps.FromBirth(baby, CareTaskName.Colostrum, "", asked, table.Time(baby.AtRisk ? CareKeys.ColostrumRiskLate : CareKeys.ColostrumLate),
            table.Time(baby.AtRisk ? CareKeys.ColostrumRiskVet : CareKeys.ColostrumVet));
        yield return plain with
        {
            Steps = [.. plain.Steps.Where(step => step.Level < Level.Vet || !(baby.FedAt <= step.At)), .. Shortfalls(baby, target)],
            DoneAt = NewbornPlan.Earliest(baby.Nursed.Length > 1 ? baby.Nursed[1] : null, Reached(baby, target)),
            LapsesAt = baby.Born + table.Time(CareKeys.ColostrumLapses),
            Wording = baby.Nursed.Length > 0 ? "nursed" : "",
            Held = baby.Warmth.HoldSince is not null,
            Figures = ImmutableDictionary<string, string>.Empty
                .Add("given", Whole(baby.ColostrumGiven(baby.Now))).Add("target", Whole(target)).Add("half", Whole(target / 2))
                .Add("assumed", assumed ? "yes" : "no"),
        };
    }

    /// <summary>Short of half at 6 h, of all at 12 and 18 h: the vet, each time anew, as long as it is short.</summary>
    private static IEnumerable<TaskStep> Shortfalls(NewbornView baby, decimal target)
    {
        if (baby.Nursed.Length > 0)
        {
            return [];
        }
        (CareKey Key, string Label, decimal Share)[] marks =
            [(CareKeys.ColostrumHalf, "half", 0.5m), (CareKeys.ColostrumAll, "all", 1m), (CareKeys.ColostrumAllAgain, "all again", 1m)];
        var soon = baby.ReportedAt + baby.Table.Time(CareKeys.PostingReportedLate);
        return marks.Where(mark => baby.ColostrumGiven(baby.Now) < target * mark.Share)
            .Select(mark => (At: baby.Born + baby.Table.Time(mark.Key) - baby.Farm.VetDrive, mark.Label))
            .Select(mark => Steps.VetStep(mark.At <= baby.ReportedAt ? soon : mark.At, mark.Label));
    }

    private static Instant? Reached(NewbornView baby, decimal target)
    {
        var sum = 0m;
        foreach (var record in baby.Certain(FactKind.Colostrum))
        {
            sum += Measures.Millilitres(record.Fact) ?? 0;
            if (sum >= target)
            {
                return record.At;
            }
        }
        return null;
    }

    private static string Whole(decimal millilitres) => decimal.Round(millilitres, 0).ToString(CultureInfo.InvariantCulture);
}

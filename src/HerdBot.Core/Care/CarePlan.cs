using System.Collections.Immutable;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Works out every task from what is on record. Pure: the same records and instant give the same plan.</summary>
public static class CarePlan
{
    private static readonly Duration Watched = Duration.FromDays(21);

    /// <summary>All tasks of the pairs that are watched: ahead, open, done and lapsed.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="now">Nothing after this counts.</param>
    public static ImmutableArray<CareTask> At(HerdState state, Farm farm, Instant now)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(farm);
        var babies = state.Newborns.Where(baby => baby.State is null && baby.Born > now - Watched)
            .SelectMany(baby => NewbornView.Of(state, farm, baby, now) is { } view ? NewbornPlan.Of(view) : []);
        return [.. babies, .. state.Roster.Where(animal => animal.Role == HerdRole.Dam && animal.IsHere()).SelectMany(dam => OfDam(state, farm, dam, now))];
    }

    private static List<CareTask> OfDam(HerdState state, Farm farm, Animal dam, Instant now)
    {
        var records = state.Records.Where(record => record.Animal == dam.Id && !record.Withdrawn && record.At > now - Watched).OrderBy(record => record.At).ToList();
        if (records.Count == 0 || farm.TableOf(dam.Species) is not { } table || records.Exists(record => record is { Certain: true, Fact.Kind: FactKind.Death }))
        {
            return [];
        }
        var births = records.Where(record => record.Newborn is not null).ToList();
        var tasks = DamPlan.Ill(table, farm, dam, records).ToList();
        if (births.Count > 0)
        {
            tasks.AddRange(DamPlan.AfterBirth(table, farm, dam, births[^1], records));
        }
        var recent = records.Where(record => record.At > now - Duration.FromDays(1) && !(births.Count > 0 && record.At < births[0].At - Duration.FromDays(1))).ToList();
        var under = recent.Where(record => births.All(birth => birth.At > record.At || record.At > birth.At + HerdState.Twins)).ToList();
        var born = births.Select(birth => (Instant?)birth.At).LastOrDefault(at => under.Count > 0 && at >= under[0].At);
        tasks.AddRange(DamPlan.Labour(table, farm, dam, under, born));
        return tasks;
    }
}

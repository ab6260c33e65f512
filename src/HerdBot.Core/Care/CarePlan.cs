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
    /// <remarks>Depends on the roster and the records alone: asked again for the same instant while these stay, it is not worked out again.</remarks>
    public static ImmutableArray<CareTask> At(HerdState state, Farm farm, Instant now)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(farm);
        if (state.Planned is not { } known || known.Now != now || !ReferenceEquals(known.Farm, farm))
        {
            state.Planned = known = new PlanMemo(farm, now, WorkOut(state, farm, now));
        }
        return known.Tasks;
    }

    private static ImmutableArray<CareTask> WorkOut(HerdState state, Farm farm, Instant now)
    {
        var babies = state.Newborns.Where(baby => baby.State is null && baby.Born > now - Watched)
            .SelectMany(baby => NewbornView.Of(state, farm, baby, now) is { } view ? NewbornPlan.Of(view) : []);
        return [.. babies, .. state.Roster.Where(animal => animal.Role == HerdRole.Dam && animal.IsHere()).SelectMany(dam => OfDam(state, farm, dam, now))];
    }

    /// <summary>A dam's records since she is watched. They stand in the order they were said: of a long life only the end is looked at.</summary>
    private static IEnumerable<HerdRecord> Recent(HerdState state, Animal dam, Instant now)
    {
        var records = state.RecordsOf(dam.Id);
        var from = records.Length;
        while (from > 0 && records[from - 1].SaidAt > now - Watched)
        {
            from--;
        }
        return records.Skip(from).Where(record => !record.Withdrawn && record.At > now - Watched);
    }

    private static List<CareTask> OfDam(HerdState state, Farm farm, Animal dam, Instant now)
    {
        var records = Recent(state, dam, now).OrderBy(record => record.At).ToList();
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

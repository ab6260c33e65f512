using System.Collections.Immutable;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Works out every task from what is on record. Pure: the same records and instant give the same plan.</summary>
public static class CarePlan
{
    /// <summary>A cria is watched until it is weaned, and no longer than this.</summary>
    private static readonly Duration Watched = Duration.FromDays(400);

    /// <summary>All tasks of the animals that are watched: ahead, open, done and lapsed.</summary>
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
        var plan = ImmutableArray.CreateBuilder<CareTask>();
        var young = state.Newborns.Where(baby => baby.State is null && baby.Born > now - Watched)
            .Select(baby => NewbornView.Of(state, farm, baby, now)).OfType<NewbornView>().ToList();
        foreach (var baby in young)
        {
            var tasks = NewbornPlan.Of(baby).Concat(VetOrders.Tasks(new Subject(baby.Table, baby.Told, baby.Animal.Id, baby.Pair), farm, now));
            plan.AddRange(Absence.Rest(tasks, baby.Told, baby.Table, baby.Animal.Id, baby.Pair, now));
        }
        var ofDam = young.ToLookup(baby => baby.Animal.Dam);
        foreach (var dam in state.Roster.Where(animal => animal.Role == HerdRole.Dam).Select(dam => DamView.Of(state, farm, dam, ofDam[dam.Id], now)).OfType<DamView>())
        {
            var tasks = DamPlan.Of(dam).Concat(VetOrders.Tasks(dam.Subject, farm, now));
            plan.AddRange(Absence.Rest(tasks, dam.Told, dam.Table, dam.Animal.Id, dam.Animal.Id, now));
        }
        return plan.ToImmutable();
    }
}

using System.Collections.Immutable;
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
    /// <remarks>
    /// Depends on the roster and the records alone, and a pair's part of it on the records about the pair: asked again for
    /// the same instant, only what has changed is worked out again.
    /// </remarks>
    public static ImmutableArray<CareTask> At(HerdState state, Farm farm, Instant now)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(farm);
        if (state.Planned is not { } known || !known.IsFor(state, farm, now))
        {
            state.Planned = known = WorkOut(state, farm, now);
        }
        return known.Tasks;
    }

    private static PlanMemo WorkOut(HerdState state, Farm farm, Instant now)
    {
        var young = state.Newborns.Where(baby => baby.State is null && baby.Born > now - Watched && baby.Dam is not null).ToList();
        var ofDam = young.ToLookup(baby => baby.Dam!);
        var grown = state.Roster.Where(animal => animal.Role == HerdRole.Dam).ToList();
        var pairs = new PairPlans(state, farm, now, state.Planned);
        foreach (var dam in grown.Select(dam => dam.Id).Union(ofDam.Select(babies => babies.Key)))
        {
            pairs.Add(dam, [.. ofDam[dam]], (mother, babies) => OfPair(state, farm, now, mother, babies));
        }
        var plan = pairs.Plan([.. young.Select(baby => (baby.Dam!, baby.Id)), .. grown.Select(dam => (dam.Id, dam.Id))]);
        // One look may go round all dams: no matter of one pair.
        return plan with { Tasks = [.. plan.Tasks, .. CloseUp.Of(state, farm, now, plan.Tasks)] };
    }

    private static IEnumerable<(AnimalId Animal, IEnumerable<CareTask> Tasks)> OfPair(HerdState state, Farm farm, Instant now, Animal? dam, ImmutableArray<Animal> babies)
    {
        var young = babies.Select(baby => NewbornView.Of(state, farm, baby, now)).OfType<NewbornView>().ToList();
        foreach (var baby in young)
        {
            var tasks = NewbornPlan.Of(baby).Concat(VetOrders.Tasks(new Subject(baby.Table, baby.Told, baby.Animal.Id, baby.Pair), farm, now));
            yield return (baby.Animal.Id, Absence.Rest(tasks, baby.Told, baby.Table, baby.Animal.Id, baby.Pair, now));
        }
        if (dam is { Role: HerdRole.Dam } && dam.IsHere() && DamView.Of(state, farm, dam, young, now) is { } view)
        {
            var tasks = DamPlan.Of(view).Concat(VetOrders.Tasks(view.Subject, farm, now));
            yield return (dam.Id, Absence.Rest(tasks, view.Told, view.Table, dam.Id, dam.Id, now));
        }
    }
}

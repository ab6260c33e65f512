using System.Collections.Immutable;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>A plan as it was worked out, and what it was worked out from.</summary>
/// <param name="Farm">For which farm.</param>
/// <param name="Now">For which instant.</param>
/// <param name="Roster">From which roster.</param>
/// <param name="Records">From which records.</param>
/// <param name="Pairs">The parts of each pair, by its dam.</param>
/// <param name="Tasks">The plan.</param>
internal sealed record PlanMemo(
    Farm Farm, Instant Now, ImmutableArray<Animal> Roster, ImmutableList<HerdRecord> Records, IReadOnlyDictionary<AnimalId, PairPart> Pairs, ImmutableArray<CareTask> Tasks)
{
    /// <summary>Whether it is the plan of this herd at this instant.</summary>
    public bool IsFor(HerdState state, Farm farm, Instant now) =>
        Now == now && ReferenceEquals(Farm, farm) && ReferenceEquals(Records, state.Records) && IsOf(state.Roster);

    /// <summary>Whether it was worked out from a roster like this; a herd that is counted anew has a new list of the same animals.</summary>
    public bool IsOf(ImmutableArray<Animal> roster) => Roster == roster || Roster.SequenceEqual(roster);
}

/// <summary>The tasks of a dam and her newborns, and what they were worked out from.</summary>
/// <param name="Animals">The dam, where she is on the roster, and the newborns.</param>
/// <param name="Records">The records of the dam, and of each newborn.</param>
/// <param name="Tasks">The tasks of each.</param>
internal sealed record PairPart(ImmutableArray<Animal?> Animals, ImmutableArray<ImmutableArray<HerdRecord>> Records, IReadOnlyDictionary<AnimalId, ImmutableArray<CareTask>> Tasks)
{
    /// <summary>Whether it was worked out from just these.</summary>
    public bool IsFrom(ImmutableArray<Animal?> animals, ImmutableArray<ImmutableArray<HerdRecord>> records) =>
        Animals.SequenceEqual(animals) && Records.SequenceEqual(records);
}

/// <summary>Gathers the parts of a plan, and takes over those of an earlier one that have not changed.</summary>
/// <param name="state">The herd.</param>
/// <param name="farm">The farm.</param>
/// <param name="now">The instant.</param>
/// <param name="before">An earlier plan; may be of anything.</param>
internal sealed class PairPlans(HerdState state, Farm farm, Instant now, PlanMemo? before)
{
    private readonly Dictionary<AnimalId, PairPart> parts = [];

    // Foster dams are looked for by name, so the whole roster counts.
    private readonly IReadOnlyDictionary<AnimalId, PairPart>? known =
        before is not null && before.Now == now && ReferenceEquals(before.Farm, farm) && before.IsOf(state.Roster) ? before.Pairs : null;

    /// <summary>Adds a pair's part: that of the earlier plan, where nothing about the pair has changed.</summary>
    public void Add(AnimalId dam, ImmutableArray<Animal> babies, Func<Animal?, ImmutableArray<Animal>, IEnumerable<(AnimalId Animal, IEnumerable<CareTask> Tasks)>> workOut)
    {
        var mother = state.Find(dam);
        ImmutableArray<Animal?> animals = [mother, .. babies];
        ImmutableArray<ImmutableArray<HerdRecord>> records = [state.RecordsOf(dam), .. babies.Select(baby => state.RecordsOf(baby.Id))];
        parts[dam] = known?.GetValueOrDefault(dam) is { } part && part.IsFrom(animals, records) ? part
            : new PairPart(animals, records, workOut(mother, babies).ToDictionary(one => one.Animal, one => one.Tasks.ToImmutableArray()));
    }

    /// <summary>The whole plan.</summary>
    /// <param name="order">The animals with tasks, each after its pair's dam, in the order of the plan.</param>
    public PlanMemo Plan(IEnumerable<(AnimalId Dam, AnimalId Animal)> order) =>
        new(farm, now, state.Roster, state.Records, parts, [.. order.SelectMany(one => parts[one.Dam].Tasks.GetValueOrDefault(one.Animal, []))]);
}

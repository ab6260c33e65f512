using System.Collections.Immutable;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;

namespace HerdBot.Core.Herd;

/// <summary>What the records change in the list: names, nicknames and tags, who died, who left.</summary>
internal sealed class RosterChanges
{
    private readonly Dictionary<AnimalId, List<Fact>> told = [];
    private readonly Dictionary<AnimalId, string> firstNames = [];
    private readonly HashSet<AnimalId> dead = [];

    public RosterChanges(IEnumerable<HerdRecord> records, ImmutableList<HerdEvent.AnimalAdded> added)
    {
        added.ForEach(one => firstNames.TryAdd(one.Animal.Id, one.Animal.Name));
        foreach (var record in records.Where(record => record is { Withdrawn: false, Animal: not null }))
        {
            if (record.Fact is { Kind: FactKind.Roster, Neg: false, Unsure: false } fact && fact.Field != RosterWords.Added)
            {
                (told.TryGetValue(record.Animal!, out var facts) ? facts : told[record.Animal!] = []).Add(fact);
            }
            else if (record is { Certain: true, Fact.Kind: FactKind.Death })
            {
                dead.Add(record.Newborn ?? record.Animal!);
            }
        }
    }

    public Animal Applied(Animal animal)
    {
        foreach (var fact in told.GetValueOrDefault(animal.Id) ?? [])
        {
            animal = fact switch
            {
                { Field: RosterWords.Tag, Traits.Tag: { } tag } => animal with { Tag = tag },
                { Name: { } name } when RosterWords.Names(fact.Field) => animal with { Name = name, Role = animal.Role == HerdRole.Newborn ? HerdRole.Young : animal.Role },
                _ when RosterWords.Leaves(fact.Field) => animal with { State = HerdEntryState.Sold },
                _ => animal,
            };
        }
        return dead.Contains(animal.Id) ? animal with { State = HerdEntryState.Dead } : animal;
    }

    /// <summary>Every name that the records give an animal, and the one it was added under.</summary>
    public IEnumerable<string> NamesOf(AnimalId id) =>
        (firstNames.TryGetValue(id, out var first) ? [first] : Enumerable.Empty<string>()).Concat((told.GetValueOrDefault(id) ?? []).Select(fact => fact.Name).OfType<string>());
}

using System.Collections.Immutable;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Herd;

/// <summary>Who is in the herd and under which names: what was added, what was born, and what the roster records make of them.</summary>
internal sealed class HerdList
{
    private readonly Dictionary<AnimalId, Animal> byId = [];
    private readonly Dictionary<string, Animal> byName = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<AnimalId, List<string>> otherNames = [];

    private HerdList(ImmutableArray<Animal> added, ImmutableArray<Animal> newborns, Changes changes)
    {
        (Added, Newborns, All) = (added, newborns, [.. added, .. newborns]);
        foreach (var animal in All)
        {
            byId.TryAdd(animal.Id, animal);
            otherNames[animal.Id] = [.. changes.NamesOf(animal.Id).Append(animal.Nickname).OfType<string>()
                .Where(name => !string.Equals(name, animal.Name, StringComparison.OrdinalIgnoreCase)).Distinct(StringComparer.OrdinalIgnoreCase)];
        }
        foreach (var animal in All.OrderByDescending(animal => animal.IsHere()))
        {
            byName.TryAdd(animal.Name, animal);
        }
        foreach (var animal in All.OrderByDescending(animal => animal.IsHere()))
        {
            otherNames[animal.Id].ForEach(name => byName.TryAdd(name, animal));
        }
    }

    public ImmutableArray<Animal> Added { get; }

    public ImmutableArray<Animal> Newborns { get; }

    public ImmutableArray<Animal> All { get; }

    public static HerdList Of(ImmutableList<HerdEvent.AnimalAdded> added, ImmutableList<HerdRecord> records)
    {
        var changes = new Changes(records, added);
        var stands = records.Where(record => !record.Withdrawn).Select(record => record.Id).ToHashSet();
        var grown = added.Where(one => one.Told is not { } told || stands.Contains(told)).Select(one => changes.Applied(one.Animal)).ToImmutableArray();
        var births = records.Where(record => record is { Newborn: not null, Withdrawn: false }).ToList();
        return new HerdList(grown, [.. births.Select(birth => changes.Applied(Newborn(birth, births, grown)))], changes);
    }

    public Animal? Find(AnimalId id) => byId.GetValueOrDefault(id);

    public Animal? Named(string name) => byName.GetValueOrDefault(name);

    public ImmutableArray<string> OtherNames(AnimalId id) => otherNames.TryGetValue(id, out var names) ? [.. names] : [];

    private static Animal Newborn(HerdRecord birth, List<HerdRecord> births, ImmutableArray<Animal> grown)
    {
        var dam = grown.FirstOrDefault(animal => animal.Id == birth.Animal);
        var litter = births.Where(other => other.Animal == birth.Animal && (other.At - birth.At) is var gap && gap < HerdState.Twins && gap > -HerdState.Twins)
            .OrderBy(other => other.Fact.N ?? 0).ThenBy(other => other.At).ThenBy(other => other.Id.Number).ToList();
        int? twin = litter.Count > 1 || birth.Fact.N is not null ? litter.IndexOf(birth) + 1 : null;
        return new Animal(birth.Newborn!, $"{dam?.Name ?? "?"}'s baby" + (twin is { } n ? $" {n}" : ""), HerdRole.Newborn, dam?.Species ?? Species.Llama)
        {
            Sex = birth.Fact.Sex,
            Dam = birth.Animal,
            Born = birth.At,
            Twin = twin,
        };
    }

    /// <summary>What the records change in the list: names, nicknames and tags, who died, who left.</summary>
    private sealed class Changes
    {
        private readonly Dictionary<AnimalId, List<Fact>> told = [];
        private readonly Dictionary<AnimalId, string> firstNames = [];
        private readonly HashSet<AnimalId> dead = [];

        public Changes(ImmutableList<HerdRecord> records, ImmutableList<HerdEvent.AnimalAdded> added)
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
                    dead.Add(record.Animal!);
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
}

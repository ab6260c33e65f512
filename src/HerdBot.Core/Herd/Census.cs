using System.Collections.Immutable;
using HerdBot.Core.Facts;

namespace HerdBot.Core.Herd;

/// <summary>Everybody there is: the roster, then the newborns by the births on record. Looked up by id and by name.</summary>
internal sealed class Census
{
    private readonly Dictionary<AnimalId, Animal> byId = [];
    private readonly Dictionary<string, Animal> byName = new(StringComparer.OrdinalIgnoreCase);
    private readonly ILookup<AnimalId, Animal> byDam;

    /// <summary>Counts.</summary>
    /// <param name="roster">Who was added by name.</param>
    /// <param name="vital">The records of births, names and deaths, in the order they were made.</param>
    public Census(ImmutableList<Animal> roster, IEnumerable<HerdRecord> vital)
    {
        var records = vital.ToList();
        var births = records.Where(record => record is { Newborn: not null, Withdrawn: false }).ToList();
        var litters = births.Where(birth => birth.Animal is not null).ToLookup(birth => birth.Animal!);
        var names = records.Where(record => record is { Withdrawn: false, Fact: { Kind: FactKind.Roster, Name: not null }, Animal: not null })
            .GroupBy(record => record.Animal!).ToDictionary(group => group.Key, group => group.Last().Fact.Name!);
        var dead = records.Where(record => record is { Certain: true, Fact.Kind: FactKind.Death }).Select(record => record.Newborn ?? record.Animal).ToHashSet();
        var dams = roster.DistinctBy(animal => animal.Id).ToDictionary(animal => animal.Id);
        Newborns = [.. births.Select(birth => Newborn(birth, birth.Animal is null ? null : dams.GetValueOrDefault(birth.Animal), birth.Animal is null ? [birth] : litters[birth.Animal], names, dead))];
        byDam = Newborns.Where(baby => baby.Dam is not null).ToLookup(baby => baby.Dam!);
        foreach (var animal in roster.Concat(Newborns))
        {
            byId.TryAdd(animal.Id, animal);
            byName.TryAdd(animal.Name, animal);
        }
    }

    /// <summary>By the births on record, in that order; none of a birth that was taken back.</summary>
    public ImmutableArray<Animal> Newborns { get; }

    /// <summary>The animal of an id; null where there is none.</summary>
    public Animal? Find(AnimalId id) => byId.GetValueOrDefault(id);

    /// <summary>The animal of a spoken name, letter case aside; null where there is none.</summary>
    public Animal? Named(string name) => byName.GetValueOrDefault(name);

    /// <summary>A dam's newborns, in the order of their births on record.</summary>
    public IEnumerable<Animal> Of(AnimalId dam) => byDam[dam];

    /// <summary>Whether a record tells who there is, so that it belongs to what is counted here.</summary>
    public static bool Counts(HerdRecord record) => record.Newborn is not null || record.Fact.Kind is FactKind.Death or FactKind.Roster;

    private static Animal Newborn(HerdRecord birth, Animal? dam, IEnumerable<HerdRecord> births, Dictionary<AnimalId, string> names, HashSet<AnimalId?> dead)
    {
        var litter = births.Where(other => (other.At - birth.At) is var gap && gap < HerdState.Twins && gap > -HerdState.Twins)
            .OrderBy(other => other.Fact.N ?? 0).ThenBy(other => other.At).ThenBy(other => other.Id.Number).ToList();
        int? twin = litter.Count > 1 || birth.Fact.N is not null ? litter.IndexOf(birth) + 1 : null;
        var unnamed = new BabyName(dam?.Name ?? "?", twin).ToString();
        var named = names.TryGetValue(birth.Newborn!, out var name);
        return new Animal(birth.Newborn!, named ? name! : unnamed, named ? HerdRole.Young : HerdRole.Newborn, dam?.Species ?? Species.Llama)
        {
            Sex = birth.Fact.Sex,
            Dam = birth.Animal,
            Born = birth.At,
            Twin = twin,
            State = dead.Contains(birth.Newborn) ? HerdEntryState.Dead : null,
        };
    }
}

using System.Collections.Immutable;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;

namespace HerdBot.Core.Herd;

/// <summary>Everybody there is: who was added by name, then the newborns by the births on record, as the roster records leave them. Looked up by id and by name.</summary>
internal sealed class Census
{
    private readonly Dictionary<AnimalId, Animal> byId = [];
    private readonly Dictionary<string, Animal> byName = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<AnimalId, ImmutableArray<string>> otherNames = [];
    private readonly ILookup<AnimalId, Animal> byDam;

    /// <summary>Counts.</summary>
    /// <param name="added">Who was added by name.</param>
    /// <param name="vital">The records of births, deaths and the roster, in the order they were made.</param>
    public Census(ImmutableList<HerdEvent.AnimalAdded> added, IEnumerable<HerdRecord> vital)
    {
        var records = vital.ToList();
        var changes = new RosterChanges(records, added);
        var withdrawn = records.Where(record => record.Withdrawn).Select(record => record.Id).ToHashSet();
        Roster = [.. added.Where(one => one.Told is not { } told || !withdrawn.Contains(told)).Select(one => changes.Applied(one.Animal))];
        var births = records.Where(record => record is { Newborn: not null, Withdrawn: false }).ToList();
        var litters = births.Where(birth => birth.Animal is not null).ToLookup(birth => birth.Animal!);
        var dams = Roster.DistinctBy(animal => animal.Id).ToDictionary(animal => animal.Id);
        Newborns = [.. births.Select(birth => changes.Applied(Newborn(birth, birth.Animal is null ? null : dams.GetValueOrDefault(birth.Animal), birth.Animal is null ? [birth] : litters[birth.Animal])))];
        byDam = Newborns.Where(baby => baby.Dam is not null).ToLookup(baby => baby.Dam!);
        All = [.. Roster, .. Newborns];
        Index(changes);
    }

    /// <summary>Who was added by name.</summary>
    public ImmutableArray<Animal> Roster { get; }

    /// <summary>By the births on record, in that order; none of a birth that was taken back.</summary>
    public ImmutableArray<Animal> Newborns { get; }

    /// <summary>The roster, then the newborns.</summary>
    public ImmutableArray<Animal> All { get; }

    /// <summary>The animal of an id; null where there is none.</summary>
    public Animal? Find(AnimalId id) => byId.GetValueOrDefault(id);

    /// <summary>The animal of a spoken name, letter case aside; null where there is none.</summary>
    public Animal? Named(string name) => byName.GetValueOrDefault(name);

    /// <summary>An animal's nicknames and the names it bore before.</summary>
    public ImmutableArray<string> OtherNames(AnimalId id) => otherNames.GetValueOrDefault(id, []);

    /// <summary>A dam's newborns, in the order of their births on record.</summary>
    public IEnumerable<Animal> Of(AnimalId dam) => byDam[dam];

    /// <summary>Whether a record tells who there is, so that it belongs to what is counted here.</summary>
    public static bool Counts(HerdRecord record) => record.Newborn is not null || record.Fact.Kind is FactKind.Death or FactKind.Roster;

    /// <summary>A name means one that is here before one that has left, and one that bears it before one that bore it.</summary>
    private void Index(RosterChanges changes)
    {
        var order = All.OrderByDescending(animal => animal.IsHere()).ToList();
        foreach (var animal in order)
        {
            byId.TryAdd(animal.Id, animal);
            byName.TryAdd(animal.Name, animal);
        }
        foreach (var animal in order)
        {
            ImmutableArray<string> others = [.. changes.NamesOf(animal.Id).Append(animal.Nickname).OfType<string>()
                .Where(name => !string.Equals(name, animal.Name, StringComparison.OrdinalIgnoreCase)).Distinct(StringComparer.OrdinalIgnoreCase)];
            if (others.Length > 0)
            {
                otherNames.TryAdd(animal.Id, others);
                Array.ForEach([.. others], name => byName.TryAdd(name, animal));
            }
        }
    }

    private static Animal Newborn(HerdRecord birth, Animal? dam, IEnumerable<HerdRecord> births)
    {
        var litter = births.Where(other => (other.At - birth.At) is var gap && gap < HerdState.Twins && gap > -HerdState.Twins)
            .OrderBy(other => other.Fact.N ?? 0).ThenBy(other => other.At).ThenBy(other => other.Id.Number).ToList();
        int? twin = litter.Count > 1 || birth.Fact.N is not null ? litter.IndexOf(birth) + 1 : null;
        return new Animal(birth.Newborn!, new BabyName(dam?.Name ?? "?", twin).ToString(), HerdRole.Newborn, dam?.Species ?? Species.Llama)
        {
            Sex = birth.Fact.Sex,
            Dam = birth.Animal,
            Born = birth.At,
            Twin = twin,
        };
    }
}

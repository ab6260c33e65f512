using HerdBot.Core.Facts;

namespace HerdBot.Core.Herd;

/// <summary>The herd's list.</summary>
public static class Roster
{
    /// <summary>An animal that was only named so far. Its id follows from its name, so that adding it twice adds one.</summary>
    /// <param name="name">Not empty.</param>
    /// <param name="role">What it is.</param>
    /// <param name="species">What it is.</param>
    public static Animal NewAnimal(string name, HerdRole role, Species species)
    {
        ArgumentNullException.ThrowIfNull(name);
        return new Animal(new AnimalId(name.Trim().ToLowerInvariant()), name.Trim(), role, species);
    }

    /// <summary>Alive and in the herd.</summary>
    public static bool IsHere(this Animal animal)
    {
        ArgumentNullException.ThrowIfNull(animal);
        return animal.State is not (HerdEntryState.Sold or HerdEntryState.Dead);
    }

    /// <summary>The animal that a roster fact adds. Where one that has left bore the name, the id tells the two apart.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="fact">Adds a named animal.</param>
    /// <param name="usual">The species where none was told.</param>
    public static Animal Newcomer(HerdState state, Fact fact, Species usual)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(fact);
        var traits = fact.Traits ?? new AnimalTraits();
        var dam = state.Named(traits.Dam);
        var animal = NewAnimal(fact.Name!, traits.Role ?? (fact.Sex switch { Sex.Female => HerdRole.Dam, Sex.Male => HerdRole.Sire, _ => HerdRole.Young }), traits.Species ?? dam?.Species ?? usual);
        var known = state.Added.Count(one => one.Animal.Id == animal.Id || one.Animal.Id.Value.StartsWith(animal.Id.Value + "#", StringComparison.Ordinal));
        return animal with
        {
            Id = known == 0 ? animal.Id : new AnimalId($"{animal.Id.Value}#{known + 1}"),
            Sex = fact.Sex ?? SexOf(animal.Role),
            Colour = traits.Colour,
            Tag = traits.Tag,
            Dam = dam?.Id,
        };
    }

    private static Sex? SexOf(HerdRole role) => role switch { HerdRole.Dam => Sex.Female, HerdRole.Sire => Sex.Male, _ => null };
}

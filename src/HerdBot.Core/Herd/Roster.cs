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
}

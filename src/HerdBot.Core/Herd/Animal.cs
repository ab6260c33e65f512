using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Herd;

/// <summary>What an animal is in the herd.</summary>
public enum HerdRole
{
    /// <summary>A grown female.</summary>
    Dam,
    /// <summary>A grown male.</summary>
    Sire,
    /// <summary>Born this season, named.</summary>
    Young,
    /// <summary>Born this season, without a name yet.</summary>
    Newborn,
}

/// <summary>Species that people write about; care is planned for llamas and alpacas alone.</summary>
public enum Species
{
    /// <summary>Llama.</summary>
    Llama,
    /// <summary>Alpaca.</summary>
    Alpaca,
    /// <summary>Sheep: recorded, no care planned.</summary>
    Sheep,
    /// <summary>Goat: recorded, no care planned.</summary>
    Goat,
}

/// <summary>Where an animal stands.</summary>
public enum HerdEntryState
{
    /// <summary>Pregnant and awaited.</summary>
    Due,
    /// <summary>Giving birth.</summary>
    InLabour,
    /// <summary>Not pregnant.</summary>
    Open,
    /// <summary>No longer here.</summary>
    Sold,
    /// <summary>Dead.</summary>
    Dead,
}

/// <summary>Names an animal for good; its spoken name may change.</summary>
/// <param name="Value">Not empty; shown to nobody.</param>
public sealed record AnimalId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

/// <summary>An animal of the herd.</summary>
public sealed record Animal(AnimalId Id, string Name, HerdRole Role, Species Species)
{
    /// <summary>Sex; null where not known.</summary>
    public Sex? Sex { get; init; }
    /// <summary>Its dam.</summary>
    public AnimalId? Dam { get; init; }
    /// <summary>When it was born, for a newborn of this season.</summary>
    public Instant? Born { get; init; }
    /// <summary>Number among twins; null for a single.</summary>
    public int? Twin { get; init; }
    /// <summary>Where it stands.</summary>
    public HerdEntryState? State { get; init; }
    /// <summary>Ear tag or collar number.</summary>
    public string? Tag { get; init; }
    /// <summary>Colour, as the farm says it.</summary>
    public string? Colour { get; init; }
    /// <summary>A name beside the name, as a list of the herd gives it.</summary>
    public string? Nickname { get; init; }
}

/// <summary>What is told of an animal beside its name. What is absent was not said.</summary>
/// <param name="Role">What it is in the herd.</param>
/// <param name="Species">Its species.</param>
/// <param name="Colour">Its colour, as the farm says it.</param>
/// <param name="Tag">Its ear tag or collar number.</param>
/// <param name="Dam">Its dam's name.</param>
public sealed record AnimalTraits(HerdRole? Role = null, Species? Species = null, string? Colour = null, string? Tag = null, string? Dam = null);

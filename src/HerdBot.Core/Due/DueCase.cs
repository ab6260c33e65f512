using System.Collections.Immutable;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Due;

/// <summary>A mating on a day, or a time in the pen with a male.</summary>
/// <param name="From">The day, or the first day.</param>
/// <param name="To">The last day, not before the first; the same day for a mating that was seen.</param>
public readonly record struct Mating(LocalDate From, LocalDate To)
{
    /// <summary>A mating seen on a day.</summary>
    public static Mating On(LocalDate day) => new(day, day);

    /// <summary>A time in the pen: nobody knows the day.</summary>
    public bool IsPen => To > From;
}

/// <summary>What a look at a dam after a mating says.</summary>
public enum CheckResult
{
    /// <summary>A scan or blood test says she is pregnant.</summary>
    Pregnant,
    /// <summary>A scan or blood test says she carries nothing.</summary>
    Open,
    /// <summary>She rejected the male.</summary>
    SpitOff,
    /// <summary>She would have taken the male.</summary>
    Receptive,
}

/// <summary>A look at a dam after a mating.</summary>
/// <param name="On">The day.</param>
/// <param name="Result">What it says.</param>
public readonly record struct PregnancyCheck(LocalDate On, CheckResult Result)
{
    /// <summary>The birth that a vet expects by it; null where none was named.</summary>
    public LocalDate? Expected { get; init; }
}

/// <summary>All that bears on when a dam is due.</summary>
/// <param name="Species">Llama or alpaca.</param>
/// <param name="Matings">At least one.</param>
/// <param name="Today">The farm's day; nothing after it counts.</param>
public sealed record DueCase(Species Species, ImmutableArray<Mating> Matings, LocalDate Today)
{
    /// <summary>Scans, tests, rejections.</summary>
    public ImmutableArray<PregnancyCheck> Checks { get; init; } = [];
    /// <summary>The dam's earlier lengths.</summary>
    public ImmutableArray<Length> Past { get; init; } = [];
    /// <summary>Other dams' earlier lengths, a list each.</summary>
    public ImmutableArray<ImmutableArray<Length>> HerdPast { get; init; } = [];
    /// <summary>No mating is on record: the day is reckoned back from the vet's due date.</summary>
    public bool FromVetsDate { get; init; }
    /// <summary>Null where it is not known: then the season is left in the spread.</summary>
    public Hemisphere? Hemisphere { get; init; }
}

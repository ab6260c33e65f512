using System.Collections.Immutable;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;

namespace HerdBot.Core.Due;

/// <summary>What the words of a mating are about, where the herd's pregnancies listen to it: the fact's <see cref="Fact.Field"/>.</summary>
public static class MatingTopics
{
    /// <summary>In the pen with a male: until the day that is named, or until further notice.</summary>
    public const string Pen = "pen";
    /// <summary>A question: if she is mated on a day.</summary>
    public const string If = "if";
    /// <summary>A question: the mating days for births in some months.</summary>
    public const string Months = "months";
    /// <summary>A question: the season's calendar.</summary>
    public const string Calendar = "calendar";
}

/// <summary>A dam between two births: her matings, what looks at her said, her earlier lengths.</summary>
/// <param name="Dam">The dam.</param>
/// <param name="Matings">Her matings since the last birth, with their records, in the order of time.</param>
/// <param name="Checks">What looks at her said since, in the order of time.</param>
/// <param name="Past">Her earlier lengths, as far as they are beyond doubt.</param>
public sealed record Pregnancy(Animal Dam, ImmutableArray<(Mating Mating, HerdRecord Record)> Matings, ImmutableArray<PregnancyCheck> Checks, ImmutableArray<Length> Past)
{
    /// <summary>The last look at her; null where nobody looked.</summary>
    public PregnancyCheck? LastCheck => Checks.IsEmpty ? null : Checks[^1];

    /// <summary>The male of a mating; null where none was named.</summary>
    public string? SireOf(Mating mating) => Matings.LastOrDefault(one => one.Mating == mating).Record?.Fact.Sire;
}

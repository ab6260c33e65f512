using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Herd;

/// <summary>A recorded fact as it stands now, after all that mended it.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Fact">What it says.</param>
/// <param name="Animal">About whom; null where nobody.</param>
/// <param name="At">When it happened.</param>
/// <param name="SaidAt">When it was said first.</param>
/// <param name="By">Who said it.</param>
public sealed record HerdRecord(FactId Id, Fact Fact, AnimalId? Animal, Instant At, Instant SaidAt, string By)
{
    /// <summary>The message it came in; null for a button.</summary>
    public string? Message { get; init; }
    /// <summary>For a birth: the newborn.</summary>
    public AnimalId? Newborn { get; init; }
    /// <summary>The task it answers or claims.</summary>
    public TaskKey? Task { get; init; }
    /// <summary>Taken back: counts no more.</summary>
    public bool Withdrawn { get; init; }

    /// <summary>It says that the thing has happened, without a hedge.</summary>
    public bool Certain => !Withdrawn && !Fact.Neg && !Fact.Unsure;
}

using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Facts;

/// <summary>Sex of a newborn or grown animal.</summary>
public enum Sex
{
    /// <summary>Female.</summary>
    Female,
    /// <summary>Male.</summary>
    Male,
}

/// <summary>How milk went in.</summary>
public enum FeedRoute
{
    /// <summary>By bottle.</summary>
    Bottle,
    /// <summary>By stomach tube.</summary>
    Tube,
    /// <summary>By syringe or dropper.</summary>
    Syringe,
}

/// <summary>Units as people say them; the value of a fact is kept in the unit said or inferred.</summary>
public enum FactUnit
{
    /// <summary>Degrees Fahrenheit.</summary>
    F,
    /// <summary>Degrees Celsius.</summary>
    C,
    /// <summary>Pounds, with ounces folded into decimals.</summary>
    Lb,
    /// <summary>Kilograms.</summary>
    Kg,
    /// <summary>Grams.</summary>
    G,
    /// <summary>Ounces: of weight on a scale, US fluid ounces in a bottle.</summary>
    Oz,
    /// <summary>Millilitres.</summary>
    Ml,
    /// <summary>Cubic centimetres, as people write for millilitres.</summary>
    Cc,
    /// <summary>Milligrams in a decilitre.</summary>
    MgPerDl,
    /// <summary>Percent.</summary>
    Percent,
    /// <summary>A score, on a scale that has to be asked for.</summary>
    Score,
}

/// <summary>The one thing that has to be asked back before anything is recorded.</summary>
public enum Ask
{
    /// <summary>Which animal?</summary>
    Animal,
    /// <summary>What figure?</summary>
    Value,
    /// <summary>Which unit?</summary>
    Unit,
    /// <summary>When?</summary>
    Time,
    /// <summary>Is it so? (a death or another grave thing)</summary>
    Sure,
}

/// <summary>A farm-local time as somebody gave it: a day, or a day and a minute.</summary>
/// <param name="Date">The farm's day.</param>
/// <param name="Time">The minute; null where only the day was given.</param>
public readonly record struct FactTime(LocalDate Date, LocalTime? Time)
{
    /// <summary>A day and a minute.</summary>
    public static FactTime Of(LocalDateTime at) => new(at.Date, at.TimeOfDay);
}

/// <summary>One thing that a message says, in the words and units it was said in.</summary>
/// <remarks>
/// What is absent was not said. An <see cref="Animal"/> of "?" waits for an answer. Times are the farm's;
/// an absent <see cref="At"/> means "now".
/// </remarks>
public sealed record Fact(FactKind Kind)
{
    /// <summary>The animal by the herd's name for it; "?" where it must be asked; null where none.</summary>
    public string? Animal { get; init; }
    /// <summary>The figure, in <see cref="Unit"/>.</summary>
    public decimal? Value { get; init; }
    /// <summary>The unit said or inferred.</summary>
    public FactUnit? Unit { get; init; }
    /// <summary>When, if the message says so.</summary>
    public FactTime? At { get; init; }
    /// <summary>It has not happened.</summary>
    public bool Neg { get; init; }
    /// <summary>Hedged or second-hand: recorded as such, closes nothing.</summary>
    public bool Unsure { get; init; }
    /// <summary>Sex of the newborn, or the mended one.</summary>
    public Sex? Sex { get; init; }
    /// <summary>Number among twins, in the order of birth, from 1.</summary>
    public int? N { get; init; }
    /// <summary>The male of a mating.</summary>
    public string? Sire { get; init; }
    /// <summary>How milk went in.</summary>
    public FeedRoute? Route { get; init; }
    /// <summary>For claims, answers and questions: which task, in its own word (see CareTaskWords).</summary>
    public string? Task { get; init; }
    /// <summary>For corrections and undo: what is mended (a kind's word, or animal, time, unit, sex, sire); for roster: one of <see cref="RosterWords"/>.</summary>
    public string? Field { get; init; }
    /// <summary>For corrections: what stood there; for a new name: the old one.</summary>
    public string? Was { get; init; }
    /// <summary>For roster: the new name or nickname.</summary>
    public string? Name { get; init; }
    /// <summary>For roster: what is told of the animal beside its name; null where nothing is.</summary>
    public AnimalTraits? Traits { get; init; }
    /// <summary>What it says, in a few words.</summary>
    public string? Text { get; init; }
    /// <summary>The last day of a time in the pen, or of the days that a question asks about. Not part of the written form, but kept.</summary>
    public LocalDate? Until { get; init; }
    /// <summary>The birth that a vet expects, said with a pregnancy check. Not part of the written form, but kept.</summary>
    public LocalDate? Expected { get; init; }
    /// <summary>For corrections and undo: the record meant, where the reader found it. Not part of the written form.</summary>
    public FactId? Target { get; init; }
    /// <summary>The animal of a fact that must be asked for.</summary>
    public const string AskAnimal = "?";
}

/// <summary>Names one record within a group: the position of its event in the group's history.</summary>
/// <param name="Number">Counts up from 1 in the order of recording.</param>
public readonly record struct FactId(int Number);

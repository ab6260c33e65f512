using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Scanning;
using HerdBot.Core.Reading.Times;
using NodaTime;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>A fact in the making.</summary>
internal sealed class Draft(FactKind kind, Clause clause, int position)
{
    public FactKind Kind { get; set; } = kind;

    public Clause Clause { get; } = clause;

    /// <summary>The token at which it is said.</summary>
    public int Position { get; set; } = position;

    public Mention? Mention { get; set; }

    /// <summary>The animal, where it is settled already.</summary>
    public string? Animal { get; set; }

    public bool Settled { get; set; }

    public decimal? Value { get; set; }

    public FactUnit? Unit { get; set; }

    public When? When { get; set; }

    public bool Neg { get; set; }

    public bool Unsure { get; set; }

    public Sex? Sex { get; set; }

    public int? N { get; set; }

    public string? Sire { get; set; }

    public FeedRoute? Route { get; set; }

    public string? Task { get; set; }

    public string? Name { get; set; }

    /// <summary>For roster: what is told of the animal beside its name.</summary>
    public AnimalTraits? Traits { get; set; }

    public string? Text { get; set; }

    /// <summary>What it is about, where the words alone do not say it; for roster: what it does to the herd's list.</summary>
    public string? Field { get; set; }

    /// <summary>The birth that a vet expects.</summary>
    public LocalDate? Expected { get; set; }

    /// <summary>What has to be asked about it.</summary>
    public Ask? Ask { get; set; }

    /// <summary>The item it hangs on.</summary>
    public Item? Anchor { get; set; }
}

using HerdBot.Core.Facts;
using HerdBot.Core.Herd;

namespace HerdBot.Core.Reading.Animals;

/// <summary>How an animal was named.</summary>
internal enum MentionKind : byte
{
    /// <summary>By a name or tag of the herd.</summary>
    Named,
    /// <summary>As somebody's baby: "Sage's baby", "la cría de Luna", "Hazel's".</summary>
    BabyOf,
    /// <summary>She, him, it, they.</summary>
    Pronoun,
    /// <summary>The baby, the boy, the little brown one.</summary>
    SomeBaby,
    /// <summary>The tan girl, the ewes: grown ones by their looks.</summary>
    SomeDam,
    /// <summary>The ram, the male.</summary>
    SomeMale,
    /// <summary>A name that the herd does not know.</summary>
    Unknown,
}

/// <summary>An animal as the message names it, before it is known which one that is.</summary>
internal sealed class Mention(MentionKind kind)
{
    public MentionKind Kind { get; set; } = kind;

    /// <summary>Entries of the herd: the named ones, or the dams of a BabyOf.</summary>
    public List<int> Entries { get; } = [];

    public Sex? Sex { get; set; }

    public int Colour { get; set; }

    /// <summary>An ewe is a sheep, a doe a goat.</summary>
    public Species? Species { get; set; }

    /// <summary>First or second of twins.</summary>
    public int? Ordinal { get; set; }

    /// <summary>"The other": the one that has not been named.</summary>
    public bool Other { get; set; }

    /// <summary>"One of them": not known which.</summary>
    public bool OneOf { get; set; }

    /// <summary>The smaller (-1) or the bigger (1) of them.</summary>
    public int Size { get; set; }

    /// <summary>Both, all, the three.</summary>
    public bool Plural { get; set; }

    public int? Count { get; set; }

    /// <summary>The unknown name as typed.</summary>
    public string? Name { get; set; }

    /// <summary>"Hazel's" with nothing after it: the baby, or "is".</summary>
    public bool BareGenitive { get; set; }

    /// <summary>Stands after on, for, to, with, by.</summary>
    public bool AfterPreposition { get; set; }

    /// <summary>"Kestrel herself": no other is meant.</summary>
    public bool Self { get; set; }

    /// <summary>A bare "it".</summary>
    public bool Vague { get; set; }
}

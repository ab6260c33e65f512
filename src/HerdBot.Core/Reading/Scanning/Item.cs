using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Times;

namespace HerdBot.Core.Reading.Scanning;

/// <summary>What a stretch of the message is.</summary>
internal enum ItemKind : byte
{
    /// <summary>A word or phrase of the lexicon.</summary>
    Sense,
    /// <summary>A figure without a unit.</summary>
    Number,
    /// <summary>A figure with its unit.</summary>
    Quantity,
    /// <summary>A time, a day, a length of time.</summary>
    Time,
    /// <summary>One or more animals.</summary>
    Animal,
    /// <summary>A person of the group.</summary>
    Person,
    /// <summary>A punctuation mark.</summary>
    Mark,
    /// <summary>A word nobody knows.</summary>
    Unknown,
}

/// <summary>A stretch of the message that means one thing.</summary>
internal sealed class Item(ItemKind kind, int first, int end)
{
    public ItemKind Kind { get; set; } = kind;

    /// <summary>Its first token.</summary>
    public int First { get; set; } = first;

    /// <summary>One past its last token.</summary>
    public int End { get; set; } = end;

    public TagSet Tags { get; set; }

    public int Argument { get; set; }

    public decimal Value { get; set; }

    public FactUnit? Unit { get; set; }

    public Mention? Mention { get; set; }

    public When? When { get; set; }

    /// <summary>The mark, or the unknown word as typed.</summary>
    public string Text { get; set; } = "";

    /// <summary>It has been used for a fact.</summary>
    public bool Used { get; set; }

    public bool Is(Tag tag) => Tags.Has(tag);

    public bool IsMark(char mark) => Kind == ItemKind.Mark && Text.Length == 1 && Text[0] == mark;
}

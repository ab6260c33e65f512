namespace HerdBot.Core.Reading.Lexicon;

/// <summary>A set of tags, as bits.</summary>
internal readonly record struct TagSet(ulong A, ulong B, ulong C, ulong D)
{
    public bool IsEmpty => (A | B | C | D) == 0;

    public static TagSet Of(Tag tag)
    {
        var bit = 1UL << ((int)tag & 63);
        return ((int)tag >> 6) switch
        {
            0 => new(bit, 0, 0, 0),
            1 => new(0, bit, 0, 0),
            2 => new(0, 0, bit, 0),
            _ => new(0, 0, 0, bit),
        };
    }

    public static TagSet Of(params ReadOnlySpan<Tag> tags)
    {
        var set = default(TagSet);
        foreach (var tag in tags)
        {
            set |= Of(tag);
        }

        return set;
    }

    public static TagSet operator |(TagSet left, TagSet right) =>
        new(left.A | right.A, left.B | right.B, left.C | right.C, left.D | right.D);

    public static TagSet operator &(TagSet left, TagSet right) =>
        new(left.A & right.A, left.B & right.B, left.C & right.C, left.D & right.D);

    public bool Has(Tag tag) => ((((int)tag >> 6) switch { 0 => A, 1 => B, 2 => C, _ => D }) & (1UL << ((int)tag & 63))) != 0;

    public bool HasAny(TagSet other) => !(this & other).IsEmpty;

    public bool HasAll(TagSet other) => (this & other) == other;
}

using System.Runtime.Intrinsics;

namespace HerdBot.Core.Reading.Lexicon;

/// <summary>A set of tags: one bit each, all of them looked at in one step.</summary>
internal readonly record struct TagSet(Vector256<ulong> Bits)
{
    private static readonly TagSet[] Singles = [.. Enumerable.Range(0, 256).Select(tag => new TagSet(Vector256<ulong>.Zero.WithElement(tag >> 6, 1UL << (tag & 63))))];

    public bool IsEmpty => Bits == Vector256<ulong>.Zero;

    public static TagSet Of(Tag tag) => Singles[(int)tag];

    public static TagSet Of(params ReadOnlySpan<Tag> tags)
    {
        var set = default(TagSet);
        foreach (var tag in tags)
        {
            set |= Of(tag);
        }

        return set;
    }

    public static TagSet operator |(TagSet left, TagSet right) => new(left.Bits | right.Bits);

    public static TagSet operator &(TagSet left, TagSet right) => new(left.Bits & right.Bits);

    public bool Has(Tag tag) => HasAny(Of(tag));

    public bool HasAny(TagSet other) => (Bits & other.Bits) != Vector256<ulong>.Zero;

    public bool HasAny(params ReadOnlySpan<Tag> tags)
    {
        foreach (var tag in tags)
        {
            if (Has(tag))
            {
                return true;
            }
        }

        return false;
    }

    public bool HasAll(TagSet other) => (Bits & other.Bits) == other.Bits;

    public bool Equals(TagSet other) => Bits == other.Bits;

    public override int GetHashCode() => Bits.GetHashCode();
}

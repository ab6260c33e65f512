using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>A stretch of the message that says one thing, or a few about one animal.</summary>
internal sealed class Clause(List<Item> items, int sentence)
{
    public List<Item> Items { get; } = items;

    public int Sentence { get; } = sentence;

    public TagSet Tags { get; set; }

    /// <summary>The sentence ends in a question mark.</summary>
    public bool Asked { get; set; }

    /// <summary>A comma or full stop ends it, not an "and".</summary>
    public string EndMark { get; set; } = "";

    /// <summary>All of it is told already: who joined the herd or goes by which name.</summary>
    public bool Told { get; set; }

    /// <summary>How it is meant.</summary>
    public Mood Mood { get; set; }

    public bool Has(Tag tag) => Tags.Has(tag);

    public bool HasAny(params ReadOnlySpan<Tag> tags) => Tags.HasAny(tags);

    public Item? First(Tag tag)
    {
        if (!Tags.Has(tag))
        {
            return null;
        }

        foreach (var item in Items)
        {
            if (item.Is(tag))
            {
                return item;
            }
        }

        return null;
    }

    public Item? Unused(Tag tag)
    {
        if (!Tags.Has(tag))
        {
            return null;
        }

        foreach (var item in Items)
        {
            if (!item.Used && item.Is(tag))
            {
                return item;
            }
        }

        return null;
    }

    public IEnumerable<Mention> Mentions => Items.Where(item => item.Mention is not null).Select(item => item.Mention!);
}

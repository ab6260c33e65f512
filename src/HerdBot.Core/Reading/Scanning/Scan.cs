using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Tokens;

namespace HerdBot.Core.Reading.Scanning;

/// <summary>A message taken apart: its tokens, and the items they make.</summary>
internal sealed class Scan(string text, ReadingContext context, HerdIndex herd, Token[] tokens)
{
    public string Text { get; } = text;

    public ReadingContext Context { get; } = context;

    public HerdIndex Herd { get; } = herd;

    public Token[] Tokens { get; } = tokens;

    /// <summary>The language most of the message is in.</summary>
    public Vocabulary Words { get; set; } = Vocabulary.English;

    public List<Item> Items { get; set; } = [];

    /// <summary>All that the message's words mean, wherever they stand.</summary>
    public TagSet Tags { get; set; }

    /// <summary>The whole message has this tag somewhere.</summary>
    public bool Has(Tag tag) => Tags.Has(tag);

    public Token TokenOf(Item item) => Tokens[item.First];

    public string Slice(Item from, Item to) => Text[Tokens[from.First].Start..Tokens[to.End - 1].End];

    public Item? At(int index) => index >= 0 && index < Items.Count ? Items[index] : null;
}

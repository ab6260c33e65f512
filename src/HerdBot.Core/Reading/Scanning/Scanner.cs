using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Times;
using HerdBot.Core.Reading.Tokens;

namespace HerdBot.Core.Reading.Scanning;

/// <summary>Takes a message apart into names, phrases, figures and marks, and joins those that belong together.</summary>
internal static class Scanner
{
    private static readonly TagSet Weak = TagSet.Of(Tag.Known, Tag.Article, Tag.Prep);

    public static Scan Read(string text, ReadingContext context)
    {
        var tokens = Tokenizer.Tokenize(text);
        var scan = new Scan(text, context, HerdIndex.Of(context.Herd), tokens);
        var lookup = new WordLookup(tokens, context.Language, context.Words);
        scan.Words = lookup.Primary;
        var names = new NameFinder(scan, lookup);
        names.MendWords();
        for (var i = 0; i < tokens.Length;)
        {
            var item = Next(scan, lookup, names, i);
            scan.Items.Add(item);
            scan.Tags |= item.Tags;
            i = item.End;
        }

        NumberJoiner.Join(scan);
        TimeReader.Read(scan);
        QuantityReader.Read(scan);
        MentionReader.Read(scan);
        return scan;
    }

    private static Item Next(Scan scan, WordLookup lookup, NameFinder names, int i)
    {
        var length = lookup.Match(i, out var sense);
        if (length < 2 || sense.Tags.HasAny(Weak))
        {
            if (names.Match(i, length) is { } name)
            {
                return name;
            }
        }

        if (length < 2 && NumberWords.Match(scan, lookup, i) is { } number)
        {
            return number;
        }

        var token = scan.Tokens[i];
        return length > 0 ? new Item(ItemKind.Sense, i, i + length) { Tags = sense.Tags, Argument = sense.Argument }
            : new Item(token.Kind == TokenKind.Mark ? ItemKind.Mark : ItemKind.Unknown, i, i + 1)
            {
                Text = token.Kind == TokenKind.Mark ? token.Text : scan.Text[token.Start..token.End],
            };
    }
}

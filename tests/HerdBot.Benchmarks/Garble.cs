using HerdBot.App.Records;

namespace HerdBot.Benchmarks;

/// <summary>Messages that nobody labelled: those of the corpora as thumbs, dictation and chance would change them. The same seed gives the same ones.</summary>
internal sealed class Garble(IReadOnlyList<CorpusLine> lines, int seed)
{
    private static readonly string[] Joints = [", ", ". ", " and ", "\n", " ", "; ", " y ", "... "];

    private static readonly string[] Scraps = ["💩", "👍🏽", "½", "\uD83D", "\uDE00", "\0", "\u200D", "\u202E", "'s", "#14", "24-6", "99.", ".4", "0/0/0", "12:99", "999999999999999999", "¿", "%", "\t", "Ⅷ", "ﬁ", "é́́́"];

    private readonly Random chance = new(seed);
    private readonly string[] words = [.. lines.SelectMany(line => line.Text.Split(' ')).Distinct()];

    /// <summary>The next message, and whose circumstances it is read in.</summary>
    public (string Text, CorpusLine Around) Next()
    {
        var text = chance.Next(40) switch
        {
            0 => Noise(chance.Next(300)),
            1 => Long(),
            < 6 => string.Join(' ', Enumerable.Range(0, chance.Next(1, 25)).Select(_ => Any(words))),
            < 16 => Line().Text + Any(Joints) + Line().Text,
            _ => Line().Text,
        };
        for (var edits = chance.Next(4); edits > 0; edits--)
        {
            text = Edit(text);
        }
        return (text, Line());
    }

    private CorpusLine Line() => lines[chance.Next(lines.Count)];

    private string Any(string[] of) => of[chance.Next(of.Length)];

    private string Noise(int length) => string.Create(length, chance, static (text, chance) =>
    {
        foreach (ref var letter in text)
        {
            letter = (char)(chance.Next(4) == 0 ? chance.Next(0x10000) : chance.Next(0x20, 0x7F));
        }
    });

    private string Long() => string.Concat(Enumerable.Repeat(chance.Next(2) == 0 ? Line().Text + Any(Joints) : Any(words) + " ", chance.Next(20, 400)));

    private string Edit(string text)
    {
        var at = chance.Next(text.Length + 1);
        return chance.Next(7) switch
        {
            0 => text.Insert(at, Any(Scraps)),
            1 when at < text.Length => text.Remove(at, 1),
            2 when at < text.Length => text.Insert(at, text[at..(at + 1)]),
            3 when at + 1 < text.Length => string.Concat(text.AsSpan(0, at), text.AsSpan(at + 1, 1), text.AsSpan(at, 1), text.AsSpan(at + 2)),
            4 => string.Create(text.Length, (text, chance), static (to, from) =>
            {
                for (var i = 0; i < to.Length; i++)
                {
                    to[i] = char.IsAsciiDigit(from.text[i]) ? (char)('0' + from.chance.Next(10)) : from.text[i];
                }
            }),
            5 => text.ToUpperInvariant(),
            _ => text[..at] + ' ' + Any(words) + ' ' + text[at..],
        };
    }
}

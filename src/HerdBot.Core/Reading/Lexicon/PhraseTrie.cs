namespace HerdBot.Core.Reading.Lexicon;

/// <summary>What a phrase means: its tags, and a number for months, weekdays, sexes and colours.</summary>
internal readonly record struct Sense(TagSet Tags, int Argument);

/// <summary>Phrases by their words, for longest matches. Filled once, then only read; safe to share.</summary>
internal sealed class PhraseTrie
{
    private readonly Dictionary<long, int> edges = [];
    private readonly List<Sense> senses = [default];

    public void Add(ReadOnlySpan<int> words, Tag tag, int argument)
    {
        var node = 0;
        foreach (var word in words)
        {
            var key = Key(node, word);
            if (!edges.TryGetValue(key, out var next))
            {
                next = senses.Count;
                senses.Add(default);
                edges.Add(key, next);
            }

            node = next;
        }

        var known = senses[node];
        senses[node] = new Sense(known.Tags | TagSet.Of(tag), argument == 0 ? known.Argument : argument);
    }

    /// <summary>The longest phrase from <paramref name="start"/> on; its length in words is 0 where there is none.</summary>
    public int Match(ReadOnlySpan<int> words, int start, out Sense sense)
    {
        sense = default;
        var (node, best) = (0, 0);
        for (var i = start; i < words.Length && words[i] >= 0 && edges.TryGetValue(Key(node, words[i]), out node); i++)
        {
            if (!senses[node].Tags.IsEmpty)
            {
                (sense, best) = (senses[node], i - start + 1);
            }
        }

        return best;
    }

    /// <summary>What the word means on its own.</summary>
    public Sense Alone(int word) => word >= 0 && edges.TryGetValue(Key(0, word), out var node) ? senses[node] : default;

    private static long Key(int node, int word) => ((long)node << 32) | (uint)word;
}

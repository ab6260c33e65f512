namespace HerdBot.Core.Reading.Lexicon;

/// <summary>The words of one language, each with a number, found also with one slip of the thumb.</summary>
internal sealed class WordList
{
    private const int ShortestMended = 5;
    private const int LongestMended = 20;
    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);
    private readonly List<string> words = [];
    private readonly Dictionary<string, int> shortened = new(StringComparer.Ordinal);

    /// <summary>A word whose accent sets it apart from another word: mamá and mama.</summary>
    public void AddDistinct(string word) => numbers.TryAdd(word, Append(Letters.Fold(word)));

    public int Add(string word)
    {
        if (!numbers.TryGetValue(word, out var number))
        {
            var folded = Letters.Fold(word);
            if (!numbers.TryGetValue(folded, out number))
            {
                number = Append(folded);
                numbers.Add(folded, number);
            }
        }

        return number;
    }

    private int Append(string folded)
    {
        words.Add(folded);
        return words.Count - 1;
    }

    /// <summary>Makes words findable with a slip; called once all are in.</summary>
    public void IndexSlips()
    {
        for (var i = 0; i < words.Count; i++)
        {
            if (words[i].Length >= ShortestMended && words[i].All(char.IsLetter))
            {
                foreach (var variant in Slips.Deletes(words[i]))
                {
                    shortened.TryAdd(variant, i);
                }
            }
        }
    }

    public int Find(string exact, string folded) =>
        numbers.TryGetValue(exact, out var number) || (!ReferenceEquals(exact, folded) && numbers.TryGetValue(folded, out number)) ? number : -1;

    /// <summary>The word that this one was meant to be, by one letter left out, added, changed or swapped; -1 where none.</summary>
    public int Mend(string folded)
    {
        if (folded.Length < ShortestMended - 1 || folded.Length > LongestMended)
        {
            return -1;
        }

        if (shortened.TryGetValue(folded, out var found))
        {
            return found;
        }

        var (shorter, plain) = (shortened.GetAlternateLookup<ReadOnlySpan<char>>(), numbers.GetAlternateLookup<ReadOnlySpan<char>>());
        Span<char> letters = stackalloc char[LongestMended];
        for (var left = 0; left < folded.Length; left++)
        {
            var variant = Slips.Without(folded, left, letters);
            if ((shorter.TryGetValue(variant, out found) || plain.TryGetValue(variant, out found))
                && words[found].Length >= ShortestMended && Slips.IsOne(folded, words[found]))
            {
                return found;
            }
        }

        return -1;
    }
}

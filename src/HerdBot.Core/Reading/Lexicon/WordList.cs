namespace HerdBot.Core.Reading.Lexicon;

/// <summary>The words of one language, each with a number, found also with one slip of the thumb.</summary>
internal sealed class WordList
{
    private const int ShortestMended = 5;
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

    public int Find(ReadOnlySpan<char> exact, ReadOnlySpan<char> folded)
    {
        var lookup = numbers.GetAlternateLookup<ReadOnlySpan<char>>();
        return lookup.TryGetValue(exact, out var number) || lookup.TryGetValue(folded, out number) ? number : -1;
    }

    /// <summary>The word that this one was meant to be, by one letter left out, added, changed or swapped; -1 where none.</summary>
    public int Mend(string folded)
    {
        if (folded.Length < ShortestMended - 1 || folded.Length > 20)
        {
            return -1;
        }

        if (shortened.TryGetValue(folded, out var found))
        {
            return found;
        }

        foreach (var variant in Slips.Deletes(folded))
        {
            if ((shortened.TryGetValue(variant, out found) || numbers.TryGetValue(variant, out found))
                && words[found].Length >= ShortestMended && Slips.IsOne(folded, words[found]))
            {
                return found;
            }
        }

        return -1;
    }
}

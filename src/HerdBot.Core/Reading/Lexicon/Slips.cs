namespace HerdBot.Core.Reading.Lexicon;

/// <summary>Slips of the thumb: one letter left out, added, changed, or two swapped.</summary>
internal static class Slips
{
    /// <summary>The word with each letter left out in turn.</summary>
    public static IEnumerable<string> Deletes(string word)
    {
        for (var i = 0; i < word.Length; i++)
        {
            if (i == 0 || word[i] != word[i - 1])
            {
                yield return word.Remove(i, 1);
            }
        }
    }

    /// <summary>The word without one letter, written into <paramref name="letters"/>.</summary>
    public static ReadOnlySpan<char> Without(string word, int letter, Span<char> letters)
    {
        word.AsSpan(0, letter).CopyTo(letters);
        word.AsSpan(letter + 1).CopyTo(letters[letter..]);
        return letters[..(word.Length - 1)];
    }

    /// <summary>True where at most one slip parts the two words, and they begin alike.</summary>
    public static bool IsOne(string a, string b)
    {
        if (Math.Abs(a.Length - b.Length) > 1 || a.Length == 0 || b.Length == 0 || a[0] != b[0])
        {
            return false;
        }

        var head = 0;
        while (head < a.Length && head < b.Length && a[head] == b[head])
        {
            head++;
        }

        var tail = 0;
        while (tail < a.Length - head && tail < b.Length - head && a[^(tail + 1)] == b[^(tail + 1)])
        {
            tail++;
        }

        var (left, right) = (a.Length - head - tail, b.Length - head - tail);
        return (left <= 1 && right <= 1)
            || (left == 2 && right == 2 && a[head] == b[head + 1] && a[head + 1] == b[head]);
    }
}

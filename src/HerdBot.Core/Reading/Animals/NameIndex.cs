using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Tokens;

namespace HerdBot.Core.Reading.Animals;

/// <summary>Names by their words, also with one slip of the thumb: no name is compared but those that a slip could have made.</summary>
internal sealed class NameIndex
{
    private const int ShortestMended = 4;
    private const int LongestMended = 20;
    private static readonly List<Named> NoName = [];
    private static readonly List<string> NoWord = [];
    private readonly Dictionary<string, List<Named>> names = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<string>> slips = new(StringComparer.Ordinal);

    /// <summary>The entry of a name that two bear.</summary>
    public const int Alike = -2;

    /// <summary>Adds an animal's name, whole and in its telling parts; called before any look-up, for those first who are here.</summary>
    public void Add(string name, int entry, bool here)
    {
        var words = Tokenizer.Tokenize(name).Select(token => token.Text).ToArray();
        Add(words, entry, here, false);
        for (var i = 0; i < words.Length && words.Length > 1; i++)
        {
            if (IsTelling(words[i], i == 0))
            {
                Add([words[i]], entry, here, true);
            }
        }
    }

    // "Luna" for Luna Grande, as long as no other is called so: a whole name goes before a part of one.
    private void Add(string[] words, int entry, bool here, bool part)
    {
        if (words.Length == 0)
        {
            return;
        }

        if (!names.TryGetValue(words[0], out var list))
        {
            names.Add(words[0], list = []);
            AddSlips(words[0]);
        }

        var known = list.FindIndex(name => name.Words.AsSpan().SequenceEqual(words));
        if (known < 0)
        {
            list.Add(new Named(words, entry, part));
        }
        else if (list[known].Part && !part)
        {
            list[known] = new Named(words, entry, part);
        }
        else if (here && list[known].Part == part && list[known].Entry != entry)
        {
            list[known] = new Named(words, Alike, part);
        }
    }

    // A part is telling where it is no word of the language; the first may be a plain one: moon, star.
    private static bool IsTelling(string word, bool first) =>
        word.Length > 2 && char.IsLetter(word[0]) && IsFree(Vocabulary.English, word, first) && IsFree(Vocabulary.Spanish, word, first);

    private static bool IsFree(Vocabulary words, string word, bool first) => words.Words.Find(word, word) is var number
        && (number < 0 || (first && words.Phrases.Alone(number).Tags == TagSet.Of(Tag.Known) && !words.Numbers.ContainsKey(number)));

    /// <summary>The longest name that begins at a token.</summary>
    /// <returns>The entry and the number of tokens; -1 where there is none, <see cref="Alike"/> where two bear it.</returns>
    public (int Entry, int Length) Match(ReadOnlySpan<Token> tokens, int start, string? mended = null)
    {
        var best = (Entry: -1, Length: 0);
        foreach (var name in names.GetValueOrDefault(mended ?? tokens[start].Text, NoName))
        {
            if (name.Words.Length > best.Length && Fits(tokens, start, name.Words))
            {
                best = (name.Entry, name.Words.Length);
            }
        }

        return best;
    }

    /// <summary>The name's first word that this one was meant to be, by one slip; null where none, or two.</summary>
    public string? Mend(string word)
    {
        if (word.Length is < ShortestMended or > LongestMended)
        {
            return null;
        }

        var lookup = slips.GetAlternateLookup<ReadOnlySpan<char>>();
        Span<char> letters = stackalloc char[LongestMended];
        string? found = null;
        for (var left = -1; left < word.Length; left++)
        {
            var variant = left < 0 ? word : Slips.Without(word, left, letters);
            foreach (var name in lookup.TryGetValue(variant, out var list) ? list : NoWord)
            {
                if (name != found && Slips.IsOne(word, name))
                {
                    if (found is not null)
                    {
                        return null;
                    }

                    found = name;
                }
            }
        }

        return found;
    }

    private static bool Fits(ReadOnlySpan<Token> tokens, int start, string[] words)
    {
        if (start + words.Length > tokens.Length)
        {
            return false;
        }

        for (var i = 1; i < words.Length; i++)
        {
            if (tokens[start + i].Text != words[i])
            {
                return false;
            }
        }

        return true;
    }

    private void AddSlips(string word)
    {
        if (word.Length < ShortestMended)
        {
            return;
        }

        foreach (var variant in Slips.Deletes(word).Append(word))
        {
            (slips.TryGetValue(variant, out var list) ? list : slips[variant] = []).Add(word);
        }
    }

    private sealed record Named(string[] Words, int Entry, bool Part);
}

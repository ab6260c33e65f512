using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Tokens;

namespace HerdBot.Core.Reading.Scanning;

/// <summary>The message's words in both languages: the one most of it is in first, the other to help out.</summary>
internal sealed class WordLookup
{
    private const int ShortestForeign = 3;
    private static readonly TagSet Nothing = TagSet.Of(Tag.Known);
    private readonly int[] first;
    private readonly int[] second;
    private readonly bool mixed;
    private readonly (int Length, Sense Sense)[] own;

    public WordLookup(Token[] tokens, Language farm, OwnWords words)
    {
        own = words.Any ? Own(tokens, words) : [];
        var english = Numbers(tokens, Vocabulary.English);
        var spanish = Numbers(tokens, Vocabulary.Spanish);
        var lead = spanish.Count(number => number >= 0) - english.Count(number => number >= 0);
        var isSpanish = lead > 0 || (lead == 0 && farm == Language.Spanish);
        (Primary, Secondary) = isSpanish ? (Vocabulary.Spanish, Vocabulary.English) : (Vocabulary.English, Vocabulary.Spanish);
        (first, second) = isSpanish ? (spanish, english) : (english, spanish);
        for (var i = 0; i < tokens.Length; i++)
        {
            if (tokens[i].Kind == TokenKind.Word && tokens[i].Text.Length < ShortestForeign)
            {
                second[i] = -1;
            }

            mixed |= first[i] < 0 && second[i] >= 0 && tokens[i].Kind == TokenKind.Word;
        }
    }

    public Vocabulary Primary { get; }

    public Vocabulary Secondary { get; }

    public bool Knows(int token) => first[token] >= 0 || second[token] >= 0 || IsOwn(token);

    /// <summary>Reads an unknown word as the known one it was meant to be.</summary>
    public void Mend(int token, string folded)
    {
        first[token] = Primary.Words.Mend(folded);
        if (first[token] < 0 && mixed)
        {
            second[token] = Secondary.Words.Mend(folded);
        }
    }

    /// <summary>Leaves a word unknown after all.</summary>
    public void Forget(int token) => (first[token], second[token]) = (-1, -1);

    public int? NumberOf(int token) =>
        first[token] >= 0 && Primary.Numbers.TryGetValue(first[token], out var value) ? value
        : first[token] < 0 && second[token] >= 0 && Secondary.Numbers.TryGetValue(second[token], out value) ? value
        : null;

    /// <summary>The figure that a word sounds like: "ate", "for".</summary>
    public int? SoundOf(int token) => first[token] >= 0 && Primary.Sounds.TryGetValue(first[token], out var value) ? value : null;

    /// <summary>The longest phrase that begins at a token, and its length in tokens; 0 where none.</summary>
    public int Match(int start, out Sense sense)
    {
        if (start < own.Length && own[start].Length > 0)
        {
            sense = own[start].Sense;
            return own[start].Length;
        }

        var length = start < first.Length ? Primary.Phrases.Match(first, start, out sense) : NoMatch(out sense);
        if (length == 0 || (length == 1 && sense.Tags == Nothing))
        {
            var foreign = start < second.Length ? Secondary.Phrases.Match(second, start, out var other) : NoMatch(out other);
            if (foreign > length || (foreign > 0 && length == 0))
            {
                sense = other;
                return foreign;
            }
        }

        return length;
    }

    /// <summary>The tags of the phrase that begins at a token; none past the end.</summary>
    public TagSet Tags(int start)
    {
        Match(start, out var sense);
        return sense.Tags;
    }

    /// <summary>The tags of the word itself, whatever phrase it begins.</summary>
    public TagSet WordTags(int token) =>
        token >= first.Length ? default : token < own.Length && own[token].Length == 1 ? own[token].Sense.Tags : first[token] >= 0 ? Primary.Phrases.Alone(first[token]).Tags : Secondary.Phrases.Alone(second[token]).Tags;

    // The farm's own words go before the lexicon's.
    private static (int Length, Sense Sense)[] Own(Token[] tokens, OwnWords words)
    {
        var own = new (int Length, Sense Sense)[tokens.Length];
        for (var i = 0; i < tokens.Length; i++)
        {
            own[i] = (words.Match(tokens, i, out var sense), sense);
        }

        return own;
    }

    private bool IsOwn(int token)
    {
        for (var start = Math.Max(0, token - OwnWords.MostWords + 1); start <= token && start < own.Length; start++)
        {
            if (own[start].Length > token - start)
            {
                return true;
            }
        }

        return false;
    }

    private static int NoMatch(out Sense sense)
    {
        sense = default;
        return 0;
    }

    private static int[] Numbers(Token[] tokens, Vocabulary vocabulary)
    {
        var numbers = new int[tokens.Length];
        for (var i = 0; i < tokens.Length; i++)
        {
            numbers[i] = vocabulary.Words.Find(tokens[i].Exact, tokens[i].Text);
        }

        return numbers;
    }
}

using HerdBot.Core.Reading.Lexicon;

namespace HerdBot.Core.Reading.Tokens;

/// <summary>Cuts a message into words, figures and marks. Total and linear.</summary>
internal static class Tokenizer
{
    /// <summary>Longer messages are read this far.</summary>
    public const int LongestText = 4096;

    // Far more than a message holds; odd texts are cut here.
    private const int MostTokens = 1000;
    private const int LongestWord = 64;
    private static readonly string[] Clitics = ["s", "ll", "re", "ve", "d", "m"];

    public static Token[] Tokenize(string text)
    {
        var tokens = new List<Token>(16);
        var end = Math.Min(text.Length, LongestText);
        for (var i = 0; i < end && tokens.Count < MostTokens;)
        {
            i = text[i] == '\n' ? ReadLineEnd(i, tokens)
                : char.IsWhiteSpace(text[i]) ? i + 1
                : IsNumberStart(text, i, end) ? NumberReader.Read(text, i, end, tokens)
                : char.IsLetter(text[i]) ? ReadWord(text, i, end, tokens)
                : ReadMark(text, i, end, tokens);
        }

        return [.. tokens];
    }

    /// <summary>A lexicon's word cut as the same word would be cut in a message.</summary>
    public static IEnumerable<string> Pieces(string word) =>
        word.Length > 1 && Letters.IsApostrophe(word[0]) && Clitic(word.AsSpan(1)) is { } clitic ? [clitic] : Tokenize(word).Select(token => token.Exact);

    internal static bool IsTight(List<Token> tokens, int start) => tokens.Count > 0 && tokens[^1].End == start;

    private static bool IsNumberStart(string text, int i, int end) =>
        char.IsAsciiDigit(text[i]) || NumberReader.Fraction(text[i]) > 0m
        || (text[i] is '.' or ',' && i + 1 < end && char.IsAsciiDigit(text[i + 1]) && (i == 0 || text[i - 1] == ' ' || text[i - 1] == '$'));

    private static int ReadWord(string text, int start, int end, List<Token> tokens)
    {
        var i = start;
        while (i < end && IsWordPart(text, i, end))
        {
            i++;
        }

        if (Meridiem(text, start, i, end) is { } after)
        {
            AddWord(text, start, start + 1, tokens, char.ToLowerInvariant(text[start]) + "m");
            tokens[^1] = tokens[^1] with { End = after };
            return after;
        }

        AddSplit(text, start, i, tokens);
        return i;
    }

    private static bool IsWordPart(string text, int i, int end) =>
        char.IsLetter(text[i]) || char.GetUnicodeCategory(text[i]) == System.Globalization.UnicodeCategory.NonSpacingMark
        || ((Letters.IsApostrophe(text[i]) || text[i] is '&' or '-' or '/')
            && i + 1 < end && char.IsLetter(text[i + 1]) && i > 0 && char.IsLetter(text[i - 1])
            && (text[i] != '/' || IsRate(text, i)));

    private static bool IsRate(string text, int slash) =>
        slash + 1 < text.Length && char.ToLowerInvariant(text[slash - 1]) is 'g' or 'c'
        && char.ToLowerInvariant(text[slash + 1]) is 'd' or 'u';

    private static int? Meridiem(string text, int start, int stop, int end) =>
        stop - start == 1 && char.ToLowerInvariant(text[start]) is 'a' or 'p' && stop + 1 < end && stop - start == 1
        && text[stop] == '.' && char.ToLowerInvariant(text[stop + 1]) == 'm'
        && (stop + 2 >= end || !char.IsLetter(text[stop + 2]))
            ? Math.Min(end, stop + 2 < end && text[stop + 2] == '.' ? stop + 3 : stop + 2)
            : null;

    private static void AddSplit(string text, int start, int end, List<Token> tokens)
    {
        var apostrophe = -1;
        for (var i = start; i < end; i++)
        {
            apostrophe = Letters.IsApostrophe(text[i]) ? i : apostrophe;
        }

        if (apostrophe > start && Clitic(text.AsSpan(apostrophe + 1, end - apostrophe - 1)) is { } clitic)
        {
            AddWord(text, start, apostrophe, tokens, null);
            AddWord(text, apostrophe, end, tokens, clitic);
        }
        else
        {
            AddWord(text, start, end, tokens, null);
        }
    }

    private static string? Clitic(ReadOnlySpan<char> tail)
    {
        foreach (var clitic in Clitics)
        {
            if (tail.Equals(clitic, StringComparison.OrdinalIgnoreCase))
            {
                return "'" + clitic;
            }
        }

        return null;
    }

    private static void AddWord(string text, int start, int end, List<Token> tokens, string? given)
    {
        var word = given ?? Lower(text.AsSpan(start, end - start));
        tokens.Add(new Token(TokenKind.Word, start, end, Letters.Fold(word))
        {
            Exact = word,
            Capital = char.IsUpper(text[start]),
            Tight = IsTight(tokens, start),
        });
    }

    private static string Lower(ReadOnlySpan<char> word)
    {
        Span<char> letters = word.Length <= LongestWord ? stackalloc char[LongestWord] : new char[word.Length];
        var length = 0;
        foreach (var c in word)
        {
            if (!Letters.IsApostrophe(c))
            {
                letters[length++] = char.ToLowerInvariant(c);
            }
        }

        return new string(letters[..length]);
    }

    // A new line parts what stands on it from what went before, as a full stop does.
    private static int ReadLineEnd(int at, List<Token> tokens)
    {
        if (tokens.Count > 0 && !tokens[^1].Is('\n'))
        {
            tokens.Add(new Token(TokenKind.Mark, at, at + 1, "\n"));
        }

        return at + 1;
    }

    private static int ReadMark(string text, int start, int end, List<Token> tokens)
    {
        var length = char.IsHighSurrogate(text[start]) && start + 1 < end && char.IsLowSurrogate(text[start + 1]) ? 2 : 1;
        var mark = text.Substring(start, length);
        if (!IsModifier(mark))
        {
            mark = mark is "–" or "—" ? "-" : mark is "º" ? "°" : mark is "…" ? "." : mark;
            tokens.Add(new Token(TokenKind.Mark, start, start + length, mark) { Tight = IsTight(tokens, start) });
        }

        return start + length;
    }

    private static bool IsModifier(string mark) =>
        mark[0] is '\uFE0F' or '\u200D' or '\u200B' or '¿' or '¡'
        || (mark.Length == 2 && char.ConvertToUtf32(mark, 0) is >= 0x1F3FB and <= 0x1F3FF);
}

using HerdBot.Core.Reading.Lexicon;

namespace HerdBot.Core.Cards;

/// <summary>One word of an entry: <c>warm</c>, <c>nurs*</c>, <c>labour|labor</c>.</summary>
internal readonly record struct CardWord(string Text)
{
    // A slip in a short word makes another word.
    private const int LongEnough = 5;

    /// <summary>Whether a word of the question is this word; a longer one may hold one slip of the thumb.</summary>
    public bool Is(string word) => Text.Split('|').Any(form => form.EndsWith('*') ? Begins(word, form[..^1]) : word == form || (form.Length >= LongEnough && Slips.IsOne(word, form)));

    private static bool Begins(string word, string stem) =>
        word.StartsWith(stem, StringComparison.Ordinal) || (stem.Length >= LongEnough && word.Length >= stem.Length
            && (Slips.IsOne(word[..stem.Length], stem) || Slips.IsOne(word[..Math.Min(word.Length, stem.Length + 1)], stem)));
}

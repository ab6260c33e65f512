namespace HerdBot.Core.Reading.Lexicon;

/// <summary>
/// Spells out the short way in which lexicon files write phrases: "a|b" is either word, "word?" may be left out,
/// "{him}" stands for a row of pronouns.
/// </summary>
internal static class PhrasePattern
{
    private static readonly Dictionary<string, string> Rows = new(StringComparer.Ordinal)
    {
        ["{his}"] = "her|his|its|their",
        ["{him}"] = "her|him|it|them",
        ["{she}"] = "she|he|it|they",
        ["{self}"] = "herself|himself|itself|themselves",
        ["{got}"] = "got|get|gets|is|are|was|shes|hes|already|now|got",
    };

    public static IEnumerable<string[]> Expand(string pattern)
    {
        IEnumerable<string[]> phrases = [[]];
        foreach (var part in pattern.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var optional = part.Length > 1 && part[^1] == '?';
            var core = optional ? part[..^1] : part;
            var words = (Rows.TryGetValue(core, out var row) ? row : core).Split('|');
            phrases = [.. phrases.SelectMany(head => Continue(head, words, optional))];
        }

        return phrases.Where(phrase => phrase.Length > 0);
    }

    private static IEnumerable<string[]> Continue(string[] head, string[] words, bool optional)
    {
        foreach (var word in words)
        {
            yield return [.. head, word];
        }

        if (optional)
        {
            yield return head;
        }
    }
}

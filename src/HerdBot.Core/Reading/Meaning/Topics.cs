using System.Reflection;
using System.Text.Json;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Tokens;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>What a loosely worded fact is about, where the care plan listens to it: words as data, the gravest first.</summary>
internal static class Topics
{
    private static readonly WordList Words = new();
    private static readonly List<string> Names = [];
    private static readonly Dictionary<FactKind, PhraseTrie> Tries = Load();

    /// <summary>The topics of a stretch of tokens said as a fact of a kind, the gravest first; null where the plan hears nothing in it.</summary>
    public static string? Of(FactKind kind, ReadOnlySpan<Token> tokens)
    {
        if (!Tries.TryGetValue(kind, out var trie))
        {
            return null;
        }

        Span<int> numbers = tokens.Length <= 128 ? stackalloc int[tokens.Length] : new int[tokens.Length];
        for (var i = 0; i < tokens.Length; i++)
        {
            numbers[i] = Words.Find(tokens[i].Exact, tokens[i].Text);
        }

        var topics = new SortedSet<int>();
        for (var i = 0; i < numbers.Length;)
        {
            var length = trie.Match(numbers, i, out var sense);
            if (length > 0)
            {
                topics.Add(sense.Argument);
            }

            i += Math.Max(1, length);
        }

        return topics.Count == 0 ? null : string.Join(' ', topics.Select(topic => Names[topic - 1]));
    }

    /// <summary>The longer phrases of a language that make a note by themselves, each with the tag of the lexicon that it bears.</summary>
    public static IEnumerable<(string Tag, string[] Words)> Noted(string language)
    {
        using var json = Open();
        foreach (var topic in json.RootElement.EnumerateArray().Where(topic => topic.TryGetProperty("reads", out _)))
        {
            foreach (var words in topic.GetProperty(language).EnumerateArray().SelectMany(pattern => PhrasePattern.Expand(pattern.GetString()!)).Where(words => words.Length > 1))
            {
                yield return (topic.GetProperty("reads").GetString()!, words);
            }
        }
    }

    private static JsonDocument Open()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("Reading/Lexicon/topics.json")
            ?? throw new InvalidOperationException("The topics are not embedded.");
        return JsonDocument.Parse(stream);
    }

    private static Dictionary<FactKind, PhraseTrie> Load()
    {
        using var json = Open();
        var tries = new Dictionary<FactKind, PhraseTrie>();
        foreach (var topic in json.RootElement.EnumerateArray())
        {
            Names.Add(topic.GetProperty("topic").GetString()!);
            foreach (var word in topic.GetProperty("kinds").EnumerateArray())
            {
                var kind = FactWords.TryKind(word.GetString()!, out var known) ? known : throw new InvalidOperationException($"No such kind: {word}");
                tries.TryAdd(kind, new PhraseTrie());
                Add(tries[kind], topic.GetProperty("en"), Names.Count);
                Add(tries[kind], topic.GetProperty("es"), Names.Count);
            }
        }

        return tries;
    }

    private static void Add(PhraseTrie trie, JsonElement patterns, int number)
    {
        foreach (var phrase in patterns.EnumerateArray().SelectMany(pattern => PhrasePattern.Expand(pattern.GetString()!)))
        {
            trie.Add([.. phrase.SelectMany(Tokenizer.Pieces).Select(Words.Add)], Tag.Known, number);
        }
    }
}

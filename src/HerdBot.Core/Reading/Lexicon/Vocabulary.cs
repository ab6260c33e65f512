using System.Reflection;
using System.Text.Json;

namespace HerdBot.Core.Reading.Lexicon;

/// <summary>One language's words and phrases. Immutable once loaded.</summary>
internal sealed class Vocabulary
{
    private static readonly Dictionary<string, Tag> TagsByWord =
        Enum.GetValues<Tag>().ToDictionary(tag => Facts.FactWords.Snake(tag.ToString()), StringComparer.Ordinal);

    private Vocabulary()
    {
    }

    public static Vocabulary English { get; } = Load("en");

    public static Vocabulary Spanish { get; } = Load("es");

    public WordList Words { get; } = new();

    public PhraseTrie Phrases { get; } = new();

    /// <summary>What number words are worth, by the word's number.</summary>
    public Dictionary<int, int> Numbers { get; } = [];

    /// <summary>Words that sound like a figure, with the figure.</summary>
    public Dictionary<int, int> Sounds { get; } = [];

    public static Tag TagOf(string word) =>
        TagsByWord.TryGetValue(word, out var tag) ? tag : throw new InvalidOperationException($"The lexicon names no tag '{word}'.");

    private static Vocabulary Load(string language)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"Reading/Lexicon/{language}.json")
            ?? throw new InvalidOperationException($"The lexicon '{language}' is not embedded.");
        using var json = JsonDocument.Parse(stream);
        var vocabulary = new Vocabulary();
        foreach (var word in json.RootElement.TryGetProperty("distinct", out var distinct) ? distinct.EnumerateArray() : default)
        {
            vocabulary.Words.AddDistinct(word.GetString() ?? "");
        }

        foreach (var entry in json.RootElement.GetProperty("tags").EnumerateObject())
        {
            vocabulary.Add(entry);
        }

        foreach (var (tag, words) in Meaning.Topics.Noted(language))
        {
            vocabulary.Add(words, TagOf(tag), 0);
        }

        foreach (var number in json.RootElement.GetProperty("numbers").EnumerateObject())
        {
            vocabulary.Numbers[vocabulary.Words.Add(number.Name)] = number.Value.GetInt32();
        }

        if (json.RootElement.TryGetProperty("sounds", out var sounds))
        {
            foreach (var sound in sounds.EnumerateObject())
            {
                vocabulary.Sounds[vocabulary.Words.Add(sound.Name)] = sound.Value.GetInt32();
            }
        }

        vocabulary.Words.IndexSlips();
        return vocabulary;
    }

    private void Add(JsonProperty entry)
    {
        var parts = entry.Name.Split(':');
        var tag = TagOf(parts[0]);
        var argument = parts.Length > 1 ? int.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture) : 0;
        foreach (var pattern in entry.Value.EnumerateArray())
        {
            foreach (var phrase in PhrasePattern.Expand(pattern.GetString() ?? ""))
            {
                Add(phrase, tag, argument);
            }
        }
    }

    private void Add(string[] phrase, Tag tag, int argument) =>
        Phrases.Add([.. phrase.SelectMany(Tokens.Tokenizer.Pieces).Select(Words.Add)], tag, argument);
}

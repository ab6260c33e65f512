using System.Collections.Frozen;
using System.Text;
using System.Text.Json;
using HerdBot.Core.Reading;
using HerdBot.Core.Reading.Lexicon;

namespace HerdBot.Core.Wording;

/// <summary>All that the bot says, by key: one file a language, each with the same keys and blanks.</summary>
public sealed class Phrases
{
    private static readonly Lazy<Phrases> EnglishOnes = new(() => Load("Wording/en.json"));
    private static readonly Lazy<Phrases> SpanishOnes = new(() => Load("Wording/es.json"));
    private readonly FrozenDictionary<string, string> phrases;

    private Phrases(FrozenDictionary<string, string> phrases) => this.phrases = phrases;

    /// <summary>The phrases of a language.</summary>
    public static Phrases Of(Language language) => language == Language.Spanish ? SpanishOnes.Value : EnglishOnes.Value;

    /// <summary>Those of every language: people answer in either.</summary>
    public static IEnumerable<Phrases> All => [EnglishOnes.Value, SpanishOnes.Value];

    /// <summary>Every key.</summary>
    public IEnumerable<string> Keys => phrases.Keys;

    /// <summary>Whether there is such a phrase.</summary>
    public bool Has(string key) => phrases.ContainsKey(key);

    /// <summary>Whether some words are a phrase, in any language; letter case, accents and a full stop aside.</summary>
    public static bool Is(string key, string words, params (string Name, string Value)[] values) => All.Any(language => Plain(language.Say(key, values)) == Plain(words));

    /// <summary>Whether two texts are the same phrase, each in any language, among those whose keys begin so.</summary>
    public static bool Same(string keys, string one, string other) =>
        Plain(one) == Plain(other) || EnglishOnes.Value.Keys.Where(key => key.StartsWith(keys, StringComparison.Ordinal)).Any(key => Is(key, one) && Is(key, other));

    /// <summary>Words without what people leave out or add as they type: letter case, accents, a full stop.</summary>
    public static string Plain(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return Letters.Fold(words.Trim().TrimEnd('.', '!')).Replace('’', '\'');
    }

    /// <summary>A phrase with its blanks filled. A value is put in as it is and never read as a phrase.</summary>
    /// <param name="key">A key of the file.</param>
    /// <param name="values">By the names in the phrase's braces; one that the phrase does not use is passed over.</param>
    /// <exception cref="KeyNotFoundException">The file has no such phrase.</exception>
    public string Say(string key, params (string Name, string Value)[] values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var text = new StringBuilder();
        var rest = phrases[key].AsSpan();
        for (var open = rest.IndexOf('{'); open >= 0; open = rest.IndexOf('{'))
        {
            var close = rest.IndexOf('}');
            var name = rest[(open + 1)..close].ToString();
            text.Append(rest[..open]).Append(values.FirstOrDefault(value => value.Name == name).Value);
            rest = rest[(close + 1)..];
        }
        return text.Append(rest).ToString();
    }

    /// <summary>The first of some phrases that the file has, filled.</summary>
    public string SayFirst(IEnumerable<string> keys, params (string Name, string Value)[] values) => Say(keys.First(Has), values);

    /// <summary>A phrase as the file has it, its blanks in braces.</summary>
    public string Raw(string key) => phrases[key];

    /// <summary>A phrase that is a list of words: "Jan|Feb|…".</summary>
    public string[] Words(string key) => phrases[key].Split('|');

    private static Phrases Load(string resource)
    {
        using var stream = typeof(Phrases).Assembly.GetManifestResourceStream(resource) ?? throw new InvalidDataException($"No {resource} in the program.");
        return new Phrases(JsonSerializer.Deserialize<Dictionary<string, string>>(stream)!.ToFrozenDictionary(StringComparer.Ordinal));
    }
}

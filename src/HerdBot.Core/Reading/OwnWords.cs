using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text.Json;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Tokens;

namespace HerdBot.Core.Reading;

/// <summary>The farm's own words and what they mean, beside the lexicon. Built once for a farm; immutable, safe to share.</summary>
public sealed class OwnWords
{
    /// <summary>The longest row of words that may mean one thing.</summary>
    public const int MostWords = 5;
    private static readonly FrozenDictionary<string, Tag> Known = Load();
    private readonly WordList words = new();
    private readonly PhraseTrie phrases = new();

    private OwnWords()
    {
    }

    /// <summary>No words of one's own.</summary>
    public static OwnWords None { get; } = new();

    /// <summary>What a word may mean: the meanings by their names.</summary>
    public static IEnumerable<string> Meanings => Known.Keys.Order(StringComparer.Ordinal);

    /// <summary>Whether there are any.</summary>
    public bool Any { get; private init; }

    /// <summary>Takes the farm's own words in.</summary>
    /// <param name="meanings">What each word, or row of up to five, means: one of <see cref="Meanings"/>.</param>
    /// <param name="names">The names of the herd, which are no words.</param>
    /// <returns>The words, or null and every problem at once, each a plain sentence without its full stop.</returns>
    public static (OwnWords? Words, ImmutableArray<string> Problems) Read(IReadOnlyDictionary<string, string> meanings, IEnumerable<string> names)
    {
        ArgumentNullException.ThrowIfNull(meanings);
        var animals = names.Select(Letters.Fold).ToHashSet();
        var own = new OwnWords { Any = meanings.Count > 0 };
        var problems = ImmutableArray.CreateBuilder<string>();
        foreach (var (said, meaning) in meanings)
        {
            string[] pieces = [.. Tokenizer.Pieces(Letters.Fold(said.Trim()))];
            if (Problem(said, meaning, pieces, animals) is { } problem)
            {
                problems.Add(problem);
            }
            else
            {
                own.phrases.Add([.. pieces.Select(own.words.Add)], Known[meaning], 0);
            }
        }

        return problems.Count == 0 ? (own, []) : (null, problems.ToImmutable());
    }

    /// <summary>The longest of the farm's phrases that begins at a token; its length is 0 where there is none.</summary>
    internal int Match(ReadOnlySpan<Token> tokens, int start, out Sense sense)
    {
        Span<int> row = stackalloc int[MostWords];
        var length = 0;
        while (length < MostWords && start + length < tokens.Length && words.Find(tokens[start + length].Exact, tokens[start + length].Text) is >= 0 and var number)
        {
            row[length++] = number;
        }

        return phrases.Match(row[..length], 0, out sense);
    }

    private static string? Problem(string said, string meaning, string[] pieces, HashSet<string> animals) =>
        pieces.Length is 0 or > MostWords || !pieces.All(piece => piece.Any(char.IsLetter)) ? $"'{said}' must be one to five words"
        : !Known.TryGetValue(meaning, out var tag) ? $"'{said}' is to mean '{meaning}', which is no meaning; there are {string.Join(", ", Meanings)}"
        : animals.Contains(string.Join(' ', pieces)) ? $"'{said}' is an animal's name"
        : (Clash(Vocabulary.English, pieces, tag) ?? Clash(Vocabulary.Spanish, pieces, tag)) is { } other ? $"'{said}' is to mean '{meaning}', but it means '{other}' already"
        : null;

    /// <summary>What the lexicon takes the words for; null where they are free, or mean the same.</summary>
    private static string? Clash(Vocabulary lexicon, string[] pieces, Tag meant)
    {
        int[] numbers = [.. pieces.Select(piece => lexicon.Words.Find(piece, piece))];
        if (numbers.Length == 1 && lexicon.Numbers.ContainsKey(numbers[0]))
        {
            return "number";
        }

        return lexicon.Phrases.Match(numbers, 0, out var sense) != pieces.Length || sense.Tags.Has(meant) ? null
            : Enum.GetValues<Tag>().Where(tag => tag is not (Tag.None or Tag.Known) && sense.Tags.Has(tag)).Select(Word).FirstOrDefault();
    }

    private static string Word(Tag tag) => Known.FirstOrDefault(pair => pair.Value == tag).Key ?? FactWords.Snake(tag.ToString());

    private static FrozenDictionary<string, Tag> Load()
    {
        using var stream = typeof(OwnWords).Assembly.GetManifestResourceStream("Reading/Lexicon/meanings.json")
            ?? throw new InvalidOperationException("The meanings are not embedded.");
        return JsonSerializer.Deserialize<Dictionary<string, string>>(stream)!.ToFrozenDictionary(pair => pair.Key, pair => Vocabulary.TagOf(pair.Value), StringComparer.Ordinal);
    }
}

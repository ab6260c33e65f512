using System.Collections.Immutable;
using System.Text.Json;
using HerdBot.Core.Reading.Lexicon;

namespace HerdBot.Core.Cards;

/// <summary>All cards, found by the words that people ask with, in either language.</summary>
public sealed class CardBox
{
    // Below this a question shares no more with a card than a word that many cards have.
    private const double Enough = 1.8;

    private static readonly Lazy<CardBox> TheOne = new(Load);

    private readonly ImmutableArray<Entry> entries;

    private CardBox(ImmutableArray<Card> cards)
    {
        Cards = cards;
        entries = [.. EntriesOf(cards, card => card.English), .. EntriesOf(cards, card => card.Spanish)];
    }

    /// <summary>The box that the program holds.</summary>
    public static CardBox Default => TheOne.Value;

    /// <summary>Every card, in the order of the file.</summary>
    public ImmutableArray<Card> Cards { get; }

    /// <summary>The card that a question is about; null where none is plainly meant.</summary>
    /// <param name="question">What somebody wrote, in English or Spanish, with slips of the thumb.</param>
    public Card? Find(string question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var words = Words(question);
        return entries.Where(entry => entry.Words.All(word => words.Any(word.Is)))
            .GroupBy(entry => (entry.Card, entry.Spanish), (key, found) => (key.Card, Weight: found.Sum(entry => entry.Weight)))
            .Where(card => card.Weight >= Enough)
            .OrderByDescending(card => card.Weight).Select(card => card.Card).FirstOrDefault();
    }

    private static HashSet<string> Words(string text) =>
        [.. new string([.. text.Where(letter => !Letters.IsApostrophe(letter)).Select(letter => char.IsLetterOrDigit(letter) ? Letters.Fold(letter) : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries)];

    // A word weighs the more the fewer cards have it, and words that come together more than each alone.
    private static IEnumerable<Entry> EntriesOf(ImmutableArray<Card> cards, Func<Card, CardText> text)
    {
        var all = cards.SelectMany(card => text(card).Words.Distinct().Select(entry => (Card: card, Words: entry.Split(' ').Select(word => new CardWord(word)).ToImmutableArray()))).ToList();
        var holders = all.SelectMany(entry => entry.Words.Select(word => (word, entry.Card))).Distinct().ToLookup(pair => pair.word);
        double Rarity(CardWord word) => Math.Log(1 + cards.Length / (double)holders[word].Count());
        var spanish = ReferenceEquals(text(cards[0]), cards[0].Spanish);
        return all.Select(entry => new Entry(entry.Card, spanish, entry.Words, entry.Words.Sum(Rarity) * (1 + entry.Words.Length) / 2));
    }

    private static CardBox Load()
    {
        using var stream = typeof(CardBox).Assembly.GetManifestResourceStream("Cards/cards.json") ?? throw new InvalidDataException("No Cards/cards.json in the program.");
        var file = JsonSerializer.Deserialize<Dictionary<string, FileCard>>(stream, JsonSerializerOptions.Web)!;
        return new CardBox([.. file.Select(card => new Card(card.Key, card.Value.Sources, card.Value.En, card.Value.Es))]);
    }

    private sealed record Entry(Card Card, bool Spanish, ImmutableArray<CardWord> Words, double Weight);

    private sealed record FileCard(string Sources, CardText En, CardText Es);
}

using HerdBot.Core.Cards;
using HerdBot.Core.Facts;

namespace HerdBot.Core.Decisions;

/// <summary>Answers how things are done, with a card.</summary>
internal static class CardAnswers
{
    /// <summary>The card that somebody asks for in these words; null where the words ask for none.</summary>
    /// <param name="draft">The decision.</param>
    /// <param name="text">The whole message.</param>
    /// <param name="facts">What the message was read as.</param>
    public static string? To(Draft draft, string text, IReadOnlyCollection<Fact> facts)
    {
        var howto = facts.Any(fact => fact.Kind == FactKind.QuestionHowto);
        if (!howto && !(Asks(text) && !facts.Any(SaysMore)))
        {
            return null;
        }
        return CardBox.Default.Find(text) is { } card ? CardFace.Show(card, draft.Speaker, draft.TaskLines.Phone())
            : howto ? draft.Phrases.Say("answer.howto", ("phone", draft.TaskLines.Phone())) : null;
    }

    private static bool Asks(string text) => text.AsSpan().ContainsAny('?', '¿');

    /// <summary>Whether a fact says more than a question about no animal in particular, or a doubtful note: such are answered by the card alone.</summary>
    public static bool SaysMore(Fact fact) =>
        fact is not ({ Kind: FactKind.QuestionHowto } or { Kind: FactKind.QuestionStatus or FactKind.QuestionTasks, Animal: null } or { Kind: FactKind.Note, Unsure: true });
}

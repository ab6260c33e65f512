using System.Collections.Immutable;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Core.Reading;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>Decides what follows from what somebody wrote: records, replies, or one question back.</summary>
public static class Hear
{
    private static readonly Duration DictateEvery = Duration.FromHours(1);

    /// <summary>Somebody wrote a message.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="now">When it came in.</param>
    /// <param name="by">Who, by name.</param>
    /// <param name="message">The chat's id of the message.</param>
    /// <param name="text">What it says.</param>
    /// <param name="replyTo">The chat's id of the message it replies to.</param>
    public static ImmutableArray<HerdEvent> Line(HerdState state, Farm farm, Instant now, string by, string message, string text, string? replyTo)
    {
        var draft = new Draft(state, farm, now);
        var told = Circumstances.PostOf(draft.State, replyTo);
        draft.Add(new HerdEvent.LineHeard(message, by, text, now, told?.Number));
        if (Commands.Of(text, draft.Phrases) is { } help)
        {
            draft.Say(draft.Post(PostKind.Answer, help) with { ReplyTo = message });
        }
        else if (Asking.Answered(draft, text, told) is { } answered)
        {
            Take(draft, answered.Question, answered.Answer, by, message);
        }
        else
        {
            var reading = Reader.Read(Commands.Plain(text), Circumstances.Of(draft, by, message, replyTo, now));
            Act(draft, reading.Facts, reading.Ask, new Utterance(by, message, text) { Replying = replyTo is not null && told is null });
        }
        return draft.Events;
    }

    /// <summary>Somebody changed the words of a message.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="now">When the change came in.</param>
    /// <param name="by">Who.</param>
    /// <param name="message">The chat's id of the message.</param>
    /// <param name="text">What it says now.</param>
    public static ImmutableArray<HerdEvent> Edit(HerdState state, Farm farm, Instant now, string by, string message, string text)
    {
        ArgumentNullException.ThrowIfNull(state);
        if (state.Lines.Find(line => line.Message == message) is not { } first)
        {
            return Line(state, farm, now, by, message, text, null);
        }
        var draft = new Draft(state, farm, now);
        draft.Add(new HerdEvent.LineEdited(message, by, text, now));
        if (first.Text == text)
        {
            return draft.Events;
        }
        var replyTo = first.ReplyTo is { } number ? state.Posts.GetValueOrDefault(number)?.Message : null;
        var reading = Reader.Read(text, Circumstances.Of(draft, by, message, replyTo, first.At));
        foreach (var question in draft.State.Questions.Where(question => question.Message == message))
        {
            draft.Add(new HerdEvent.QuestionClosed(question.Post, false));
        }
        if (reading.Ask is { } ask)
        {
            Asking.Ask(draft, ask, reading.Facts, by, message);
            return draft.Events;
        }
        var said = Mending.Edit(draft, message, [.. reading.Facts.Where(fact => !OwnKinds.IsQuestion(fact.Kind))], by, now);
        if (said.Count > 0)
        {
            draft.Say(draft.Post(PostKind.Reply, string.Join("\n", said)) with { ReplyTo = message });
        }
        return draft.Events;
    }

    /// <summary>A voice note, sticker or video: asked once an hour at most to be dictated as text.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="now">When it came in.</param>
    /// <param name="by">Who sent it.</param>
    /// <param name="message">The chat's id of the message.</param>
    /// <param name="what">The chat's word for it.</param>
    public static ImmutableArray<HerdEvent> Wordless(HerdState state, Farm farm, Instant now, string by, string message, string what)
    {
        var draft = new Draft(state, farm, now);
        var answered = draft.State.WordlessAnsweredAt;
        var post = answered is null || now - answered >= DictateEvery;
        draft.Add(new HerdEvent.WordlessHeard(by, what, now, post));
        if (post)
        {
            draft.Say(draft.Post(PostKind.Reply, draft.Phrases.Say("reply.wordless")) with { ReplyTo = message });
        }
        return draft.Events;
    }

    /// <summary>An answer to a question: the facts that waited go on record.</summary>
    internal static void Take(Draft draft, Question question, string answer, string by, string? message)
    {
        var facts = Asking.Complete(draft, question, answer);
        if (facts.IsEmpty)
        {
            draft.Say(draft.Post(PostKind.Reply, draft.Phrases.Say("reply.dropped")) with { ReplyTo = message });
            return;
        }
        Act(draft, facts, null, new Utterance(question.By, question.Message ?? message, "") { Confirmed = true });
    }

    /// <summary>What was understood goes on record, or is asked back; then it is answered.</summary>
    internal static void Act(Draft draft, ImmutableArray<Fact> facts, Ask? ask, Utterance uttered)
    {
        var records = new List<HerdRecord>();
        var said = new List<string>();
        var waiting = ImmutableArray.CreateBuilder<Fact>();
        var doubts = new List<Doubt>();
        foreach (var fact in facts)
        {
            if (Waits(fact, ask))
            {
                waiting.Add(fact);
            }
            else if (!uttered.Confirmed && Doubts.About(draft, fact, uttered) is { } doubt)
            {
                doubts.Add(doubt);
            }
            else if (fact.Kind is FactKind.Correction)
            {
                said.Add(Mending.Correct(draft, fact, uttered.By, draft.Now) ?? draft.Phrases.Say("reply.nothing_to_mend"));
            }
            else if (fact.Kind is FactKind.Undo)
            {
                said.Add(Mending.Undo(draft, fact, uttered, draft.Now));
            }
            else if (!OwnKinds.IsQuestion(fact.Kind))
            {
                records.Add(Recording.Record(draft, fact, uttered.By, uttered.Message, draft.Now));
            }
        }
        Asking.CloseAnsweredBy(draft, records.Select(record => record.Fact));
        if (records.Count > 0 || said.Count > 0)
        {
            Receipts.Give(draft, records, said, uttered.Text, uttered.Message ?? "");
        }
        Answer(draft, facts, uttered.Message);
        if (ask is { } missing && waiting.Count > 0)
        {
            Asking.Ask(draft, missing, waiting.ToImmutable(), uttered.By, uttered.Message);
        }
        foreach (var doubt in doubts)
        {
            Asking.Ask(draft, doubt.Ask, [doubt.Fact], uttered.By, uttered.Message, doubt.Text, doubt.Choices);
        }
    }

    private static void Answer(Draft draft, ImmutableArray<Fact> facts, string? message)
    {
        var answers = facts.Where(fact => OwnKinds.IsQuestion(fact.Kind) && fact.Animal != Fact.AskAnimal).Select(question => Answers.Answer(draft, question)).Distinct().ToList();
        if (answers.Count > 0)
        {
            draft.Say(draft.Post(PostKind.Answer, string.Join("\n", answers)) with { ReplyTo = message });
        }
    }

    /// <summary>A fact that waits for the one thing that is missing.</summary>
    private static bool Waits(Fact fact, Ask? ask) => fact.Animal == Fact.AskAnimal || ask switch
    {
        null or Ask.Animal => false,
        Ask.Value => fact.Value is null && (fact.Kind is FactKind.Temperature or FactKind.Weight or FactKind.Igg or FactKind.Done or FactKind.Colostrum or FactKind.Feed),
        Ask.Unit => fact.Value is not null && fact.Unit is null,
        Ask.Time => fact.At is null,
        _ => OwnKinds.IsGrave(fact.Kind),
    };
}

/// <summary>What somebody said, and how.</summary>
/// <param name="By">Who.</param>
/// <param name="Message">The chat's id of the message; null for a button.</param>
/// <param name="Text">The words.</param>
internal sealed record Utterance(string By, string? Message, string Text)
{
    /// <summary>It answers somebody's message, not a post of the bot's.</summary>
    public bool Replying { get; init; }
    /// <summary>The one thing that was doubtful has been asked and answered.</summary>
    public bool Confirmed { get; init; }
}

using System.Collections.Immutable;
using HerdBot.Core.Due;
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
        Asking.CloseLapsed(draft);
        if (Commands.Help(text, draft.Phrases) is { } help)
        {
            draft.Say(draft.Post(PostKind.Answer, help) with { ReplyTo = message });
        }
        else if (Commands.Fact(text) is { } command)
        {
            Act(draft, [command], null, by, message, text);
        }
        else if (Asking.Answered(draft, text, told) is { } answered)
        {
            Take(draft, answered.Question, answered.Answer, by, message);
        }
        else if (told is not null && TypedButtons.Of(Press.Shown(draft, told), text) is { } button && Press.Mends(button.Verb))
        {
            Press.Mend(draft, told, button.Verb, by);
        }
        else if (told is not null && TypedButtons.Fact(draft, text, told) is { } pressed)
        {
            Act(draft, [pressed], null, by, message, text);
        }
        else
        {
            var reading = Reader.Read(text, Circumstances.Of(draft, by, message, replyTo, now));
            if (reading is { Facts.IsEmpty: true, Ask: null } && TypedButtons.Fact(draft, text, null) is { } meant)
            {
                reading = reading with { Facts = [meant] };
            }
            if (CardAnswers.To(draft, text, reading.Facts) is { } card)
            {
                draft.Say(draft.Post(PostKind.Answer, card) with { ReplyTo = message });
                reading = reading with { Facts = [.. reading.Facts.Where(CardAnswers.SaysMore)] };
            }
            Act(draft, [.. reading.Facts.Select(fact => Asking.Filled(draft, Own(fact, replyTo), by))], reading.Ask, by, message, text);
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
            draft.Add(new HerdEvent.QuestionClosed(question.Post, true)); // The new words are asked about anew.
        }
        var edit = new Mending.Edit(draft, message, by);
        var open = Sift(draft, [.. reading.Facts.Where(fact => !OwnKinds.IsQuestion(fact.Kind))], reading.Ask, message, null, edit.Take);
        edit.Finish();
        if (edit.Recorded.Count + edit.Mended.Count > 0)
        {
            Receipts.Give(draft, edit.Recorded, edit.Mended, text, message);
        }
        open(by, message);
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

    /// <summary>The bot was deaf for so long that the chat's server has forgotten what was written meanwhile.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="now">When it hears again.</param>
    /// <param name="since">When it heard last.</param>
    public static ImmutableArray<HerdEvent> Missed(HerdState state, Farm farm, Instant now, Instant since)
    {
        var draft = new Draft(state, farm, now);
        draft.Say(draft.Post(PostKind.Reply, draft.Phrases.Say("reply.missed", ("since", draft.Speaker.Clock(since)))));
        return draft.Events;
    }

    /// <summary>A fault of the bot's own kept a message from being worked on: nothing is recorded, and the sender is told.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="now">When.</param>
    /// <param name="message">The chat's id of the message; null where there is none.</param>
    public static ImmutableArray<HerdEvent> Failed(HerdState state, Farm farm, Instant now, string? message)
    {
        var draft = new Draft(state, farm, now);
        draft.Say(draft.Post(PostKind.Reply, draft.Phrases.Say("reply.fault")) with { ReplyTo = message });
        return draft.Events;
    }

    /// <summary>An answer to a question: the facts that waited go on record, or are asked about in their turn.</summary>
    internal static void Take(Draft draft, Question question, string answer, string by, string? message)
    {
        var facts = Asking.Complete(draft, question, answer, out var confirmed);
        if (facts.Length < question.Waiting.Length)
        {
            draft.Say(draft.Post(PostKind.Reply, draft.Phrases.Say("reply.dropped")) with { ReplyTo = message });
        }
        Act(draft, facts, null, question.By, question.Message ?? message, "", confirmed);
    }

    /// <summary>What was understood goes on record, or is asked back; then it is answered.</summary>
    internal static void Act(Draft draft, ImmutableArray<Fact> facts, Ask? ask, string by, string? message, string text, Fact? confirmed = null)
    {
        var records = new List<HerdRecord>();
        var mended = new List<Mended>();
        var open = Sift(draft, facts, ask, message, confirmed, fact =>
        {
            switch (fact.Kind)
            {
                case FactKind.Roster when Naming.Refusal(draft, fact) is { } refusal:
                    mended.Add(new Mended(refusal, []));
                    break;
                case FactKind.Correction:
                    mended.Add(Mending.Correct(draft, fact, by, draft.Now) ?? new Mended(draft.Phrases.Say("reply.nothing_to_mend"), []));
                    break;
                case FactKind.Undo:
                    mended.Add(Mending.Undo(draft, fact, by, draft.Now) ?? new Mended(draft.Phrases.Say("reply.nothing_to_undo"), []));
                    break;
                case var kind when !OwnKinds.IsQuestion(kind):
                    records.Add(Recording.Record(draft, fact, by, message, draft.Now));
                    break;
            }
        });
        Asking.CloseAnsweredBy(draft, records);
        if (records.Count + mended.Count > 0)
        {
            Receipts.Give(draft, records, mended, text, message ?? "");
        }
        Answer(draft, facts, message);
        open(by, message);
    }

    /// <summary>Hands on each fact that is whole and beyond doubt, in order; nothing else ever goes on record.</summary>
    /// <returns>Asks for what is missing or in doubt: one thing, and what waits behind it in its turn.</returns>
    private static Action<string, string?> Sift(Draft draft, ImmutableArray<Fact> facts, Ask? ask, string? message, Fact? confirmed, Action<Fact> take)
    {
        var waiting = ImmutableArray.CreateBuilder<Fact>();
        var doubtful = ImmutableArray.CreateBuilder<Fact>();
        Doubt? first = null;
        foreach (var fact in facts)
        {
            if (Waits(fact, ask))
            {
                waiting.Add(fact);
            }
            else if (!ReferenceEquals(fact, confirmed) && Doubts.About(draft, fact, message) is { } doubt)
            {
                first ??= doubt;
                doubtful.Add(ReferenceEquals(first, doubt) ? doubt.Fact : fact);
            }
            else
            {
                take(fact);
            }
        }
        return (by, from) =>
        {
            if (ask is { } missing && waiting.Count > 0)
            {
                Asking.Ask(draft, missing, [.. waiting, .. doubtful], by, from);
            }
            else if (first is not null)
            {
                Asking.Ask(draft, first.Ask, doubtful.ToImmutable(), by, from, first.Text, first.Choices);
            }
        };
    }

    /// <summary>"Scratch that" means one's own last message, unless it replies to another.</summary>
    private static Fact Own(Fact fact, string? replyTo) =>
        fact is { Kind: FactKind.Undo, Field: null } && replyTo is null ? fact with { Target = null } : fact;

    private static void Answer(Draft draft, ImmutableArray<Fact> facts, string? message)
    {
        var answers = facts.Where(fact => OwnKinds.IsQuestion(fact.Kind) && fact.Animal != Fact.AskAnimal).Select(question => Answers.Answer(draft, question)).Distinct().ToList();
        if (answers.Count > 0)
        {
            var calendar = facts.Any(fact => fact is { Kind: FactKind.QuestionDue, Field: MatingTopics.Calendar }) && draft.State.Due(draft.Farm).Awaited(draft.Farm.Clock.Day(draft.Now)).Count > 0;
            draft.Say(draft.Post(PostKind.Answer, string.Join("\n", answers)) with { ReplyTo = message, Picture = calendar ? Post.Season : null });
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

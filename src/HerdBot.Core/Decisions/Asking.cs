using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>Asks for the one thing that is missing, and takes the answer.</summary>
internal static class Asking
{
    private static readonly Duration Waits = Duration.FromHours(12);
    private const int Choices = 3;

    /// <summary>Asks, and keeps the facts that wait.</summary>
    public static void Ask(Draft draft, Ask ask, ImmutableArray<Fact> waiting, string by, string? message, string? text = null, ImmutableArray<string>? choices = null)
    {
        var offered = choices ?? Offered(draft, ask, waiting);
        var post = draft.Post(PostKind.Ask, text ?? Text(draft, ask, waiting[0], by)) with
        {
            ReplyTo = message,
            Buttons = [.. offered.Select((choice, index) => new Button(choice, ButtonVerb.Choose, index))],
        };
        var number = draft.Say(post);
        draft.Add(new HerdEvent.QuestionAsked(new Question(number, ask, waiting, offered, by, message, draft.Now)));
    }

    /// <summary>The open question that some words answer, and which of its choices; null where they answer none.</summary>
    public static (Question Question, string Answer)? Answered(Draft draft, string text, Post? replyTo)
    {
        var words = Plain(text);
        foreach (var question in draft.State.Questions.Reverse())
        {
            if (question.Choices.FirstOrDefault(choice => Plain(choice) == words) is { } choice)
            {
                return (question, choice);
            }
            if (question.Ask == Facts.Ask.Animal && (replyTo?.Number == question.Post || question == draft.State.Questions[^1])
                && draft.State.Animals.FirstOrDefault(animal => Plain(animal.Name) == words) is { } named)
            {
                return (question, named.Name);
            }
        }
        return null;
    }

    /// <summary>Closes what nobody has answered in time.</summary>
    public static void CloseLapsed(Draft draft)
    {
        foreach (var question in draft.State.Questions.Where(question => draft.Now - question.At >= Waits))
        {
            draft.Add(new HerdEvent.QuestionClosed(question.Post, false));
        }
    }

    /// <summary>The waiting facts, completed by an answer; without the first where the answer says no to it.</summary>
    /// <param name="draft">The decision so far.</param>
    /// <param name="question">What was asked.</param>
    /// <param name="answer">One of its choices, or a name.</param>
    /// <param name="confirmed">The one fact that is beyond doubt now; null where the answer confirms none.</param>
    public static ImmutableArray<Fact> Complete(Draft draft, Question question, string answer, out Fact? confirmed)
    {
        var phrases = draft.Phrases;
        confirmed = null;
        draft.Add(new HerdEvent.QuestionClosed(question.Post, true));
        if (answer == phrases.Say("button.no") || answer == phrases.Say("ask.twin.no"))
        {
            return question.Waiting[1..];
        }
        var facts = Completed(draft, question, answer);
        confirmed = question.Ask == Facts.Ask.Sure ? facts[0] : null;
        return facts;
    }

    private static ImmutableArray<Fact> Completed(Draft draft, Question question, string answer)
    {
        var phrases = draft.Phrases;
        return question.Ask switch
        {
            Facts.Ask.Animal => WithAnimal(draft, question, answer),
            Facts.Ask.Unit when FactWords.TryUnit(answer, out var unit) => [.. question.Waiting.Select(fact => fact.Value is null || fact.Unit is not null ? fact : fact with { Unit = unit })],
            _ when answer == phrases.Say("ask.twin.yes") => [question.Waiting[0] with { N = 2 }, .. question.Waiting[1..]],
            _ => question.Waiting,
        };
    }

    /// <summary>Questions whose missing figure a fuller statement has brought.</summary>
    public static void CloseAnsweredBy(Draft draft, IEnumerable<Fact> recorded)
    {
        foreach (var fact in recorded.ToList())
        {
            foreach (var question in draft.State.Questions.Where(question => question.Ask is Facts.Ask.Value or Facts.Ask.Unit or Facts.Ask.Time
                && question.Waiting.Any(waiting => (waiting.Kind == fact.Kind || waiting.Kind == FactKind.Done && waiting.Task == FactWords.Word(fact.Kind)) && (waiting.Animal is null or Fact.AskAnimal || waiting.Animal == fact.Animal))))
            {
                draft.Add(new HerdEvent.QuestionClosed(question.Post, true));
            }
        }
    }

    private static ImmutableArray<Fact> WithAnimal(Draft draft, Question question, string answer)
    {
        var unknown = question.Waiting.Select(fact => fact.Name).FirstOrDefault(name => name is not null && draft.Phrases.Say("ask.add", ("name", name)) == answer);
        if (unknown is not null)
        {
            var role = question.Waiting.Any(fact => fact.Kind is FactKind.Birth or FactKind.Placenta or FactKind.LabourSign or FactKind.WaterBroke or FactKind.Breeding) ? HerdRole.Dam : HerdRole.Young;
            draft.Add(new HerdEvent.AnimalAdded(Roster.NewAnimal(unknown, role, draft.Farm.Species)));
        }
        return [.. question.Waiting.Select(fact => fact.Animal == Fact.AskAnimal || fact.Animal is null ? fact with { Animal = unknown ?? answer, Name = fact.Kind == FactKind.Roster ? fact.Name : null } : fact)];
    }

    private static string Text(Draft draft, Ask ask, Fact fact, string by)
    {
        var what = ask == Facts.Ask.Value && CareTaskWords.TryParse(fact.Task ?? FactWords.Word(fact.Kind), out var reading)
            ? draft.TaskLines.Noun(reading) : draft.FactLines.Say(fact with { Name = null }, by);
        var animal = fact.Animal is null or Fact.AskAnimal ? "" : fact.Animal;
        (string, string)[] values = [("what", what), ("animal", animal), ("name", fact.Name ?? "")];
        var key = ask switch
        {
            Facts.Ask.Animal => fact.Name is not null && fact.Kind != FactKind.Roster ? "ask.animal.unknown" : "ask.animal",
            Facts.Ask.Value => fact.Kind == FactKind.Temperature ? "ask.value.cold" : "ask.value",
            Facts.Ask.Unit => "ask.unit",
            Facts.Ask.Time => "ask.time",
            _ => fact.Kind == FactKind.Death ? "ask.sure.death" : "ask.sure",
        };
        var asked = draft.Phrases.Say(key, values).TrimStart(',', ' ').Replace(" ,", "", StringComparison.Ordinal);
        return char.ToUpperInvariant(asked[0]) + asked[1..];
    }

    private static ImmutableArray<string> Offered(Draft draft, Ask ask, ImmutableArray<Fact> waiting) => ask switch
    {
        Facts.Ask.Animal => Candidates(draft, waiting),
        Facts.Ask.Unit => waiting[0].Kind == FactKind.Temperature ? ["F", "C"] : ["lb", "kg"],
        Facts.Ask.Sure => [draft.Phrases.Say("button.yes"), draft.Phrases.Say("button.no")],
        _ => [],
    };

    /// <summary>The animals most likely meant, and the offer to add an unknown one.</summary>
    private static ImmutableArray<string> Candidates(Draft draft, ImmutableArray<Fact> waiting)
    {
        var fact = waiting.First(fact => fact.Animal is null or Fact.AskAnimal);
        var ofDams = fact.Kind is FactKind.Birth or FactKind.Placenta or FactKind.LabourSign or FactKind.WaterBroke or FactKind.Presentation or FactKind.Breeding or FactKind.PregnancyCheck or FactKind.SpitOff or FactKind.QuestionDue;
        var open = draft.Plan.Where(task => task.OpenAt(draft.Now) && CareTaskWords.Word(task.Key.Name) == (fact.Task ?? FactWords.Word(fact.Kind))).Select(task => task.Key.Animal).ToHashSet();
        var likely = draft.State.Animals.Where(animal => animal.State is not (HerdEntryState.Dead or HerdEntryState.Sold) && (ofDams ? animal.Role == HerdRole.Dam : animal.Role is HerdRole.Newborn or HerdRole.Young))
            .OrderByDescending(animal => open.Contains(animal.Id)).ThenByDescending(animal => animal.State == HerdEntryState.Due).ThenByDescending(animal => animal.Born)
            .Select(animal => animal.Name).Take(fact.Name is null ? Choices : Choices - 1);
        return fact.Name is { } unknown && fact.Kind != FactKind.Roster ? [.. likely, draft.Phrases.Say("ask.add", ("name", unknown))] : [.. likely];
    }

    private static string Plain(string text) => text.Trim().TrimEnd('.', '!').ToUpperInvariant().Replace('’', '\'');
}

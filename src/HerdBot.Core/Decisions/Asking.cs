using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Core.Wording;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.Core.Decisions;

/// <summary>Asks for the one thing that is missing, and takes the answer.</summary>
internal static class Asking
{
    private const int MostChoices = 3;
    private static readonly string[] Choices = ["button.yes", "button.no", "ask.twin.yes", "ask.twin.no", "ask.add", .. Naming.RoleWords];
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("H:mm");

    /// <summary>Asks, and keeps the facts that wait.</summary>
    public static void Ask(Draft draft, Ask ask, ImmutableArray<Fact> waiting, string by, string? message, string? text = null, ImmutableArray<string>? choices = null)
    {
        foreach (var before in draft.State.Questions.Where(question => question.By == by && question.Ask == ask && question.Waiting.SequenceEqual(waiting)))
        {
            draft.Add(new HerdEvent.QuestionClosed(before.Post, true)); // Asked once more, it waits but once.
        }
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
        foreach (var question in draft.State.Questions.Reverse())
        {
            if (question.Choices.FirstOrDefault(choice => IsChoice(question, choice, text)) is { } choice)
            {
                return (question, choice);
            }
            if (question.Ask == Facts.Ask.Time && TimeOf(draft, text) is not null)
            {
                return (question, text);
            }
            if (question.Ask == Facts.Ask.Animal && (replyTo?.Number == question.Post || question == draft.State.Questions[^1])
                && Meant(draft, text) is { } named)
            {
                return (question, named.Name);
            }
        }
        return null;
    }

    /// <summary>Whether some words are a choice, as its button has it or as the other language would.</summary>
    private static bool IsChoice(Question question, string choice, string words)
    {
        var name = Unknown(question) ?? "";
        return Phrases.Plain(choice) == Phrases.Plain(words)
            || Choices.Any(key => Phrases.Is(key, choice, ("name", name)) && Phrases.Is(key, words, ("name", name)));
    }

    /// <summary>The name that nobody knew; null where the question is about another thing.</summary>
    private static string? Unknown(Question question) => question.Waiting.Where(fact => fact.Kind != FactKind.Roster).Select(fact => fact.Name).FirstOrDefault(name => name is not null);

    /// <summary>Closes what nobody has answered in time.</summary>
    public static void CloseLapsed(Draft draft)
    {
        foreach (var question in draft.State.Questions.Where(question => question.At + Waits(draft.Farm) <= draft.Now))
        {
            draft.Add(new HerdEvent.QuestionClosed(question.Post, false));
        }
    }

    /// <summary>How long a question waits for its answer.</summary>
    public static Duration Waits(Farm farm) => farm.Tables.Values.Select(table => table.Time(CareKeys.PostingQuestionLapses)).DefaultIfEmpty(Duration.FromHours(12)).Min();

    /// <summary>What lapsed, to be told once: "Not recorded, nobody said which animal: 98.4 °F (Ben 7:05)."; empty where nothing did.</summary>
    public static string Lapsed(Draft draft) => string.Join("\n", draft.State.Lapsed.GroupBy(question => question.Ask).OrderByDescending(ask => ask.Key).Select(asked =>
        draft.Phrases.Say($"post.lapsed.{FactWords.Word(asked.Key)}", ("list", string.Join("; ", asked.Select(question => draft.Phrases.Say("post.lapsed.one", ("what", What(draft, question)), ("by", question.By), ("at", draft.Speaker.Clock(question.At)))))))));

    private static string What(Draft draft, Question question) =>
        string.Join(", ", question.Waiting.Select(fact => $"{(fact.Animal is null or Fact.AskAnimal ? "" : draft.Speaker.Name(fact.Animal) + " ")}{draft.FactLines.Say(fact with { Name = fact.Kind == FactKind.Roster ? fact.Name : null }, question.By)}".TrimEnd(' ', ',')));

    /// <summary>The animal that some words name and nothing else; null where they name none.</summary>
    private static Animal? Meant(Draft draft, string text) => draft.State.Animals.FirstOrDefault(animal => Speaker.IsName(animal.Name, text))
        ?? draft.State.Named(text.Trim().TrimEnd('.')) ?? draft.State.Named(draft.Farm.Nicknames.GetValueOrDefault(text.Trim().TrimEnd('.')));

    /// <summary>The waiting facts, completed by an answer; without the first where the answer says no to it.</summary>
    /// <param name="draft">The decision so far.</param>
    /// <param name="question">What was asked.</param>
    /// <param name="answer">One of its choices, or a name.</param>
    /// <param name="confirmed">The one fact that is beyond doubt now; null where the answer confirms none.</param>
    public static ImmutableArray<Fact> Complete(Draft draft, Question question, string answer, out Fact? confirmed)
    {
        confirmed = null;
        draft.Add(new HerdEvent.QuestionClosed(question.Post, true));
        if (Phrases.Is("button.no", answer) || Phrases.Is("ask.twin.no", answer))
        {
            return question.Waiting[1..];
        }
        var facts = Completed(draft, question, answer);
        confirmed = question.Ask == Facts.Ask.Sure ? facts[0] : null;
        return facts;
    }

    private static ImmutableArray<Fact> Completed(Draft draft, Question question, string answer)
    {
        return question.Ask switch
        {
            Facts.Ask.Animal => WithAnimal(draft, question, answer),
            Facts.Ask.Unit when FactWords.TryUnit(answer, out var unit) => [.. question.Waiting.Select(fact => fact.Value is null || fact.Unit is not null ? fact : fact with { Unit = unit })],
            Facts.Ask.Unit => [question.Waiting[0] with { Text = $"{question.Waiting[0].Text}, {answer}" }, .. question.Waiting[1..]],
            Facts.Ask.Time => [question.Waiting[0] with { At = TimeOf(draft, answer) }, .. question.Waiting[1..]],
            Facts.Ask.Sure when question.Waiting[0].Kind == FactKind.Roster => [Naming.Answered(question.Waiting[0], answer), .. question.Waiting[1..]],
            _ when Phrases.Is("ask.twin.yes", answer) => [question.Waiting[0] with { N = 2 }, .. question.Waiting[1..]],
            _ => question.Waiting,
        };
    }

    /// <summary>A bare figure is of the animal whose figure that person was asked for last.</summary>
    public static Fact Filled(Draft draft, Fact fact, string by) => fact is { Animal: Fact.AskAnimal, Value: not null }
        && draft.State.Questions.LastOrDefault(question => question.Ask == Facts.Ask.Value && question.By == by && Fits(question.Waiting[0], fact))?.Waiting[0].Animal is { } animal
        ? fact with { Animal = animal } : fact;

    private static bool Fits(Fact waiting, Fact fact) => waiting.Kind == fact.Kind || (waiting.Kind == FactKind.Done && waiting.Task == FactWords.Word(fact.Kind));

    /// <summary>Closes the questions that a fuller statement has answered; what else waited with it goes on waiting.</summary>
    public static void CloseAnsweredBy(Draft draft, IEnumerable<HerdRecord> recorded)
    {
        foreach (var record in recorded.ToList())
        {
            foreach (var question in draft.State.Questions.Where(question => question.Waiting.Any(waiting => Settles(question, waiting, record))))
            {
                var left = question.Ask == Facts.Ask.Animal ? question.Waiting.RemoveAll(waiting => Settles(question, waiting, record)) : [];
                draft.Add(new HerdEvent.QuestionClosed(question.Post, true));
                if (!left.IsEmpty)
                {
                    draft.Add(new HerdEvent.QuestionAsked(question with { Waiting = left }));
                }
            }
        }
    }

    /// <summary>A missing figure may come from anybody; which animal was meant, or whether it is so, from the one who wrote it.</summary>
    private static bool Settles(Question question, Fact waiting, HerdRecord record) => question.Ask switch
    {
        Facts.Ask.Value or Facts.Ask.Unit or Facts.Ask.Time => Fits(waiting, record.Fact) && (waiting.Animal is null or Fact.AskAnimal || waiting.Animal == record.Fact.Animal),
        Facts.Ask.Animal => question.By == record.By && waiting.Kind == record.Fact.Kind && waiting.Neg == record.Fact.Neg && (waiting.Value is null || waiting.Value == record.Fact.Value),
        _ => question.By == record.By && waiting.Kind == record.Fact.Kind && waiting.Animal == record.Fact.Animal,
    };

    private static ImmutableArray<Fact> WithAnimal(Draft draft, Question question, string answer)
    {
        var unknown = Unknown(question) is { } name && Phrases.Is("ask.add", answer, ("name", name)) ? name : null;
        var role = question.Waiting.Any(fact => fact.Kind is FactKind.Birth or FactKind.Placenta or FactKind.LabourSign or FactKind.WaterBroke or FactKind.Breeding) ? HerdRole.Dam : HerdRole.Young;
        IEnumerable<Fact> added = unknown is null ? [] : [new Fact(FactKind.Roster) { Animal = unknown, Name = unknown, Field = RosterWords.Added, Traits = new AnimalTraits(role) }];
        var meant = unknown ?? Meant(draft, answer)?.Name ?? answer;
        return [.. added, .. question.Waiting.Select(fact => fact.Animal == Fact.AskAnimal || fact.Animal is null ? fact with { Animal = meant, Name = fact.Kind == FactKind.Roster ? fact.Name : null } : fact)];
    }

    private static string Text(Draft draft, Ask ask, Fact fact, string by)
    {
        var what = ask == Facts.Ask.Value && CareTaskWords.TryParse(fact.Task ?? FactWords.Word(fact.Kind), out var reading)
            ? draft.TaskLines.Noun(reading) : fact is { Kind: FactKind.Roster, Animal: Fact.AskAnimal, Name: { } name } ? name : draft.FactLines.Say(fact with { Name = null }, by);
        var animal = fact.Animal is null or Fact.AskAnimal ? "" : draft.Speaker.Name(fact.Animal);
        (string, string)[] values = [("what", what), ("animal", animal), ("name", fact.Name ?? "")];
        var key = ask switch
        {
            Facts.Ask.Animal => Alike(draft, fact).Length > 1 ? "ask.animal.alike" : fact.Name is not null && fact.Kind != FactKind.Roster ? "ask.animal.unknown" : "ask.animal",
            Facts.Ask.Value => fact.Kind == FactKind.Temperature ? "ask.value.cold" : "ask.value",
            Facts.Ask.Unit => "ask.unit",
            Facts.Ask.Time => fact.Kind == FactKind.Breeding ? "ask.mating.day" : "ask.time",
            _ => fact.Kind == FactKind.Death ? "ask.sure.death" : "ask.sure",
        };
        return draft.Phrases.Say(key, values).TrimStart(',', ' ').Replace(" ,", "", StringComparison.Ordinal);
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
            .Select(animal => Speaker.Lines(draft.Called(animal))).Take(fact.Name is null ? MostChoices : MostChoices - 1);
        var alike = Alike(draft, fact);
        return alike.Length > 1 ? [.. alike.Take(MostChoices)] : fact.Name is { } unknown && fact.Kind != FactKind.Roster ? [.. likely, draft.Phrases.Say("ask.add", ("name", unknown))] : [.. likely];
    }

    /// <summary>Those that a name may mean: it is a part of theirs.</summary>
    private static ImmutableArray<string> Alike(Draft draft, Fact fact) => fact is not { Animal: Fact.AskAnimal, Name: { } said, Kind: not FactKind.Roster } ? []
        : [.. draft.State.Animals.Where(animal => animal.IsHere() && draft.State.OtherNames(animal.Id).Prepend(animal.Name)
            .Any(name => name.Split(' ').Contains(said, StringComparer.OrdinalIgnoreCase))).Select(draft.Called)];

    /// <summary>"7:15", "7:15 PM": the latest such hour before now; null for any other words.</summary>
    private static FactTime? TimeOf(Draft draft, string text)
    {
        var words = text.Trim().TrimEnd('.').ToUpperInvariant();
        var half = words.EndsWith("AM", StringComparison.Ordinal) ? 0 : words.EndsWith("PM", StringComparison.Ordinal) ? 12 : (int?)null;
        if (Clock.Parse(words.TrimEnd('A', 'P', 'M', ' ')) is not { Success: true, Value: var time })
        {
            return null;
        }
        var today = draft.Farm.Clock.Day(draft.Now);
        int[] hours = half is { } given ? [(time.Hour % 12) + given] : time.Hour is >= 1 and <= 12 ? [time.Hour % 12, (time.Hour % 12) + 12] : [time.Hour];
        var latest = new[] { today.PlusDays(-1), today }.SelectMany(day => hours.Select(hour => day + new LocalTime(hour, time.Minute)))
            .Where(at => draft.Farm.Clock.At(at) <= draft.Now).Max();
        return FactTime.Of(latest);
    }
}

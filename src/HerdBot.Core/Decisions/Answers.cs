using System.Globalization;
using HerdBot.Core.Care;
using HerdBot.Core.Due;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>Answers questions over the records.</summary>
internal static class Answers
{
    private const int MostLines = 8;

    public static string Answer(Draft draft, Fact question) => question.Kind switch
    {
        FactKind.QuestionDue => Due(draft, question),
        FactKind.QuestionStatus => Status(draft, question),
        _ => Open(draft),
    };

    private static string Due(Draft draft, Fact question)
    {
        if (question.Animal is null)
        {
            var dated = draft.State.Roster.Where(animal => animal.Role == HerdRole.Dam).Select(dam => (Dam: dam, Window: DueWindow(draft, dam)))
                .Where(dam => dam.Window is not null).OrderBy(dam => dam.Window!.Value.Middle).Take(MostLines).ToList();
            return dated.Count == 0 ? draft.Phrases.Say("answer.due.nobody")
                : draft.Phrases.Say("answer.due.next", ("list", draft.Speaker.List(dated.Select(dam => $"{dam.Dam.Name} {draft.Speaker.Date(dam.Window!.Value.Middle)}"))));
        }
        if (Recording.AnimalOf(draft.State, question) is not { } dam)
        {
            return draft.Phrases.Say("answer.status.none", ("animal", draft.Speaker.Name(question.Animal)));
        }
        var baby = draft.State.Newborns.LastOrDefault(newborn => newborn.Dam == dam.Id);
        if (DueWindow(draft, dam) is not { } due)
        {
            return baby is null ? draft.Phrases.Say("answer.due.none", ("animal", draft.Called(dam)))
                : draft.Phrases.Say("answer.due.with_cria", ("animal", draft.Called(dam)), ("baby", draft.Called(baby)), ("at", draft.Speaker.Clock(baby.Born!.Value)));
        }
        var sire = due.Mating.Fact.Sire is { } male ? $" ({male})" : "";
        var days = Period.DaysBetween(draft.Farm.Clock.Day(due.Mating.At), draft.Farm.Clock.Day(draft.Now));
        return draft.Phrases.Say("answer.due", ("animal", draft.Called(dam)), ("date", draft.Speaker.Date(due.Middle)), ("from", draft.Speaker.Date(due.From)), ("to", draft.Speaker.Date(due.To)),
            ("bred", draft.Speaker.Date(draft.Farm.Clock.Day(due.Mating.At))), ("sire", sire), ("days", days.ToString(CultureInfo.InvariantCulture)));
    }

    /// <summary>Plain days from the newest mating that no birth has followed; null where there is none.</summary>
    private static (LocalDate Middle, LocalDate From, LocalDate To, HerdRecord Mating)? DueWindow(Draft draft, Animal dam)
    {
        var mating = draft.Newest(dam.Id, FactKind.Breeding);
        if (mating is null || draft.Farm.TableOf(dam.Species) is not { } table || draft.State.Newborns.Any(baby => baby.Dam == dam.Id && baby.Born > mating.At))
        {
            return null;
        }
        var bred = draft.Farm.Clock.Day(mating.At);
        return DueForecast.Of(table, new DueCase(dam.Species, [Mating.On(bred)], draft.Farm.Clock.Day(draft.Now))) is { } due ? (due.Median, due.Window(0.8).From, due.Window(0.8).To, mating) : null;
    }

    private static string Status(Draft draft, Fact question)
    {
        var animal = Recording.AnimalOf(draft.State, question);
        if (animal is null)
        {
            return question.Animal is null ? Open(draft) : draft.Phrases.Say("answer.status.none", ("animal", draft.Speaker.Name(question.Animal)));
        }
        return CareTaskWords.TryParse(question.Task, out var task) ? StatusOf(draft, animal, task) : Whole(draft, animal);
    }

    private static string StatusOf(Draft draft, Animal animal, CareTaskName task)
    {
        var last = draft.State.RecordsOf(animal.Id).LastOrDefault(record => !record.Withdrawn
            && (FactWords.Word(record.Fact.Kind) == CareTaskWords.Word(task) || record.Fact.Kind == FactKind.Done && record.Fact.Task == CareTaskWords.Word(task)));
        return last is null
            ? draft.Phrases.Say("answer.status.no", ("animal", draft.Called(animal)), ("task", draft.TaskLines.Noun(task)))
            : draft.Phrases.Say("answer.status.last", ("animal", draft.Called(animal)), ("what", draft.FactLines.Say(last.Fact with { At = null }, last.By)), ("by", last.By), ("at", draft.Speaker.Clock(last.At)));
    }

    private static string Whole(Draft draft, Animal animal)
    {
        var newest = draft.State.Records.Where(record => !record.Withdrawn && (record.Animal == animal.Id || record.Newborn == animal.Id)
                && record.Fact.Kind is not (FactKind.Claim or FactKind.NotDone))
            .GroupBy(record => (record.Fact.Kind, record.Fact.Task)).Select(kind => kind.Last()).OrderBy(record => record.At).TakeLast(MostLines).ToList();
        if (newest.Count == 0)
        {
            return draft.Phrases.Say("answer.status.none", ("animal", draft.Called(animal)));
        }
        var facts = string.Join(", ", newest.Select(record => $"{draft.FactLines.Say(record.Fact with { At = null }, record.By)} {draft.Speaker.Clock(record.At)}"));
        var born = newest.Find(record => record.Newborn == animal.Id);
        if (born is not null)
        {
            facts = string.Join(", ", newest.Select(record => record == born ? draft.FactLines.Say(born) : $"{draft.FactLines.Say(record.Fact with { At = null }, record.By)} {draft.Speaker.Clock(record.At)}"));
        }
        var open = PostingPlan.Gravest(draft.Plan.Where(task => task.Key.Animal == animal.Id && task.OpenAt(draft.Now)), draft.Now);
        return draft.Phrases.Say("answer.status", ("animal", draft.Called(animal)), ("facts", facts))
            + (open.Length == 0 ? "" : "\n" + draft.Phrases.Say("answer.status.open", ("tasks", draft.Speaker.List(open.Select(draft.TaskLines.Short)))));
    }

    private static string Open(Draft draft)
    {
        var open = draft.Plan.Where(task => task.OpenAt(draft.Now)).ToList();
        return open.Count == 0 ? draft.Phrases.Say("answer.tasks.none")
            : draft.Phrases.Say("answer.tasks") + "\n" + Overview.Of(draft, open);
    }
}

/// <summary>Tasks of several animals, a line an animal.</summary>
internal static class Overview
{
    private const int Most = 10;

    public static string Of(Draft draft, IEnumerable<CareTask> tasks)
    {
        var animals = PostingPlan.Gravest(tasks, draft.Now).GroupBy(task => task.Key.Animal).ToList();
        var lines = animals.Take(Most).Select(animal => $"{draft.TaskLines.Name(animal.Key)}: {string.Join(", ", animal.Select(draft.TaskLines.Short))}");
        var more = animals.Count - Most;
        return string.Join("\n", more > 0 ? lines.Append(draft.Phrases.Say("post.more", ("n", more.ToString(CultureInfo.InvariantCulture)))) : lines);
    }
}

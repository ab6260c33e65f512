using System.Globalization;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;

namespace HerdBot.Core.Decisions;

/// <summary>Answers questions over the records.</summary>
internal static class Answers
{
    private const int MostLines = 8;

    public static string Answer(Draft draft, Fact question) => question.Kind switch
    {
        FactKind.QuestionDue => DueAnswers.Answer(draft, question),
        FactKind.QuestionStatus => Status(draft, question),
        _ => Open(draft),
    };

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
        var due = animal.Role == HerdRole.Dam && draft.State.Due(draft.Farm).Of(animal.Id, draft.Farm.Clock.Day(draft.Now)) is not null
            ? "\n" + DueAnswers.Answer(draft, new Fact(FactKind.QuestionDue) { Animal = animal.Name }) : "";
        var open = PostingPlan.Gravest(draft.Plan.Where(task => task.Key.Animal == animal.Id && task.OpenAt(draft.Now)), draft.Now);
        return draft.Phrases.Say("answer.status", ("animal", draft.Called(animal)), ("facts", facts)) + due
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
        var all = tasks.ToList();
        var looks = all.Where(task => task.Key.Name == CareTaskName.LookIn && all.TrueForAll(other => other.Key.Name == CareTaskName.LookIn || other.Key.Animal != task.Key.Animal)).ToList();
        var animals = PostingPlan.Gravest(all.Except(looks), draft.Now).GroupBy(task => task.Key.Animal).ToList();
        var lines = animals.Take(Most).Select(animal => $"{draft.TaskLines.Name(animal.Key)}: {string.Join(", ", animal.Select(draft.TaskLines.Short))}");
        var more = animals.Count - Most;
        return string.Join("\n", [.. lines, .. more > 0 ? [More(draft, more)] : Array.Empty<string>(), .. looks.Count > 0 ? [LookIn(draft, looks)] : Array.Empty<string>()]);
    }

    /// <summary>"Look in on Sage, Fern and 3 more.": the likeliest first.</summary>
    private static string LookIn(Draft draft, List<CareTask> looks)
    {
        var names = looks.OrderByDescending(look => look.Figures[CloseUp.Chance], StringComparer.Ordinal).Select(look => draft.TaskLines.Name(look.Key.Animal)).Distinct().ToList();
        return draft.Phrases.Say("post.look_in", ("names", draft.Speaker.List(names.Count > Most ? [.. names.Take(Most), More(draft, names.Count - Most)] : names)));
    }

    private static string More(Draft draft, int more) => draft.Phrases.Say("post.more", ("n", more.ToString(CultureInfo.InvariantCulture)));
}

using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>Answers a message that was recorded: a mark, a receipt, or what to do now.</summary>
internal static class Receipts
{
    private const string Mark = "👍";
    private static readonly Duration LookAhead = Duration.FromHours(8);

    /// <summary>Answers.</summary>
    /// <param name="draft">The decision so far.</param>
    /// <param name="records">What is new on record.</param>
    /// <param name="mended">What was mended or taken back.</param>
    /// <param name="text">The message.</param>
    /// <param name="message">The chat's id of it.</param>
    public static void Give(Draft draft, IReadOnlyList<HerdRecord> records, IReadOnlyList<Mended> mended, string text, string message)
    {
        var said = mended.Select(one => one.Sentence).ToList();
        HerdRecord[] about = [.. records, .. mended.SelectMany(one => one.Records)];
        var ready = Ready(draft, about);
        var special = about.Where(record => !record.Withdrawn).SelectMany(record => SpecialLines.Of(draft, record)).Distinct().ToList();
        var grave = ready.Length > 0 && ready[0].LevelAt(draft.Now) == Level.Vet;
        if (ready.IsEmpty && special.Count == 0 && said.Count == 0)
        {
            draft.Say(Plain(draft, records, text)
                ? draft.Post(PostKind.React, Mark) with { ReplyTo = message }
                : PostTexts.WithTasks(draft, draft.Post(PostKind.Reply, Receipt(draft, records) + Next(draft, about)) with { ReplyTo = message }, [], mends: true));
            return;
        }
        var lines = new List<string>();
        if (grave)
        {
            lines.Add(PostTexts.Alarm(draft, ready));
            var told = ready.Select(task => task.Key.Name).ToHashSet();
            lines.AddRange(said);
            lines.AddRange(special.Where(_ => !told.Contains(CareTaskName.Warm) && !told.Contains(CareTaskName.Temperature)));
        }
        else
        {
            lines.AddRange(records.Count > 0 ? [Receipt(draft, records)] : []);
            lines.AddRange(said);
            lines.AddRange(special);
            lines.AddRange(Now(draft, ready));
        }
        var body = string.Join("\n", lines) + (grave || ready.Length > 3 ? "" : Next(draft, about));
        draft.Say(PostTexts.WithTasks(draft, draft.Post(grave ? PostKind.Alarm : PostKind.Reply, body) with { ReplyTo = message }, [.. ready, .. Ahead(draft, about, ready)], mends: records.Count > 0));
    }

    /// <summary>What is asked with the answer: all that is due of the pairs the message is about.</summary>
    private static ImmutableArray<CareTask> Ready(Draft draft, IReadOnlyList<HerdRecord> records)
    {
        var pairs = Pairs(draft, records);
        return PostingPlan.Gravest(PostingPlan.Ready(draft.State, draft.Farm, draft.Plan, draft.Now, records.Any(record => record.Newborn is not null)).Where(task => pairs.Contains(task.Pair)), draft.Now);
    }

    /// <summary>The next reading while it warms is told with the answer.</summary>
    private static IEnumerable<CareTask> Ahead(Draft draft, IReadOnlyList<HerdRecord> records, ImmutableArray<CareTask> ready) =>
        records.Any(record => record.Fact.Kind == FactKind.Temperature)
            ? draft.Plan.Where(task => task.Key.Name == CareTaskName.Temperature && task.StateAt(draft.Now) == TaskState.Ahead && task.Prompt
                && records.Any(record => record.Animal == task.Key.Animal) && ready.All(told => told.Key != task.Key)).Take(1)
            : [];

    private static HashSet<AnimalId> Pairs(Draft draft, IReadOnlyList<HerdRecord> records) =>
        [.. records.Select(record => draft.State.Find(record.Animal) is { Dam: { } dam } ? dam : record.Animal).Where(id => id is not null).Select(id => id!)];

    private static string Receipt(Draft draft, IReadOnlyList<HerdRecord> records) =>
        string.Join("\n", records.GroupBy(record => record.Newborn ?? record.Animal).Select(animal =>
        {
            var facts = string.Join(", ", animal.Select(draft.FactLines.Say));
            return animal.Key is null ? $"{facts}."
                : draft.Phrases.Say("reply.receipt", ("animal", draft.TaskLines.Name(animal.Key)), ("facts", facts));
        }));

    private static IEnumerable<string> Now(Draft draft, ImmutableArray<CareTask> ready)
    {
        var told = ready.Where(task => task.Key.Name != CareTaskName.Warm).ToImmutableArray();
        if (told.IsEmpty)
        {
            return [];
        }
        return told.Length == 1 || told[0].LevelAt(draft.Now) == Level.Act || told[0] is { Wording: "early" }
            ? [PostTexts.Reminder(draft, told)]
            : [draft.Phrases.Say("post.now", ("tasks", string.Join(", ", told.Select(task => Named(draft, task)))))];
    }

    /// <summary>The next two things, with their hours.</summary>
    private static string Next(Draft draft, IReadOnlyList<HerdRecord> records)
    {
        var pairs = Pairs(draft, records);
        var next = draft.Plan.Where(task => pairs.Contains(task.Pair) && task.StateAt(draft.Now) == TaskState.Ahead && !task.RoundUpOnly && task.Due < draft.Now + LookAhead)
            .OrderBy(task => task.Due).Take(2).Select(draft.TaskLines.Short).ToList();
        return next.Count == 0 ? "" : "\n" + draft.Phrases.Say("post.next", ("tasks", string.Join(", ", next)));
    }

    private static string Named(Draft draft, CareTask task) =>
        draft.State.Find(task.Key.Animal)?.Born is null ? $"{draft.TaskLines.Name(task.Key.Animal)} {draft.TaskLines.Short(task)}" : draft.TaskLines.Short(task);

    /// <summary>A mark will do: the animal is beyond doubt, so is the figure, and there is nothing new to say.</summary>
    private static bool Plain(Draft draft, IReadOnlyList<HerdRecord> records, string text) =>
        records.All(record => record.Fact.Kind is not (FactKind.Birth or FactKind.Roster) && (record.Fact.Value is null || record.Fact.Kind != FactKind.Weight || HasUnit(text))
            && !record.Fact.Unsure && (record.Animal is null || BeyondDoubt(draft, record, text)));

    private static bool HasUnit(string text) => text.Any(char.IsLetter) || text.Contains('#', StringComparison.Ordinal);

    private static bool BeyondDoubt(Draft draft, HerdRecord record, string text)
    {
        var animal = draft.State.Find(record.Animal);
        var name = draft.State.Find(animal?.Dam)?.Name ?? animal?.Name;
        return (name is not null && text.Contains(name, StringComparison.OrdinalIgnoreCase))
            || draft.State.Newborns.Count(baby => baby.State is null && baby.Born > draft.Now - Duration.FromDays(14)) == 1;
    }
}

using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Posting;

namespace HerdBot.Core.Decisions;

/// <summary>The words of reminders, alarms and round-ups: what to do first, short enough for one eye at four in the morning.</summary>
internal static class PostTexts
{
    public static Post Of(Draft draft, DuePost due)
    {
        var gap = due.Since is { } since ? draft.Phrases.Say("post.gap", ("since", draft.Speaker.Clock(since))) + "\n" : "";
        var text = due.Kind switch
        {
            PostKind.Alarm => Alarm(draft, due.Tasks),
            PostKind.RoundUp => RoundUp(draft, due.Tasks),
            _ => Reminder(draft, due.Tasks),
        };
        return WithTasks(draft, draft.Post(due.Kind, gap + text), due.Tasks);
    }

    private static string RoundUp(Draft draft, ImmutableArray<CareTask> tasks) => string.Join("\n", new[]
    {
        tasks.IsEmpty ? "" : draft.Phrases.Say("post.round_up") + "\n" + Overview.Of(draft, tasks), Asking.Lapsed(draft),
    }.Where(part => part.Length > 0));

    /// <summary>A post about tasks: its buttons answer the first that is open.</summary>
    public static Post WithTasks(Draft draft, Post post, ImmutableArray<CareTask> tasks, bool mends = false) => post with
    {
        Tasks = [.. tasks.Select(draft.Posted)],
        Buttons = draft.Buttons(tasks, mends),
    };

    /// <summary>"Vet now: …", the number, then the rest in a word each.</summary>
    public static string Alarm(Draft draft, ImmutableArray<CareTask> tasks)
    {
        var again = tasks.Where(task => task.LevelAt(draft.Now) == Level.Vet && task.Key.Animal == tasks[0].Key.Animal && Told(draft, task) && draft.TaskLines.Missing(task) is not null).ToList();
        if (again.Count > 1 && again[0] == tasks[0])
        {
            return $"{draft.Phrases.Say("vet.now")} {draft.TaskLines.Sum(again)}\n{draft.TaskLines.Phone()}{Also(draft, [tasks[0], .. tasks.Except(again)], 1)}";
        }
        var first = draft.TaskLines.Line(tasks[0]);
        return $"{draft.Phrases.Say("vet.now")} {first}\n{draft.TaskLines.Phone()}{Also(draft, tasks, 1)}";
    }

    public static string Reminder(Draft draft, ImmutableArray<CareTask> tasks)
    {
        var whole = tasks.Length == 2 ? 2 : 1;
        return string.Join("\n", tasks.Take(whole).Select(draft.TaskLines.Line)) + Also(draft, tasks, whole);
    }

    private static bool Told(Draft draft, CareTask task) => draft.State.Posted.GetValueOrDefault(task.Key)?.Step == task.StepAt(draft.Now)?.Label;

    private static string Also(Draft draft, ImmutableArray<CareTask> tasks, int told)
    {
        if (tasks.Length <= told)
        {
            return "";
        }
        var rest = tasks.Skip(told).GroupBy(task => task.Key.Animal).OrderByDescending(animal => animal.Key == tasks[0].Key.Animal).Select(animal =>
            (animal.Key == tasks[0].Key.Animal ? "" : draft.TaskLines.Name(animal.Key) + ": ") + string.Join(", ", animal.Select(draft.TaskLines.Short)));
        return "\n" + draft.Phrases.Say("post.also", ("tasks", string.Join("; ", rest)));
    }
}

using HerdBot.Core.Care;
using HerdBot.Core.Facts;

namespace HerdBot.Core.Decisions;

/// <summary>Which fact answers which task.</summary>
internal static class OwnKinds
{
    /// <summary>The fact that a bare "done" on a task records: the task's own kind, or "done" with the task's word.</summary>
    /// <param name="task">The task.</param>
    /// <param name="animal">The animal's name.</param>
    /// <param name="which">Which of its kind: dates that were asked for are noted, not given.</param>
    public static Fact Done(CareTaskName task, string? animal, string? which = null)
    {
        var word = CareTaskWords.Word(task);
        return task switch
        {
            CareTaskName.CordWatch => new Fact(FactKind.CordBleeding) { Animal = animal, Neg = true },
            CareTaskName.Vaccination when which == Weaning.AskedOnce => new Fact(FactKind.Done) { Animal = animal, Task = word },
            _ when FactWords.TryKind(word, out var kind) => new Fact(kind) { Animal = animal },
            _ => new Fact(FactKind.Done) { Animal = animal, Task = word },
        };
    }

    /// <summary>A task that is done by a figure alone.</summary>
    public static bool IsReading(CareTaskName task) => task is CareTaskName.Temperature or CareTaskName.Weight or CareTaskName.Igg;

    /// <summary>Facts that people hold for granted and that change nothing in the herd's records.</summary>
    public static bool IsQuestion(FactKind kind) =>
        kind is FactKind.QuestionDue or FactKind.QuestionStatus or FactKind.QuestionTasks or FactKind.QuestionHowto;

    /// <summary>Grave things are confirmed before they are recorded.</summary>
    public static bool IsGrave(FactKind kind) => kind is FactKind.Death;
}

using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Core.Wording;

namespace HerdBot.Core.Decisions;

/// <summary>The words of a button, typed: they do what the button does.</summary>
internal static class TypedButtons
{
    /// <summary>The button that some words are, as the post has it or as the other language would; null where they are none.</summary>
    public static Button? Of(Post shown, string words) => shown.Buttons.FirstOrDefault(button => Phrases.Same("button.", button.Label, words));

    /// <summary>What a task's button says, typed in answer to a post that tells of the task, or where only one open task has such a button; null else.</summary>
    /// <param name="draft">The decision so far.</param>
    /// <param name="words">What was typed.</param>
    /// <param name="told">The post that the words answer; null where they answer none.</param>
    public static Fact? Fact(Draft draft, string words, Post? told)
    {
        var meant = draft.Plan.Where(task => task.OpenAt(draft.Now) && draft.State.Posted.ContainsKey(task.Key) && (told is null || told.Tasks.Any(posted => posted.Key == task.Key)))
            .Select(task => (task, Verb: Of(draft.Post(PostKind.Reminder, "") with { Buttons = draft.Buttons([task], mends: false) }, words)?.Verb))
            .Where(answer => answer.Verb == ButtonVerb.Done || (answer.Verb is not null && told is not null)).ToList();
        if (meant.Count == 0 || (told is null && meant.Count > 1))
        {
            return null;
        }
        var (answered, verb) = told is null ? meant[0] : meant.MinBy(answer => told.Tasks.ToList().FindIndex(posted => posted.Key == answer.task.Key));
        return Press.Fact(draft, answered.Key, verb!.Value);
    }
}

using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>Decides what follows from a pressed button. The post itself shows the outcome; no new one is sent.</summary>
public static class Press
{
    /// <summary>Somebody pressed a button.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="now">When.</param>
    /// <param name="by">Who.</param>
    /// <param name="number">The post the button is under.</param>
    /// <param name="verb">What it does.</param>
    /// <param name="index">Which task or choice of the post.</param>
    /// <returns>The events; the press alone where the post is not known any more.</returns>
    public static ImmutableArray<HerdEvent> Button(HerdState state, Farm farm, Instant now, string by, int number, ButtonVerb verb, int index)
    {
        var draft = new Draft(state, farm, now);
        draft.Add(new HerdEvent.ButtonPressed(by, number, verb, index, now));
        if (draft.State.Posts.GetValueOrDefault(number)?.Post is not { } post)
        {
            return draft.Events;
        }
        if (verb == ButtonVerb.Choose)
        {
            Choose(draft, post, index, by);
        }
        else if (Mends(verb))
        {
            Mend(draft, post, verb, by);
        }
        else if (index >= 0 && index < post.Tasks.Length)
        {
            Answer(draft, post, post.Tasks[index].Key, verb, by);
        }
        return draft.Events;
    }

    private static void Choose(Draft draft, Post post, int index, string by)
    {
        Asking.CloseLapsed(draft);
        var question = draft.State.Questions.Find(question => question.Post == post.Number);
        if (question is null)
        {
            Closed(draft, post);
            return;
        }
        if (index < 0 || index >= question.Choices.Length)
        {
            return;
        }
        Hear.Take(draft, question, question.Choices[index], by, question.Message);
        draft.Say(draft.Post(PostKind.Edit, $"{post.Text}\n{question.Choices[index]}, {by}.") with { Edits = post.Number });
    }

    /// <summary>A question that lapsed, or was answered in words, says so once and loses its buttons.</summary>
    private static void Closed(Draft draft, Post post)
    {
        if (draft.State.Posts.Values.All(progress => progress.Post.Edits != post.Number))
        {
            draft.Say(draft.Post(PostKind.Edit, $"{post.Text}\n{draft.Phrases.Say("ask.closed")}") with { Edits = post.Number });
        }
    }

    private static void Answer(Draft draft, Post post, TaskKey key, ButtonVerb verb, string by)
    {
        var task = draft.Plan.FirstOrDefault(task => task.Key == key);
        if (task is null || !task.OpenAt(draft.Now))
        {
            Show(draft, post, Already(draft, key, task));
            return;
        }
        // One look goes round them all.
        var round = key.Name == CareTaskName.LookIn && verb == ButtonVerb.Done && post.Tasks.Count(told => told.Key.Name == CareTaskName.LookIn) > 1;
        var at = draft.Speaker.Clock(draft.Now);
        var fact = round ? Fact(draft, key, verb) with { Animal = null } : Fact(draft, key, verb);
        Recording.Record(draft, fact, by, null, draft.Now, key);
        Show(draft, post, fact.Kind is not (FactKind.Claim or FactKind.NotDone) ? draft.Phrases.Say("post.done", ("what", draft.TaskLines.Answer(key.Name)), ("by", by), ("at", at))
            : draft.Phrases.Say(verb == ButtonVerb.NotYet ? "post.not_yet" : "post.on_it", ("by", by), ("at", at)));
    }

    /// <summary>What a task's button says. A reading needs its figure: its first button takes it on.</summary>
    internal static Fact Fact(Draft draft, TaskKey key, ButtonVerb verb)
    {
        var animal = draft.State.Find(key.Animal)?.Name;
        return verb == ButtonVerb.Done && !OwnKinds.IsReading(key.Name) ? OwnKinds.Done(key.Name, animal, key.Which)
            : new Fact(verb == ButtonVerb.NotYet ? FactKind.NotDone : FactKind.Claim) { Animal = animal, Task = CareTaskWords.Word(key.Name) };
    }

    private static string Already(Draft draft, TaskKey key, CareTask? task)
    {
        var word = CareTaskWords.Word(key.Name);
        var record = draft.State.RecordsOf(key.Animal).LastOrDefault(record => !record.Withdrawn && (FactWords.Word(record.Fact.Kind) == word || record.Fact.Task == word) && record.Fact.Kind is not (FactKind.Claim or FactKind.NotDone));
        return record is null ? draft.Phrases.Say("post.already", ("by", "-"), ("at", draft.Speaker.Clock(task?.DoneAt ?? draft.Now)))
            : draft.Phrases.Say("post.already", ("by", record.By), ("at", draft.Speaker.Clock(record.At)));
    }

    /// <summary>Whether a button is about what the receipt states, not about a task.</summary>
    public static bool Mends(ButtonVerb verb) => verb is ButtonVerb.Mend or ButtonVerb.TakeBack or ButtonVerb.Keep;

    /// <summary>"Not right" under a receipt asks what was wrong: words that answer it mend what it states, and a button takes it back.</summary>
    internal static void Mend(Draft draft, Post post, ButtonVerb verb, string by)
    {
        var asked = draft.Phrases.Say("post.mend");
        var text = Shown(draft, post).Text.Replace("\n" + asked, "", StringComparison.Ordinal);
        switch (verb)
        {
            case ButtonVerb.Mend when Stated(draft, post).Count > 0:
                draft.Say(draft.Post(PostKind.Edit, $"{text}\n{asked}") with
                {
                    Edits = post.Number,
                    Tasks = post.Tasks,
                    Buttons = [new Button(draft.Phrases.Say("button.take_back"), ButtonVerb.TakeBack, 0), new Button(draft.Phrases.Say("button.keep"), ButtonVerb.Keep, 0)],
                });
                break;
            case ButtonVerb.TakeBack when Stated(draft, post) is [var stated, ..]:
                var taken = Mending.Undo(draft, new Fact(FactKind.Undo) { Target = stated.Id }, by, draft.Now)!;
                Show(draft, post, text, draft.Phrases.Say("post.taken_back", ("what", taken.Sentence), ("by", by), ("at", draft.Speaker.Clock(draft.Now))));
                break;
            default:
                Show(draft, post, text, "");
                break;
        }
    }

    /// <summary>What a receipt states, as far as it still stands.</summary>
    private static List<HerdRecord> Stated(Draft draft, Post receipt) =>
        receipt.ReplyTo is null ? [] : [.. draft.State.Records.Where(record => record.Message == receipt.ReplyTo && !record.Withdrawn)];

    /// <summary>A post as the chat shows it now.</summary>
    internal static Post Shown(Draft draft, Post post) => draft.State.Posts.Values.Select(progress => progress.Post).LastOrDefault(edit => edit.Edits == post.Number) ?? post;

    private static void Show(Draft draft, Post post, string line) => Show(draft, post, Shown(draft, post).Text, line);

    /// <summary>The post with what came of it, and the buttons of the first of its tasks that is still open.</summary>
    private static void Show(Draft draft, Post post, string text, string line)
    {
        if (line.Length > 0 && text.EndsWith(line, StringComparison.Ordinal))
        {
            return;
        }
        var tasks = post.Tasks.Select(told => draft.Plan.FirstOrDefault(task => task.Key == told.Key)).ToList();
        draft.Say(draft.Post(PostKind.Edit, $"{text}\n{line}".TrimEnd()) with
        {
            Edits = post.Number,
            Tasks = [.. tasks.Where(task => task is not null).Select(task => draft.Posted(task!))],
            Buttons = draft.Buttons(tasks, mends: Stated(draft, post).Count > 0),
        });
    }
}

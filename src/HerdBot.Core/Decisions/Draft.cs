using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Core.Wording;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>A decision while it is made: the events so far and the herd as they leave it.</summary>
internal sealed class Draft(HerdState state, Farm farm, Instant now)
{
    private const int MostButtons = 3;
    private readonly HerdState before = state;
    private readonly ImmutableArray<HerdEvent>.Builder events = ImmutableArray.CreateBuilder<HerdEvent>();

    public HerdState State { get; private set; } = state;
    public Farm Farm { get; } = farm;
    public Instant Now { get; } = now;
    public Speaker Speaker { get; } = new(farm, now);
    public Phrases Phrases => Speaker.Phrases;
    public TaskLines TaskLines => new(State, Speaker);
    public FactLines FactLines => new(Speaker);
    public ImmutableArray<HerdEvent> Events => events.ToImmutable();

    /// <summary>The plan as the events so far leave it.</summary>
    public ImmutableArray<CareTask> Plan
    {
        get
        {
            var plan = CarePlan.At(State, Farm, Now);
            // Whoever goes on from the state before the decision may take over what is known.
            before.Planned = State.Planned;
            return plan;
        }
    }

    public void Add(HerdEvent happened)
    {
        events.Add(happened);
        State = State.Apply(happened);
    }

    /// <summary>Queues a post and returns its number.</summary>
    public int Say(Post post)
    {
        var numbered = post with { Number = State.PostCount + 1, At = Now };
        Add(new HerdEvent.PostQueued(numbered));
        return numbered.Number;
    }

    public Post Post(PostKind kind, string text) => new(0, kind, Posting.Post.Group, Speaker.Lines(text), Now);

    /// <summary>An animal as people call it.</summary>
    public string Called(Animal animal) => Speaker.Name(animal.Name);

    /// <summary>A task as a post tells of it.</summary>
    public PostedTask Posted(CareTask task)
    {
        var lapsed = task.StateAt(Now) == TaskState.Lapsed;
        return new PostedTask(task.Key, State.Find(task.Key.Animal)?.Name ?? task.Key.Animal.Value, task.Due, task.StateAt(Now),
            lapsed ? Level.Vet : task.LevelAt(Now), lapsed ? PostingPlan.LapsedStep : task.OpenAt(Now) ? task.StepAt(Now)!.Label : "");
    }

    /// <summary>The buttons of a post: those that answer its first open task, the whole answer on each, and on a receipt the one that mends it; three at most.</summary>
    /// <param name="tasks">The tasks of the post; null where the plan has one no more.</param>
    /// <param name="mends">It is a receipt of something on record: nobody has been asked yet, so "not yet" gives way.</param>
    public ImmutableArray<Button> Buttons(IReadOnlyList<CareTask?> tasks, bool mends)
    {
        var open = tasks.ToList().FindIndex(task => task?.OpenAt(Now) == true);
        var answers = open < 0 ? [] : Buttons(tasks[open]!, open);
        var mend = new Button(Phrases.Say("button.mend"), ButtonVerb.Mend, 0);
        return !mends ? answers : [.. answers.Length < MostButtons ? answers : answers.RemoveAll(button => button.Verb == ButtonVerb.NotYet), mend];
    }

    private ImmutableArray<Button> Buttons(CareTask task, int index)
    {
        var notYet = new Button(Phrases.Say("button.not_yet"), ButtonVerb.NotYet, index);
        var onIt = new Button(Phrases.Say("button.on_it"), ButtonVerb.OnIt, index);
        if (OwnKinds.IsReading(task.Key.Name))
        {
            return [onIt, notYet];
        }
        var label = Phrases.SayFirst([$"button.{CareTaskWords.Word(task.Key.Name)}.{task.Wording}", $"button.{CareTaskWords.Word(task.Key.Name)}", "button.other"]);
        return [new Button(label, ButtonVerb.Done, index), notYet, onIt];
    }

    /// <summary>The newest record of a kind that says it has happened; null where there is none.</summary>
    public HerdRecord? Newest(AnimalId animal, FactKind kind) =>
        State.RecordsOf(animal).LastOrDefault(record => record.Certain && record.Fact.Kind == kind);
}

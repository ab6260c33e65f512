using System.Globalization;
using HerdBot.App.Messages;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using Microsoft.Extensions.Time.Testing;

namespace HerdBot.Host.Rehearsal;

/// <summary>Plays a script through the whole program: real reader, real LiteDB file, real Quartz, a clock that jumps.</summary>
public sealed class RehearsalRun
{
    private readonly RehearsalScript script;
    private readonly RehearsalLog log;
    private readonly TextWriter faults;
    private readonly Func<FakeTimeProvider, Task<IRehearsalLife>> start;
    private readonly FakeTimeProvider clock;
    private readonly Dictionary<string, string> newest = [];
    private IRehearsalLife? life;
    private int messages;

    private RehearsalRun(RehearsalScript script, TextWriter output, TextWriter faults, Func<FakeTimeProvider, Task<IRehearsalLife>> start)
    {
        (this.script, this.faults, this.start) = (script, faults, start);
        log = new RehearsalLog(script.Setup.Farm, output);
        clock = new FakeTimeProvider(script.Start.ToDateTimeOffset());
    }

    /// <summary>Plays it and prints all that was recorded and posted, in the order of the clock.</summary>
    /// <param name="script">What to play.</param>
    /// <param name="data">The data file; it must not exist.</param>
    /// <param name="output">One JSON object a line.</param>
    /// <param name="faults">Plain sentences on what the script asked for and could not be done.</param>
    public static Task PlayAsync(RehearsalScript script, string data, TextWriter output, TextWriter faults) =>
        PlayAsync(script, data, output, faults, new NoAudience());

    /// <summary>Plays it before an audience, which sees what people do and what is posted as it happens.</summary>
    internal static Task PlayAsync(RehearsalScript script, string data, TextWriter output, TextWriter faults, IAudience audience) =>
        PlayAsync(script, output, faults, async clock =>
        {
            audience.Follow(clock);
            return await RehearsalLife.StartAsync(script.Setup, data, clock, audience);
        });

    /// <summary>Plays it on any program that can be started anew.</summary>
    /// <param name="script">What to play.</param>
    /// <param name="output">One JSON object a line.</param>
    /// <param name="faults">Plain sentences on what could not be done.</param>
    /// <param name="start">Starts the program, at first and after each power cut, always on the same clock.</param>
    internal static async Task PlayAsync(RehearsalScript script, TextWriter output, TextWriter faults, Func<FakeTimeProvider, Task<IRehearsalLife>> start)
    {
        ArgumentNullException.ThrowIfNull(script);
        var run = new RehearsalRun(script, output, faults, start);
        await run.StartAsync();
        try
        {
            foreach (var step in script.Steps)
            {
                await run.TakeAsync(step);
            }
            await run.Life.RunToAsync(script.Until);
        }
        finally
        {
            await run.log.PrintAsync(run.Life.Store, run.Life.Group);
            await run.Life.EndAsync();
        }
    }

    private IRehearsalLife Life => life ?? throw new InvalidOperationException("The program is off.");

    private HerdState State => Life.State;

    private async Task StartAsync() => life = await start(clock);

    private async Task TakeAsync(ScriptStep step)
    {
        await Life.RunToAsync(step.At);
        switch (step)
        {
            case ScriptStep.Say say:
                await SayAsync(say);
                break;
            case ScriptStep.Edit edit when newest.TryGetValue(edit.From, out var message):
                await Life.HearAsync(new Inbound.Edit(Key(), Life.Group, Who(edit.From), edit.At, message, edit.Text));
                break;
            case ScriptStep.Edit edit:
                faults.WriteLine($"{edit.From} has no message to edit.");
                await SayAsync(new ScriptStep.Say(edit.At, edit.From, edit.Text, null));
                break;
            case ScriptStep.Tap tap:
                await TapAsync(tap);
                break;
            case ScriptStep.Restart:
                await CutAsync();
                await StartAsync();
                break;
            case ScriptStep.Down down:
                await CutAsync();
                clock.SetUtcNow(down.Until.ToDateTimeOffset());
                await StartAsync();
                break;
        }
    }

    private async Task CutAsync()
    {
        await log.PrintAsync(Life.Store, Life.Group);
        await Life.CutAsync();
        life = null;
    }

    private async Task SayAsync(ScriptStep.Say say)
    {
        string? replyTo = null;
        if (say.ReplyTo is { } meant)
        {
            replyTo = Posts().Select(post => post.Post).FirstOrDefault(post => Find(post, meant) >= 0) is { } post ? PlainHouse.MessageOf(post.Number) : null;
            Missing(replyTo is not null, meant);
        }
        var message = $"message {(++messages).ToString(CultureInfo.InvariantCulture)}";
        newest[say.From] = message;
        await Life.HearAsync(new Inbound.Line(Key(), Life.Group, Who(say.From), say.At, message, say.Text, replyTo));
    }

    private async Task TapAsync(ScriptStep.Tap tap)
    {
        var pressed = Posts().FirstOrDefault(post => post.Shown.Buttons.Any(button => button.Verb is ButtonVerb.Done or ButtonVerb.NotYet or ButtonVerb.OnIt) && Find(post.Post, tap.Task) >= 0);
        Missing(pressed.Post is not null, tap.Task);
        if (pressed.Post is null)
        {
            return;
        }
        var index = Find(pressed.Post, tap.Task);
        var verb = tap.Button switch
        {
            1 when Core.Decisions.TaskButtons.DoneByPress(pressed.Post.Tasks[index].Key.Name) => ButtonVerb.Done,
            2 => ButtonVerb.NotYet,
            _ => ButtonVerb.OnIt,
        };
        var data = ButtonData.Write(pressed.Post.Number, new Button("", verb, index));
        await Life.HearAsync(new Inbound.Tap(Key(), Life.Group, Who(tap.From), tap.At, data));
    }

    /// <summary>The bot's posts, newest first, each with what it shows now.</summary>
    private IEnumerable<(Post Post, Post Shown)> Posts() => State.Posts.Values.Reverse().Select(progress => progress.Post)
        .Where(post => post.Edits is null)
        .Select(post => (post, State.Posts.Values.Select(progress => progress.Post).LastOrDefault(edit => edit.Edits == post.Number) ?? post));

    private static int Find(Post post, ScriptTask meant) => post.Tasks.ToList().FindIndex(task =>
        Core.Care.CareTaskWords.Word(task.Key.Name) == meant.Task && (meant.Animal is null || string.Equals(task.Animal, meant.Animal.Replace('’', '\''), StringComparison.OrdinalIgnoreCase)));

    private void Missing(bool found, ScriptTask task)
    {
        if (!found)
        {
            faults.WriteLine($"No post lists {task.Task} of {task.Animal ?? "any animal"}.");
        }
    }

    private string Key() => string.Create(CultureInfo.InvariantCulture, $"step {++steps}");

    private int steps;

    private static Person Who(string name) => new("name:" + name, name);
}

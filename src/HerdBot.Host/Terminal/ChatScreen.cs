using System.Globalization;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Core.Reading;
using HerdBot.Core.Wording;
using HerdBot.Host.Rehearsal;
using NodaTime;
using Spectre.Console;

namespace HerdBot.Host.Terminal;

/// <summary>
/// The chat as it is seen: the farm's clock, a name, words; a free line where a minute or more has gone by. It knows what
/// it shows, and so which buttons can be pressed. Safe for several threads.
/// </summary>
internal sealed class ChatScreen(Paper paper, Farm farm) : IAudience
{
    private const string Bot = "HerdBot";
    private const string Gap = "  ";
    private const int Quoted = 40;
    private static readonly Style Quiet = new(decoration: Decoration.Dim);
    private static readonly Style Grave = new(decoration: Decoration.Bold);

    private readonly Lock gate = new();
    private readonly Speaker speaker = new(farm, Instant.FromUnixTimeTicks(0));
    private readonly Phrases phrases = Phrases.Of(farm.Language);
    private readonly Dictionary<string, (string By, string Text)> messages = [];
    private readonly List<ShownButtons> buttons = [];
    private readonly int names = farm.People.Append(Bot).Max(name => name.Length);
    private TimeProvider? clock;
    private LocalDateTime? last;
    private string? newest;

    /// <summary>A screen takes all there is.</summary>
    public int? MostAMinute => null;

    /// <summary>True until something has been shown.</summary>
    public bool IsEmpty => last is null;

    /// <summary>The buttons of the newest post that shows any; null where none does.</summary>
    public ShownButtons? Buttons
    {
        get
        {
            lock (gate)
            {
                return buttons.LastOrDefault();
            }
        }
    }

    /// <inheritdoc/>
    public void Follow(TimeProvider clock) => this.clock = clock;

    /// <inheritdoc/>
    public void Hear(Inbound inbound)
    {
        ArgumentNullException.ThrowIfNull(inbound);
        lock (gate)
        {
            switch (inbound)
            {
                case Inbound.Line line:
                    messages[line.MessageId] = (line.From.Name, line.Text);
                    Write(inbound.At, line.From.Name, line.Text, Style.Plain);
                    newest = line.MessageId;
                    break;
                case Inbound.Edit edit:
                    Write(inbound.At, edit.From.Name, $"{edit.Text}  {phrases.Say("try.was", ("text", Short(messages.GetValueOrDefault(edit.MessageId).Text ?? "")))}", Style.Plain);
                    messages[edit.MessageId] = (edit.From.Name, edit.Text);
                    newest = edit.MessageId;
                    break;
                case Inbound.Tap tap:
                    Press(tap);
                    break;
            }
        }
    }

    /// <inheritdoc/>
    public Task<SendResult> SendAsync(Outgoing outgoing, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(outgoing);
        var message = PlainHouse.MessageOf(outgoing.Number);
        lock (gate)
        {
            Show(outgoing, message, Now);
        }
        return Task.FromResult<SendResult>(new SendResult.Sent(message));
    }

    /// <inheritdoc/>
    public Task RestAsync() => Task.CompletedTask;

    /// <summary>Something the terminal itself has to say.</summary>
    public void Note(string text)
    {
        lock (gate)
        {
            paper.Write([new Ink(new string(' ', Margin), Style.Plain)], $"({text})", Quiet);
        }
    }

    /// <summary>Lines that belong to no chat, from the left edge on.</summary>
    public void Announce(string text)
    {
        lock (gate)
        {
            paper.Write([], text, Style.Plain);
        }
    }

    /// <summary>Shows the end of what was said in earlier sessions.</summary>
    /// <param name="state">What the history comes to.</param>
    /// <param name="most">How many things at most.</param>
    public void Recall(HerdState state, int most)
    {
        ArgumentNullException.ThrowIfNull(state);
        var said = state.Lines.Select(line => (line.At, Order: 0, Show: (Action)(() => Hear(new Inbound.Line("", PlainHouse.Group, new Person("", line.By), line.At, line.Message, line.Text, null)))));
        var posted = state.Posts.Values.Where(progress => progress.Message is not null)
            .Select(progress => (progress.Post.At, Order: 1, Show: (Action)(() => Show(Again(progress.Post), progress.Message!, progress.Post.At))));
        foreach (var entry in said.Concat(posted).OrderBy(entry => entry.At).ThenBy(entry => entry.Order).TakeLast(most))
        {
            entry.Show();
        }
    }

    /// <summary>What the farm's clock shows, as people say it.</summary>
    public string Time => $"{Day(Local(Now).Date)}, {Hour(Local(Now)).Trim()}";

    private Instant Now => Instant.FromDateTimeOffset((clock ?? throw new InvalidOperationException("No clock to go by.")).GetUtcNow());

    private static Outgoing Again(Post post) =>
        new(PlainHouse.Group, post.Number, post.Kind switch { PostKind.React => OutgoingKind.Mark, PostKind.Edit => OutgoingKind.Edit, _ => OutgoingKind.Send }, post.Text)
        {
            ToPerson = post.To == Post.Group ? null : post.To,
            Loud = post.Kind == PostKind.Alarm,
            Target = post.Edits is { } edited ? PlainHouse.MessageOf(edited) : post.ReplyTo,
            Buttons = [.. post.Buttons.Select(button => new PostButton(button.Label, ButtonData.Write(post.Edits ?? post.Number, button)))],
        };

    private int Margin => Hour(default).Length + names + 2 * Gap.Length;

    private void Show(Outgoing outgoing, string message, Instant at)
    {
        switch (outgoing.Kind)
        {
            case OutgoingKind.Mark:
                Write(at, Bot, outgoing.Target is { } marked && messages.TryGetValue(marked, out var meant)
                    ? phrases.Say("try.mark", ("mark", outgoing.Text), ("by", meant.By), ("text", Short(meant.Text))) : outgoing.Text, Quiet, answers: outgoing.Target == newest);
                break;
            case OutgoingKind.Edit when outgoing.Target is { } target:
                Change(outgoing, target, at);
                break;
            default:
                messages[message] = (Bot, outgoing.Text);
                Write(at, Bot, outgoing.ToPerson is { } person ? $"{phrases.Say("try.alone", ("person", person))} {outgoing.Text}" : outgoing.Text, outgoing.Loud ? Grave : Style.Plain, answers: outgoing.Target is not null && outgoing.Target == newest);
                ShowButtons(outgoing, message);
                break;
        }
    }

    private void ShowButtons(Outgoing outgoing, string message)
    {
        buttons.RemoveAll(shown => shown.Message == message);
        if (outgoing.Buttons.Length > 0)
        {
            var shown = new ShownButtons(message, outgoing.Buttons);
            buttons.Add(shown);
            paper.Write([new Ink(new string(' ', Margin), Style.Plain)], shown.ToString(), Quiet);
        }
    }

    /// <summary>What is new in an earlier post; its first words too, where it is not the one at hand.</summary>
    private void Change(Outgoing outgoing, string target, Instant at)
    {
        var before = messages.GetValueOrDefault(target).Text ?? "";
        var added = outgoing.Text.StartsWith(before + "\n", StringComparison.Ordinal) ? outgoing.Text[(before.Length + 1)..] : outgoing.Text;
        Write(at, Bot, before.Length == 0 || target == newest ? added : $"{added}  {Under(before)}", Quiet, answers: target == newest);
        messages[target] = (Bot, outgoing.Text);
        ShowButtons(outgoing, target);
    }

    private void Press(Inbound.Tap tap)
    {
        var post = buttons.FindLast(shown => shown.Buttons.Any(button => button.Data == tap.Data));
        Write(tap.At, tap.From.Name, post is null ? phrases.Say("try.a_button")
            : $"[{post.Buttons.First(button => button.Data == tap.Data).Label}]  {Under(messages.GetValueOrDefault(post.Message).Text ?? "")}", Style.Plain);
        newest = post?.Message;
    }

    private void Write(Instant at, string name, string text, Style style, bool answers = false)
    {
        var now = Local(at);
        if (last?.Date != now.Date)
        {
            paper.Write([], $"\n{Day(now.Date)}", Quiet);
        }
        if (last is null || (!answers && Minute(last.Value) != Minute(now)))
        {
            paper.Write([], "", Quiet);
        }
        last = now;
        var margin = new[]
        {
            new Ink(Hour(now) + Gap, Quiet),
            new Ink(Paper.Clean(name).PadRight(names) + Gap, name == Bot ? Quiet : NameColours.Of(name, farm.People)),
        };
        paper.Write(margin, text, style);
    }

    private LocalDateTime Local(Instant at) => farm.Clock.Local(at);

    private static LocalDateTime Minute(LocalDateTime at) => at.With(TimeAdjusters.TruncateToMinute);

    /// <summary>"11:40 pm" and " 6:40   ", or "23:40": all equally wide.</summary>
    private string Hour(LocalDateTime at) => farm.Units == UnitSystem.Us
        ? at.ToString(at.Hour < 12 ? "h:mm'   '" : "h:mm' pm'", CultureInfo.InvariantCulture).PadLeft("12:00 pm".Length)
        : at.ToString("HH:mm", CultureInfo.InvariantCulture);

    private string Day(LocalDate day) => $"{speaker.Weekday(day)}, {speaker.Date(day)}";

    private string Under(string text) => phrases.Say("try.under", ("text", Short(text)));

    private static string Short(string text)
    {
        var first = text.Split('\n')[0];
        return first.Length <= Quoted ? first : string.Concat(first.AsSpan(0, Quoted - 1).TrimEnd(), "…");
    }
}

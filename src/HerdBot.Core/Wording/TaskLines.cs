using System.Globalization;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.Core.Wording;

/// <summary>What is said about tasks.</summary>
/// <param name="State">The herd.</param>
/// <param name="Speaker">Says times and figures.</param>
public sealed record TaskLines(HerdState State, Speaker Speaker)
{
    private static readonly string[] Amounts = ["given", "target", "half", "whole", "feed", "had", "left"];

    private Instant Now => Speaker.Now;
    private Phrases Phrases => Speaker.Phrases;

    /// <summary>The line of a task at the step it stands at: what to do, first.</summary>
    public string Line(CareTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        var word = CareTaskWords.Word(task.Key.Name);
        var step = task.StepAt(Now);
        var stage = task.StateAt(Now) == TaskState.Lapsed ? "lapsed"
            : step is { Level: Level.Vet } ? "vet"
            : step is { State: TaskState.Late } ? "late" : "asked";
        string[] keys = task.Held
            ? [$"{stage}.{word}.held", $"{stage}.{word}"]
            : [$"{stage}.{word}.{step?.Label}", $"{stage}.{word}.{task.Wording}", $"{stage}.{word}"];
        var said = Phrases.SayFirst([.. keys, $"noun.{word}", "noun.other"], Figures(task));
        return TableOf(task) is { } table && VetsNumbers.Speaks(table, task, Now) ? said + Phrases.Say("post.vets_number") : said;
    }

    /// <summary>The whole answer that says a task is done: "Looked over".</summary>
    public string Answer(CareTaskName name) => Phrases.SayFirst([$"button.{CareTaskWords.Word(name)}", "button.other"]);

    /// <summary>A task in a word or two: "cord dip".</summary>
    public string Noun(CareTaskName name) => Phrases.SayFirst([$"noun.{CareTaskWords.Word(name)}", "noun.other"]);

    /// <summary>What is missing, in a word or two: "not nursed"; null where the task does not miss a thing.</summary>
    public string? Missing(CareTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        var key = $"missing.{CareTaskWords.Word(task.Key.Name)}";
        return Phrases.Has(key) ? Phrases.Say(key, Figures(task)) : null;
    }

    /// <summary>One animal's alarms in one line: "Sage's baby, 5 h old: no temperature, not up, not nursed."</summary>
    public string Sum(IReadOnlyList<CareTask> tasks)
    {
        ArgumentNullException.ThrowIfNull(tasks);
        return Phrases.Say("vet.sum", [.. Figures(tasks[0]), ("what", string.Join(", ", tasks.Select(Missing)))]);
    }

    /// <summary>A list entry: "cord dip (late)", "standing (vet now)".</summary>
    public string Short(CareTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        var word = CareTaskWords.Word(task.Key.Name);
        var noun = task.StateAt(Now) == TaskState.Asked && Phrases.Has($"short.{word}") ? Phrases.Say($"short.{word}", Figures(task)) : Noun(task.Key.Name);
        return task.StateAt(Now) switch
        {
            _ when task.LevelAt(Now) == Level.Vet => $"{noun} ({Phrases.Say("post.vet")})",
            TaskState.Held => $"{noun} ({Phrases.Say("post.held")})",
            TaskState.Late => $"{noun} ({Phrases.Say("post.late")})",
            TaskState.Ahead => $"{noun} {Speaker.Clock(task.Due)}",
            _ => noun,
        };
    }

    /// <summary>"Phone 555 0134." with the number for the hour, where the settings have one.</summary>
    public string Phone()
    {
        var farm = Speaker.Farm;
        var night = farm.QuietHours.Holds(farm.Clock.Local(Now).TimeOfDay);
        var number = night ? farm.VetPhoneNight ?? farm.VetPhone : farm.VetPhone ?? farm.VetPhoneNight;
        return number is null ? Phrases.Say("vet.phone.none") : Phrases.Say("vet.phone", ("phone", number));
    }

    /// <summary>The name of a task's animal, as people call it.</summary>
    public string Name(AnimalId id) => Speaker.Name(State.Find(id)?.Name ?? id.Value);

    private CareTable? TableOf(CareTask task) => State.Find(task.Key.Animal) is { } animal ? Speaker.Farm.TableOf(animal.Species) : null;

    private (string, string)[] Figures(CareTask task)
    {
        var animal = State.Find(task.Key.Animal);
        var born = animal?.Born ?? State.Newborns.LastOrDefault(baby => baby.Dam == task.Key.Animal)?.Born;
        var warmth = animal is not null && animal.Born is not null ? NewbornView.Of(State, Speaker.Farm, animal, Now)?.Warmth : null;
        var again = warmth?.Last is { Again: { } pause } reading ? Speaker.Coming(reading.At + pause) : "";
        return
        [
            ("animal", Name(task.Key.Animal)), ("age", born is { } at ? Speaker.Age(Now - at) : ""),
            ("last", LastTemperature(warmth)), ("again_at", again),
            ("since", Speaker.Clock(task.Since ?? task.Due)), ("since_age", Speaker.Age(Now - (task.Since ?? task.Due))), ("seen", Seen(task)),
            ("gain", task.Figures.TryGetValue("gain", out var gain) ? Speaker.Gain(decimal.Parse(gain, CultureInfo.InvariantCulture)) : ""),
            .. Milk(task, born), .. Windows(task),
        ];
    }

    private IEnumerable<(string, string)> Windows(CareTask task)
    {
        yield return (CloseUp.Carried, task.Figures.GetValueOrDefault(CloseUp.Carried, ""));
        yield return (CloseUp.Opens, task.Figures.TryGetValue(CloseUp.Opens, out var day) ? Speaker.Date(LocalDatePattern.Iso.Parse(day).Value) : "");
    }

    private string LastTemperature(WarmthState? warmth) => warmth?.Last switch
    {
        null => "",
        { Fahrenheit: { } f } => Speaker.Temperature(f),
        _ => Phrases.Say("fact.temperature.none"),
    };

    private string Seen(CareTask task) => task.Figures.TryGetValue("seen", out var seen) ? seen
        : State.RecordsOf(task.Key.Animal).LastOrDefault(record => record.Fact.Kind == FactKind.Presentation && !record.Withdrawn)?.Fact.Text ?? "";

    private IEnumerable<(string, string)> Milk(CareTask task, Instant? born)
    {
        foreach (var name in Amounts.Where(task.Figures.ContainsKey))
        {
            yield return (name, Speaker.Amount(decimal.Parse(task.Figures[name], CultureInfo.InvariantCulture)));
        }
        yield return ("assumed", task.Figures.GetValueOrDefault("assumed") == "yes" ? Phrases.Say("post.assumed") : "");
        if (born is { } at && task.Key.Name == CareTaskName.Colostrum && Speaker.Farm.TableOf(State.Find(task.Key.Animal)!.Species) is { } table)
        {
            yield return ("half_at", Speaker.Clock(at + table.Time(CareKeys.ColostrumHalf)));
            yield return ("all_at", Speaker.Clock(at + table.Time(CareKeys.ColostrumAll)));
        }
    }
}

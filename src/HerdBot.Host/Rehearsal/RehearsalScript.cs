using System.Collections.Immutable;
using System.Text.Json;
using HerdBot.App.Messages;
using HerdBot.App.Settings;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.Host.Rehearsal;

/// <summary>A task of a post, as a script names it.</summary>
public sealed record ScriptTask(string Task, string? Animal);

/// <summary>One line of a script. A closed set.</summary>
public abstract record ScriptStep(Instant At)
{
    public sealed record Say(Instant At, string From, string Text, ScriptTask? ReplyTo) : ScriptStep(At);

    public sealed record Edit(Instant At, string From, string Text) : ScriptStep(At);

    public sealed record Tap(Instant At, string From, int Button, ScriptTask Task) : ScriptStep(At);

    public sealed record Restart(Instant At) : ScriptStep(At);

    public sealed record Down(Instant At, Instant Until) : ScriptStep(At);
}

/// <summary>A script for a rehearsal: a farm, a start, steps in the order of time, an end.</summary>
public sealed record RehearsalScript(FarmSetup Setup, Instant Start, ImmutableArray<ScriptStep> Steps, Instant Until)
{
    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");

    /// <summary>Reads a script; null and every problem where it is not whole.</summary>
    public static (RehearsalScript? Script, IReadOnlyList<string> Problems) Read(IEnumerable<string> lines)
    {
        var problems = new List<string>();
        FarmSetup? setup = null;
        Instant? start = null, until = null;
        var steps = ImmutableArray.CreateBuilder<ScriptStep>();
        var number = 0;
        foreach (var line in lines)
        {
            number++;
            if (string.IsNullOrWhiteSpace(line))
            {
                continue;
            }
            try
            {
                using var json = JsonDocument.Parse(line);
                var root = json.RootElement;
                if (root.TryGetProperty("farm", out var farm))
                {
                    var found = problems.Count;
                    var reader = new JsonReader(farm, "farm", problems);
                    setup = FarmReader.Read(reader, reader.Part("settings"));
                    reader.Done();
                    start = problems.Count == found ? Time(root, "start", setup) : null;
                }
                else if (setup is null)
                {
                    problems.Add($"Line {number}: the first line must hold the farm and the start.");
                    break;
                }
                else if (root.TryGetProperty("until", out _) && !root.TryGetProperty("at", out _))
                {
                    until = Time(root, "until", setup);
                }
                else
                {
                    steps.Add(Step(root, setup));
                }
            }
            catch (Exception odd) when (odd is JsonException or FormatException or KeyNotFoundException or InvalidOperationException)
            {
                problems.Add($"Line {number}: {odd.Message}");
            }
        }
        if (setup is not null && start is null && problems.Count == 0)
        {
            problems.Add("The first line gives no start.");
        }
        return problems.Count > 0 || setup is null ? (null, problems.Count > 0 ? problems : ["The script is empty."])
            : (new RehearsalScript(setup, start!.Value, steps.ToImmutable(), until ?? steps.Select(step => step.At).DefaultIfEmpty(start.Value).Max()), []);
    }

    private static ScriptStep Step(JsonElement root, FarmSetup setup)
    {
        var at = Time(root, "at", setup);
        if (root.TryGetProperty("do", out var what))
        {
            return what.GetString() switch
            {
                "restart" => new ScriptStep.Restart(at),
                "down" => new ScriptStep.Down(at, Time(root, "until", setup)),
                var other => throw new FormatException($"there is no '{other}' to do; there is restart and down"),
            };
        }
        var from = root.GetProperty("from").GetString() ?? throw new FormatException("'from' is missing");
        if (root.TryGetProperty("tap", out var tap))
        {
            return new ScriptStep.Tap(at, from, tap.GetProperty("button").GetInt32(), Task(tap));
        }
        var text = root.GetProperty("say").GetString() ?? "";
        return root.TryGetProperty("edit", out _) ? new ScriptStep.Edit(at, from, text)
            : new ScriptStep.Say(at, from, text, root.TryGetProperty("reply_to", out var reply) ? Task(reply) : null);
    }

    private static ScriptTask Task(JsonElement json) =>
        new(json.GetProperty("task").GetString() ?? "", json.TryGetProperty("animal", out var animal) ? animal.GetString() : null);

    private static Instant Time(JsonElement json, string key, FarmSetup setup)
    {
        var text = json.TryGetProperty(key, out var value) ? value.GetString() ?? "" : "";
        return Minute.Parse(text) is { Success: true } parsed ? setup.Farm.Clock.At(parsed.Value)
            : throw new FormatException($"'{key}' is '{text}'; write it like 2027-04-18T06:52");
    }
}

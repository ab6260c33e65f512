using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using HerdBot.Host.Rehearsal;
using HerdBot.Tests.Support;
using NodaTime.Text;

namespace HerdBot.Tests.Rehearsals.CareRows;

/// <summary>Plays a row through the whole program, as a rehearsal, and tells what does not hold.</summary>
internal sealed partial class RowPlay
{
    private static readonly string[] OfDams =
        ["labour", "presentation", "dam_bleeding", "prolapse", "dam_colic", "dam_look", "placenta", "udder", "rejection", "dam_check", "rebreed"];

    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");

    /// <summary>Where the data files lie: in memory where the machine has such a folder, since these are many.</summary>
    private static readonly string Memory = Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath();

    private static int runs;
    private readonly List<JsonElement> output;

    private RowPlay(List<JsonElement> output) => this.output = output;

    /// <summary>What does not hold; empty where all does.</summary>
    public static async Task<IReadOnlyList<string>> BrokenAsync(CareRow row)
    {
        var (script, problems) = RehearsalScript.Read(Script(row));
        if (script is null)
        {
            return [.. problems];
        }
        await using var written = new StringWriter { NewLine = "\n" };
        await using var faults = new StringWriter { NewLine = "\n" };
        var folder = Directory.CreateDirectory(Path.Combine(Memory, $"herdbot-row-{Interlocked.Increment(ref runs)}-{Environment.ProcessId}"));
        try
        {
            await RehearsalRun.PlayAsync(script, Path.Combine(folder.FullName, "farm.db"), written, faults);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
        var play = new RowPlay([.. written.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonElement.Parse(line))]);
        var broken = Lines(row.Shows).Select(play.Check).OfType<string>().Concat(play.Firsts(row)).Concat(Lines(faults.ToString())).ToList();
        return broken.Count == 0 ? [] : [.. broken, .. play.Told()];
    }

    private static IEnumerable<string> Script(CareRow row)
    {
        yield return $$$"""
            {"farm": {"zone": "America/Denver", "units": "{{{row.Units}}}", "dates": "mdy", "lang": "en", "species": "{{{row.Species}}}", "people": [{"name": "Ana", "owner": true}, {"name": "Ben"}],
             "herd": [{"name": "Sage", "role": "dam", "state": "due"}, {"name": "Willow", "role": "dam", "state": "open"}{{{row.Herd}}}],
             "settings": {"vetPhone": "555 0134"{{{(row.Settings.Length > 0 ? ", " + row.Settings : "")}}} } }, "start": "2027-04-18T00:00"}
            """.ReplaceLineEndings(" ");
        foreach (var line in Lines(row.Script))
        {
            yield return Step(line);
        }
    }

    private static string Step(string line)
    {
        if (line.StartsWith("until ", StringComparison.Ordinal))
        {
            return $$$"""{"until": "{{{At(line[6..])}}}"}""";
        }
        var parts = StepPattern().Match(line);
        var (at, who, rest) = (At(parts.Groups["at"].Value), parts.Groups["who"].Value, parts.Groups["rest"].Value);
        if (who == "down")
        {
            return $$$"""{"at": "{{{at}}}", "do": "down", "until": "{{{At(rest)}}}"}""";
        }
        if (rest.StartsWith("tap ", StringComparison.Ordinal))
        {
            var (button, task) = (rest[4..5], Task(rest[6..]));
            return $$$"""{"at": "{{{at}}}", "from": "{{{who}}}", "tap": {"button": {{{button}}}, "task": "{{{task.Task}}}", "animal": "{{{task.Animal}}}"} }""";
        }
        if (rest.StartsWith("re ", StringComparison.Ordinal))
        {
            var (task, words) = (Task(rest[3..rest.IndexOf(':', StringComparison.Ordinal)]), rest[(rest.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim());
            return $$$"""{"at": "{{{at}}}", "from": "{{{who}}}", "say": {{{JsonSerializer.Serialize(words)}}}, "reply_to": {"task": "{{{task.Task}}}", "animal": "{{{task.Animal}}}"} }""";
        }
        return $$$"""{"at": "{{{at}}}", "from": "{{{who}}}", "say": {{{JsonSerializer.Serialize(rest.TrimStart(':').Trim())}}}}""";
    }

    private string? Check(string line)
    {
        var words = line.Split(' ', 2);
        return words[0] switch
        {
            "at" => Stands(words[1]),
            "no" => Not(words[1]),
            "says" => Says(words[1], true),
            "mute" => Says(words[1], false),
            "record" => Recorded(words[1]),
            _ => null,
        };
    }

    private string? Stands(string want)
    {
        var parts = FirstPattern().Match(want);
        var task = Task(parts.Groups["task"].Value);
        return Entries(task).Any(entry => entry.At == At(parts.Groups["at"].Value) && entry.Stands == parts.Groups["stands"].Value) ? null : $"not told: at {want}";
    }

    private string? Not(string want)
    {
        var parts = want.Split(' ', 2);
        var span = parts.Length > 1 ? parts[1].Split('-').Select(At).ToArray() : ["0", "9"];
        var hit = Entries(Task(parts[0])).FirstOrDefault(entry => string.CompareOrdinal(entry.At, span[0]) >= 0 && string.CompareOrdinal(entry.At, span[1]) <= 0);
        return hit.At is null ? null : $"told all the same: {want} ({hit.At} {hit.Stands})";
    }

    private string? Says(string want, bool does)
    {
        var parts = SaysPattern().Match(want);
        var at = At(parts.Groups["at"].Value);
        var said = output.Where(row => row.TryGetProperty("text", out _) && row.GetProperty("at").GetString()![..16] == at).Select(row => row.GetProperty("text").GetString()!).ToList();
        var found = said.Exists(text => Regex.IsMatch(text, parts.Groups["words"].Value, RegexOptions.IgnoreCase | RegexOptions.Singleline));
        return found == does && (does || said.Count > 0) ? null : $"{(does ? "not said" : "said, or nothing was")}: {want}\n    {string.Join("\n    ", said)}";
    }

    private string? Recorded(string want)
    {
        var parts = want.Split(' ');
        return output.Any(row => row.TryGetProperty("record", out var fact) && fact.GetProperty("kind").GetString() == parts[0]
            && (parts.Length == 1 || (fact.TryGetProperty("value", out var value) && value.GetDecimal() == decimal.Parse(parts[1], CultureInfo.InvariantCulture)))) ? null : $"not recorded: {want}";
    }

    /// <summary>Of each task that is named, every first of a state and level, in order.</summary>
    private IEnumerable<string> Firsts(CareRow row)
    {
        var wanted = Lines(row.Shows).Select(line => FirstPattern().Match(line)).Where(match => match.Success && match.Index == 0 && char.IsAsciiDigit(match.Value[0])).ToList();
        foreach (var task in wanted.GroupBy(match => Task(match.Groups["task"].Value)))
        {
            var want = task.Select(match => $"{At(match.Groups["at"].Value)} {match.Groups["stands"].Value}").ToList();
            var found = Entries(task.Key).Where(entry => !entry.Stands.StartsWith("ahead", StringComparison.Ordinal) && !entry.Stands.StartsWith("done", StringComparison.Ordinal))
                .GroupBy(entry => entry.Stands).Select(stands => $"{stands.First().At} {stands.Key}").ToList();
            if (!found.SequenceEqual(want))
            {
                yield return $"{task.Key.Task} of {task.Key.Animal}: {string.Join(", ", found)}\n    and not: {string.Join(", ", want)}";
            }
        }
    }

    private IEnumerable<(string At, string Stands)> Entries((string Task, string Animal) task) =>
        from row in output
        where row.TryGetProperty("post", out var post) && post.GetString() is not ("edit" or "react")
        from told in row.GetProperty("tasks").EnumerateArray()
        where told.GetProperty("task").GetString() == task.Task && told.GetProperty("animal").GetString() == task.Animal
        select (row.GetProperty("at").GetString()![..16], $"{told.GetProperty("state").GetString()} {told.GetProperty("level").GetString()}");

    /// <summary>All that was told, for whoever looks for the fault.</summary>
    private IEnumerable<string> Told() => output.Select(row => row.TryGetProperty("text", out var text)
        ? $"{row.GetProperty("at").GetString()![5..16]} {row.GetProperty("post")} {text.GetString()!.Replace("\n", " / ", StringComparison.Ordinal)} {string.Join(", ", row.GetProperty("tasks").EnumerateArray().Select(task => $"[{task.GetProperty("task")} {task.GetProperty("animal")} {task.GetProperty("state")} {task.GetProperty("level")}]"))}"
        : $"{row.GetProperty("at").GetString()![5..16]} {row.GetProperty("record")}");

    private static (string Task, string Animal) Task(string name)
    {
        var parts = name.Trim().Split('@');
        return (parts[0], parts.Length > 1 ? parts[1] : OfDams.Contains(parts[0]) ? "Sage" : Some.Baby);
    }

    private static string At(string time) => Minute.Format(Some.Local(time.Trim()));

    private static IEnumerable<string> Lines(string text) => text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    [GeneratedRegex(@"^(?<at>(\d+ )?\d\d:\d\d) (?<who>\w+)\s*(?<rest>.*)$")]
    private static partial Regex StepPattern();

    [GeneratedRegex(@"^(?<at>(\d+ )?\d\d:\d\d) (?<task>[a-z_]+(@[A-Za-z' ]+?)?) (?<stands>\w+ \w+)$")]
    private static partial Regex FirstPattern();

    [GeneratedRegex(@"^(?<at>(\d+ )?\d\d:\d\d) (?<words>.+)$")]
    private static partial Regex SaysPattern();
}

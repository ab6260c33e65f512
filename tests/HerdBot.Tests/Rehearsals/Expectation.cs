using System.Text.Json;
using System.Text.RegularExpressions;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.Tests.Rehearsals;

/// <summary>One line of an expectation file: "some", "none" or "count" of what must stand in a rehearsal's output.</summary>
internal sealed class Expectation
{
    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");
    private static readonly OffsetDateTimePattern Stamp = OffsetDateTimePattern.ExtendedIso;
    private static readonly string[] InOneTask = ["task", "state", "level", "animal"];
    private readonly JsonElement json;
    private readonly JsonElement want;
    private readonly (int Least, int? Most) bounds;

    public Expectation(string line)
    {
        json = JsonElement.Parse(line);
        var verb = new[] { "some", "none", "count" }.First(verb => json.TryGetProperty(verb, out _));
        want = json.GetProperty(verb);
        bounds = verb switch
        {
            "some" => (1, null),
            "none" => (0, 0),
            _ => (Number("min") ?? 0, Number("max")),
        };
    }

    /// <summary>What does not hold, for people; null where it holds.</summary>
    public string? Broken(IReadOnlyList<JsonElement> output)
    {
        var hits = output.Where(Matches).ToList();
        return hits.Count >= bounds.Least && !(hits.Count > bounds.Most) ? null
            : $"{hits.Count} found for {json}\n" + string.Join("\n", hits.Take(3).Select(hit => "    " + hit));
    }

    /// <summary>Whether a line of the output is what is meant.</summary>
    public bool Matches(JsonElement row)
    {
        if (!InTime(row) || !Says(row) || (Wanted("to") is { } to && !Same(to, Text(row, "to"))))
        {
            return false;
        }
        if (want.TryGetProperty("record", out var kind))
        {
            return row.TryGetProperty("record", out var fact) && IsOneOf(kind, Text(fact, "kind"))
                && (Wanted("animal") is not { } animal || Same(animal, Text(fact, "animal")))
                && (!want.TryGetProperty("value", out var value) || fact.TryGetProperty("value", out var found) && Math.Abs(found.GetDouble() - value.GetDouble()) < 0.01);
        }
        return row.TryGetProperty("post", out var post) && (!want.TryGetProperty("post", out var posts) || IsOneOf(posts, post.GetString())) && TellsOfTask(row);
    }

    private bool InTime(JsonElement row)
    {
        if (!want.TryGetProperty("between", out var between))
        {
            return true;
        }
        var at = Stamp.Parse(row.GetProperty("at").GetString()!).Value.LocalDateTime;
        return at >= At(between[0]) && at <= At(between[1]);
    }

    private bool Says(JsonElement row) => Wanted("text") is not { } pattern
        || Regex.IsMatch(Text(row, "text") ?? "", pattern, RegexOptions.IgnoreCase | RegexOptions.Singleline);

    private bool TellsOfTask(JsonElement row)
    {
        var keys = InOneTask.Where(key => want.TryGetProperty(key, out _)).ToList();
        return keys.Count == 0 || row.GetProperty("tasks").EnumerateArray().Any(task => keys.All(key => IsOneOf(want.GetProperty(key), Text(task, key))));
    }

    private string? Wanted(string key) => Text(want, key);

    private int? Number(string key) => json.TryGetProperty(key, out var number) ? number.GetInt32() : null;

    private static LocalDateTime At(JsonElement time) => Minute.Parse(time.GetString()!).Value;

    private static bool IsOneOf(JsonElement wanted, string? found) => wanted.ValueKind == JsonValueKind.Array
        ? wanted.EnumerateArray().Any(one => Same(one.GetString(), found)) : Same(wanted.GetString(), found);

    private static bool Same(string? one, string? other) => string.Equals(Plain(one), Plain(other), StringComparison.OrdinalIgnoreCase);

    private static string? Plain(string? text) => text?.Replace('’', '\'');

    private static string? Text(JsonElement json, string key) =>
        json.TryGetProperty(key, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.App.Settings;

/// <summary>Reads one JSON object strictly: every key must be known, every problem is kept with its place, nothing throws.</summary>
/// <param name="json">The object.</param>
/// <param name="place">Where it stands, for the problems: "farm", "care".</param>
/// <param name="problems">Grows by what is wrong.</param>
public sealed class JsonReader(JsonElement json, string place, List<string> problems)
{
    private static readonly LocalTimePattern Minutes = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
    private readonly HashSet<string> known = [];

    /// <summary>Whether the key is there, right or wrong.</summary>
    public bool Has(string key) => Find(key) is not null;

    /// <summary>Text; the fallback where it is absent.</summary>
    public string? Text(string key, string? fallback = null)
    {
        if (Find(key) is not { } value)
        {
            return fallback;
        }
        if (value.ValueKind == JsonValueKind.String)
        {
            return value.GetString();
        }
        Problem(key, "must be text in quotes");
        return fallback;
    }

    /// <summary>Yes or no.</summary>
    public bool Flag(string key, bool fallback)
    {
        if (Find(key) is not { } value)
        {
            return fallback;
        }
        if (value.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            return value.GetBoolean();
        }
        Problem(key, "must be true or false");
        return fallback;
    }

    /// <summary>A whole number within a range.</summary>
    public int Whole(string key, int fallback, int low, int high)
    {
        if (Find(key) is not { } value)
        {
            return fallback;
        }
        if (value.ValueKind == JsonValueKind.Number && value.TryGetInt32(out var number) && number >= low && number <= high)
        {
            return number;
        }
        Problem(key, string.Create(CultureInfo.InvariantCulture, $"must be a whole number from {low} to {high}"));
        return fallback;
    }

    /// <summary>One of some words.</summary>
    public T Word<T>(string key, T fallback, params (string Word, T Value)[] words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var text = Text(key);
        if (text is null)
        {
            return fallback;
        }
        foreach (var (word, value) in words)
        {
            if (word == text)
            {
                return value;
            }
        }
        Problem(key, $"is '{text}'; it must be {string.Join(" or ", words.Select(word => $"'{word.Word}'"))}");
        return fallback;
    }

    /// <summary>Hours of the day as "07:00"; exactly as many as asked for, or any number where that is 0.</summary>
    public IReadOnlyList<LocalTime> Hours(string key, int count, IReadOnlyList<LocalTime> fallback)
    {
        if (Find(key) is not { } value)
        {
            return fallback;
        }
        var hours = value.ValueKind == JsonValueKind.Array
            ? value.EnumerateArray().Select(hour => hour.ValueKind == JsonValueKind.String && Minutes.Parse(hour.GetString()!) is { Success: true } read ? read.Value : (LocalTime?)null).ToList()
            : [null];
        if (hours.Contains(null) || (count > 0 && hours.Count != count))
        {
            Problem(key, count > 0 ? $"must be {count} times like [\"22:00\", \"06:00\"]" : "must be a list of times like [\"07:00\"]");
            return fallback;
        }
        return [.. hours.Select(hour => hour!.Value)];
    }

    /// <summary>Months of the year, 1 to 12; null where it is absent.</summary>
    public ImmutableArray<int>? Months(string key)
    {
        if (Find(key) is not { } value)
        {
            return null;
        }
        var months = value.ValueKind == JsonValueKind.Array
            ? value.EnumerateArray().Select(month => month.ValueKind == JsonValueKind.Number && month.TryGetInt32(out var number) && number is >= 1 and <= 12 ? number : 0).ToList()
            : [0];
        if (months.Contains(0))
        {
            Problem(key, "must be a list of months like [7, 8]");
            return null;
        }
        return [.. months];
    }

    /// <summary>A part that is an object of its own; null where it is absent.</summary>
    public JsonReader? Part(string key)
    {
        if (Find(key) is not { } value)
        {
            return null;
        }
        if (value.ValueKind == JsonValueKind.Object)
        {
            return new JsonReader(value, Place(key), problems);
        }
        Problem(key, "must be an object in braces");
        return null;
    }

    /// <summary>A list of objects; empty where it is absent.</summary>
    public IReadOnlyList<JsonReader> Parts(string key)
    {
        if (Find(key) is not { } value)
        {
            return [];
        }
        if (value.ValueKind != JsonValueKind.Array || value.EnumerateArray().Any(item => item.ValueKind != JsonValueKind.Object))
        {
            Problem(key, "must be a list of objects in braces");
            return [];
        }
        return [.. value.EnumerateArray().Select((item, index) => new JsonReader(item, $"{Place(key)}[{index + 1}]", problems))];
    }

    /// <summary>All keys with numbers, whatever their names.</summary>
    public IReadOnlyDictionary<string, decimal> Numbers()
    {
        var numbers = new Dictionary<string, decimal>(StringComparer.Ordinal);
        foreach (var entry in json.EnumerateObject())
        {
            known.Add(entry.Name);
            if (entry.Value.ValueKind == JsonValueKind.Number && entry.Value.TryGetDecimal(out var number))
            {
                numbers[entry.Name] = number;
            }
            else
            {
                Problem(entry.Name, "must be a number");
            }
        }
        return numbers;
    }

    /// <summary>All keys with texts, whatever their names.</summary>
    public IReadOnlyDictionary<string, string> Texts()
    {
        var texts = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var entry in json.EnumerateObject())
        {
            known.Add(entry.Name);
            if (entry.Value.ValueKind != JsonValueKind.String || string.IsNullOrWhiteSpace(entry.Value.GetString()))
            {
                Problem(entry.Name, "must be text in quotes");
            }
            else if (!texts.TryAdd(entry.Name.Trim(), entry.Value.GetString()!.Trim()))
            {
                Problem(entry.Name, "is there twice");
            }
        }
        return texts;
    }

    /// <summary>Notes a problem with a key.</summary>
    public void Problem(string key, string what) => problems.Add($"{Place(key)} {what}.");

    /// <summary>Call when all has been read: every key that nobody asked for is a problem, with the nearest known one.</summary>
    public void Done()
    {
        foreach (var entry in json.EnumerateObject().Where(entry => !known.Contains(entry.Name)))
        {
            problems.Add($"{Place(entry.Name)} is no setting; known here are {string.Join(", ", known.Order(StringComparer.Ordinal))}.");
        }
    }

    private string Place(string key) => place.Length == 0 ? key : $"{place}.{key}";

    private JsonElement? Find(string key)
    {
        known.Add(key);
        return json.TryGetProperty(key, out var value) && value.ValueKind != JsonValueKind.Null ? value : null;
    }
}

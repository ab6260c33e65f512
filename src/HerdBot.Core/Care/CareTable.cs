using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Units of the care table.</summary>
public enum CareUnit
{
    /// <summary>Minutes.</summary>
    Minutes,
    /// <summary>Hours.</summary>
    Hours,
    /// <summary>An hour of the farm's day, 0 to 23.</summary>
    HourOfDay,
    /// <summary>Degrees Fahrenheit.</summary>
    Fahrenheit,
    /// <summary>A count.</summary>
    Count,
    /// <summary>Percent.</summary>
    Percent,
    /// <summary>Kilograms.</summary>
    Kilograms,
    /// <summary>Grams.</summary>
    Grams,
    /// <summary>Days.</summary>
    Days,
    /// <summary>Milligrams in a decilitre.</summary>
    MilligramsPerDecilitre,
    /// <summary>Millilitres for each kilogram of weight.</summary>
    MillilitresPerKilogram,
    /// <summary>A day of the year, from 1.</summary>
    DayOfYear,
}

/// <summary>One number of the care table.</summary>
/// <param name="Name">Its key in the file and in the settings.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Low">The least it may be.</param>
/// <param name="High">The most it may be.</param>
public sealed record CareKey(string Name, CareUnit Unit, decimal Low, decimal High);

/// <summary>A number and where it comes from.</summary>
/// <param name="Value">In the key's unit.</param>
/// <param name="Source">A publication, or plainly that there is none.</param>
public sealed record CareNumber(decimal Value, string Source);

/// <summary>What the care plan knows of a species: numbers, each with its source.</summary>
public sealed class CareTable
{
    private static readonly FrozenDictionary<CareUnit, string> UnitWords = new Dictionary<CareUnit, string>
    {
        [CareUnit.Minutes] = "min",
        [CareUnit.Hours] = "h",
        [CareUnit.HourOfDay] = "hour",
        [CareUnit.Fahrenheit] = "F",
        [CareUnit.Count] = "count",
        [CareUnit.Percent] = "percent",
        [CareUnit.Kilograms] = "kg",
        [CareUnit.Grams] = "g",
        [CareUnit.Days] = "days",
        [CareUnit.MilligramsPerDecilitre] = "mg/dL",
        [CareUnit.MillilitresPerKilogram] = "ml/kg",
        [CareUnit.DayOfYear] = "day of year",
    }.ToFrozenDictionary();

    private readonly FrozenDictionary<string, CareNumber> numbers;

    private CareTable(IReadOnlyDictionary<string, CareNumber> numbers, IEnumerable<string> ofTheVet)
    {
        this.numbers = numbers.ToFrozenDictionary();
        OfTheVet = [.. ofTheVet.Order(StringComparer.Ordinal)];
    }

    /// <summary>The keys whose numbers are the farm's vet's own.</summary>
    public ImmutableArray<string> OfTheVet { get; }

    /// <summary>A figure in its key's unit.</summary>
    public decimal Number(CareKey key) => numbers[Checked(key).Name].Value;

    /// <summary>A length of time; for keys in minutes, hours and days.</summary>
    public Duration Time(CareKey key) => key.Unit switch
    {
        CareUnit.Minutes => Duration.FromMinutes((double)Number(key)),
        CareUnit.Hours => Duration.FromHours((double)Number(key)),
        CareUnit.Days => Duration.FromDays((double)Number(key)),
        _ => throw new ArgumentException($"{key.Name} is no length of time", nameof(key)),
    };

    /// <summary>A count, or whole days; for keys that count.</summary>
    public int Count(CareKey key) => (int)Number(key);

    /// <summary>Where a figure comes from.</summary>
    public string Source(CareKey key) => numbers[Checked(key).Name].Source;

    /// <summary>How files write a unit: "min", "h", "F".</summary>
    public static string UnitWord(CareUnit unit) => UnitWords[unit];

    /// <summary>The table that comes with the program.</summary>
    /// <param name="species">Llama or alpaca.</param>
    public static CareTable BuiltIn(Species species)
    {
        var (table, problems) = Read([Resource("Care/Tables/camelid.json"), Resource("Care/Tables/due.json"), Resource($"Care/Tables/{species.ToString().ToLowerInvariant()}.json")]);
        return table ?? throw new InvalidDataException(string.Join(" ", problems));
    }

    /// <summary>Reads a table from files, a later one adding to the earlier ones.</summary>
    /// <returns>The table, or null and every problem at once.</returns>
    public static (CareTable? Table, ImmutableArray<string> Problems) Read(IEnumerable<string> files)
    {
        var numbers = new Dictionary<string, CareNumber>(StringComparer.Ordinal);
        var problems = ImmutableArray.CreateBuilder<string>();
        foreach (var file in files)
        {
            Add(file, numbers, problems);
        }
        problems.AddRange(CareKeys.All.Where(key => !numbers.ContainsKey(key.Name)).Select(key => $"The care table has no {key.Name}."));
        if (problems.Count == 0)
        {
            problems.AddRange(Disorder(numbers));
        }
        return problems.Count == 0 ? (new CareTable(numbers, []), []) : (null, problems.ToImmutable());
    }

    /// <summary>The table with some numbers in another's place: the farm's vet knows better.</summary>
    /// <param name="overrides">By key, in the key's unit.</param>
    /// <param name="by">Whose numbers they are.</param>
    /// <returns>The table, or null and every problem at once.</returns>
    public (CareTable? Table, ImmutableArray<string> Problems) With(IReadOnlyDictionary<string, decimal> overrides, string by)
    {
        ArgumentNullException.ThrowIfNull(overrides);
        var changed = numbers.ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);
        var problems = ImmutableArray.CreateBuilder<string>();
        foreach (var (name, value) in overrides.OrderBy(pair => pair.Key, StringComparer.Ordinal))
        {
            if (Check(name, value) is { } problem)
            {
                problems.Add(problem);
            }
            changed[name] = new CareNumber(value, by);
        }
        if (problems.Count == 0)
        {
            problems.AddRange(Disorder(changed));
        }
        return problems.Count == 0 ? (new CareTable(changed, OfTheVet.Union(overrides.Keys)), []) : (null, problems.ToImmutable());
    }

    private static void Add(string file, Dictionary<string, CareNumber> numbers, ImmutableArray<string>.Builder problems)
    {
        using var json = JsonDocument.Parse(file);
        foreach (var entry in json.RootElement.EnumerateObject())
        {
            if (Entry(entry, problems) is { } number)
            {
                numbers[entry.Name] = number;
            }
        }
    }

    private static CareNumber? Entry(JsonProperty entry, ImmutableArray<string>.Builder problems)
    {
        var key = CareKeys.All.FirstOrDefault(known => known.Name == entry.Name);
        if (entry.Value.ValueKind != JsonValueKind.Object || !entry.Value.TryGetProperty("value", out var value) || !value.TryGetDecimal(out var figure))
        {
            problems.Add($"{entry.Name} in the care table has no value.");
            return null;
        }
        var source = entry.Value.TryGetProperty("source", out var words) ? words.GetString() : null;
        if (string.IsNullOrWhiteSpace(source))
        {
            problems.Add($"{entry.Name} in the care table has no source.");
        }
        if (key is not null && (!entry.Value.TryGetProperty("unit", out var unit) || unit.GetString() != UnitWords[key.Unit]))
        {
            problems.Add($"{entry.Name} in the care table must be in {UnitWords[key.Unit]}.");
        }
        if (Check(entry.Name, figure) is { } problem)
        {
            problems.Add(problem);
        }
        return new CareNumber(figure, source ?? "");
    }

    private static string? Check(string name, decimal value)
    {
        var key = CareKeys.All.FirstOrDefault(known => known.Name == name);
        return key is null ? $"The care table knows no {name}."
            : value < key.Low || value > key.High
                ? string.Create(CultureInfo.InvariantCulture, $"{name} is {value}; it must be from {key.Low} to {key.High} {UnitWords[key.Unit]}.")
                : null;
    }

    /// <summary>What must rise although each number alone is in its range; a task's own asked, late and vet besides.</summary>
    private static readonly (string Part, string What, string[] Keys)[] Rising =
    [
        ("warmth", "bounds", ["critical_low", "emergency_low", "soft_low", "normal_low", "watch_low", "high", "vet_high"]),
        ("warmth", "times", ["after1", "after2", "after3", "after4"]),
        ("colostrum", "times", ["risk_asked", "risk_late", "risk_vet"]),
        ("colostrum", "times", ["half", "all", "all_again", "lapses"]),
        ("nursing", "times", ["second", "second_late"]),
        ("temperature", "times", ["second", "third", "fourth"]),
        ("cord_watch", "times", ["look1", "look2", "look3", "look4"]),
        ("posting", "times", ["act_second", "act_third", "act_fourth"]),
        ("feed", "percentages", ["percent", "percent_top"]),
        ("feed", "ages", ["second_from", "third_from"]),
        ("igg", "times", ["asked", "late", "lapses"]),
        ("due", "days", ["shortest", "early", "early_watch", "median", "longest"]),
        ("due", "days of a check", ["check_from", "check_sure"]),
        ("due", "chances of a check", ["check_false", "check_sees"]),
        ("due", "chances of a rejection", ["rejects_open", "rejects_pregnant"]),
    ];

    private static IEnumerable<string> Disorder(Dictionary<string, CareNumber> numbers)
    {
        bool Rise(IEnumerable<string> keys)
        {
            var steps = keys.Where(numbers.ContainsKey).Select(key => numbers[key].Value).ToList();
            return steps.Zip(steps.Skip(1)).All(pair => pair.First < pair.Second);
        }
        var tasks = numbers.Keys.Where(name => name.EndsWith(".late", StringComparison.Ordinal)).Select(name => name[..^5]);
        return tasks.Where(task => !Rise([$"{task}.asked", $"{task}.late", $"{task}.vet"])).Select(task => $"The times of {task} must rise from asked to late to vet.")
            .Concat(Rising.Where(row => !Rise(row.Keys.Select(key => $"{row.Part}.{key}"))).Select(row => $"The {row.What} of {row.Part} must rise: {string.Join(", ", row.Keys)}."));
    }

    private static CareKey Checked(CareKey key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return key;
    }

    private static string Resource(string name)
    {
        using var stream = typeof(CareTable).Assembly.GetManifestResourceStream(name) ?? throw new InvalidDataException($"No {name} in the program.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}

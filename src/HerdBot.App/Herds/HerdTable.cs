using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.App.Herds;

/// <summary>What became of a list of animals.</summary>
/// <param name="Added">Those that are new, in the order of the list.</param>
/// <param name="Known">How many lines name an animal that is in the herd already; it stays as it is.</param>
/// <param name="Problems">What is wrong with each bad line, and what to do; in the order of the list.</param>
public sealed record HerdListing(ImmutableArray<Animal> Added, int Known, ImmutableArray<string> Problems);

/// <summary>Makes animals of the lines of a list: every good line is taken, every bad one told with all that is wrong with it.</summary>
public sealed class HerdTable
{
    private const int LongestName = 40;
    private readonly Farm farm;
    private readonly LocalDate today;
    private readonly Func<string, Animal?> named;
    private readonly Dictionary<string, string> tags = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, int> names = new(StringComparer.OrdinalIgnoreCase);

    private HerdTable(Farm farm, IReadOnlyList<Animal> herd, Func<string, Animal?> named, Instant now)
    {
        (this.farm, this.named, today) = (farm, named, farm.Clock.Day(now));
        foreach (var animal in herd.Where(animal => animal.Tag is not null && animal.IsHere()))
        {
            tags.TryAdd(animal.Tag!, animal.Name);
        }
    }

    /// <summary>Reads a list.</summary>
    /// <param name="rows">Its lines.</param>
    /// <param name="farm">The farm: its species and its habit of dates.</param>
    /// <param name="herd">Who is in the herd already.</param>
    /// <param name="named">Whoever of them goes by a name, or did.</param>
    /// <param name="now">No animal is born after this.</param>
    public static HerdListing Read(IEnumerable<HerdRow> rows, Farm farm, IReadOnlyList<Animal> herd, Func<string, Animal?> named, Instant now)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(herd);
        ArgumentNullException.ThrowIfNull(named);
        var table = new HerdTable(farm, herd, named, now);
        var read = rows.Select(table.Read).ToList();
        var good = read.Where(one => one is { Known: false, Problems.Count: 0 }).ToDictionary(one => one.Animal!.Name, StringComparer.OrdinalIgnoreCase);
        for (var lost = table.WithoutDam(good); lost.Count > 0; lost = table.WithoutDam(good))
        {
            lost.ForEach(one => good.Remove(one.Animal!.Name));
        }
        return new HerdListing(
            [.. read.Where(one => one.Animal is not null && good.GetValueOrDefault(one.Animal.Name) == one).Select(one => one.Animal! with { Dam = table.DamOf(one, good)?.Id })],
            read.Count(one => one.Known),
            [.. read.Where(one => one.Problems.Count > 0).Select(one => $"Line {one.Row.Line.ToString(CultureInfo.InvariantCulture)}: {string.Join("; ", one.Problems)}.")]);
    }

    /// <summary>Lines whose dam nobody knows; a line that falls may take others with it.</summary>
    private List<Entry> WithoutDam(Dictionary<string, Entry> good)
    {
        var lost = good.Values.Where(one => one.Row.Cells.ContainsKey("dam") && DamOf(one, good) is null).ToList();
        lost.ForEach(one => one.Problems.Add($"its dam '{one.Row.Cells["dam"]}' is neither in the herd nor on a good line; add a line for her, or leave the dam out"));
        return lost;
    }

    private Animal? DamOf(Entry one, Dictionary<string, Entry> good) => one.Row.Cells.GetValueOrDefault("dam") is not { } dam ? null : named(dam) ?? good.GetValueOrDefault(dam)?.Animal;

    private Entry Read(HerdRow row)
    {
        var entry = new Entry(row);
        if (row.Cells.GetValueOrDefault("name") is not { } name)
        {
            entry.Problems.Add("there is no name; write one");
            return entry;
        }
        if (named(name) is not null)
        {
            entry.Known = true;
            return entry;
        }
        if (name.Length > LongestName || !name.Any(char.IsLetter))
        {
            entry.Problems.Add($"'{name}' is no name; write one with letters, at most {LongestName.ToString(CultureInfo.InvariantCulture)} characters long");
        }
        if (!names.TryAdd(name, row.Line))
        {
            entry.Problems.Add($"{name} is on line {names[name].ToString(CultureInfo.InvariantCulture)} already; give one of the two another name");
        }
        entry.Animal = AnimalOf(entry, name);
        return entry;
    }

    private Animal AnimalOf(Entry entry, string name)
    {
        var born = Born(entry);
        var sex = Word(entry, "sex", HerdColumns.SexWords);
        var told = Word(entry, "role", HerdColumns.RoleWords);
        var role = told ?? (born is { } day && Period.Between(day, today, PeriodUnits.Months).Months < 12 ? HerdRole.Young : sex switch { Sex.Female => HerdRole.Dam, Sex.Male => HerdRole.Sire, _ => null });
        if (role is null && !entry.Row.Cells.ContainsKey("role") && !entry.Row.Cells.ContainsKey("sex"))
        {
            entry.Problems.Add("there is neither role nor sex; write dam, sire or young under role");
        }
        if ((role == HerdRole.Dam && sex == Sex.Male) || (role == HerdRole.Sire && sex == Sex.Female))
        {
            entry.Problems.Add("role and sex do not go together; mend one of them");
        }
        return Roster.NewAnimal(name, role ?? HerdRole.Young, Word(entry, "species", HerdColumns.SpeciesWords) ?? farm.Species) with
        {
            Sex = sex ?? role switch { HerdRole.Dam => Sex.Female, HerdRole.Sire => Sex.Male, _ => null },
            Born = born is { } date ? farm.Clock.At(date, new LocalTime(12, 0)) : null,
            Colour = entry.Row.Cells.GetValueOrDefault("colour"),
            State = Word(entry, "state", HerdColumns.StateWords),
            Tag = Tag(entry, name),
            Nickname = Nickname(entry),
        };
    }

    private string? Nickname(Entry entry)
    {
        if (entry.Row.Cells.GetValueOrDefault("nickname") is { } nick && named(nick) is { } other)
        {
            entry.Problems.Add($"the nickname '{nick}' means {other.Name} already; leave it out or give another");
        }
        return entry.Row.Cells.GetValueOrDefault("nickname");
    }

    private string? Tag(Entry entry, string name)
    {
        if (entry.Row.Cells.GetValueOrDefault("tag")?.TrimStart('#') is not { Length: > 0 } tag)
        {
            return null;
        }
        if (!tags.TryAdd(tag, name))
        {
            entry.Problems.Add($"tag {tag} is on {tags[tag]}; mend the tag, or leave it out");
        }
        return tag;
    }

    private LocalDate? Born(Entry entry)
    {
        if (entry.Row.Cells.GetValueOrDefault("born") is not { } text)
        {
            return null;
        }
        var spelled = farm.Dates == DateOrder.DayFirst ? "d/M/uuuu" : "M/d/uuuu";
        string[] patterns = ["uuuu-MM-dd", spelled, "d.M.uuuu"];
        var day = patterns.Select(pattern => LocalDatePattern.CreateWithInvariantCulture(pattern).Parse(text)).FirstOrDefault(parsed => parsed.Success)?.Value;
        if (day is null)
        {
            entry.Problems.Add($"born '{text}' is no date; write it like 2024-05-31");
        }
        else if (day > today)
        {
            entry.Problems.Add($"born '{text}' lies ahead; mend the date");
        }
        return day;
    }

    private static T? Word<T>(Entry entry, string column, FrozenDictionary<string, T> words) where T : struct
    {
        if (entry.Row.Cells.GetValueOrDefault(column) is not { } text)
        {
            return null;
        }
        if (words.TryGetValue(text, out var meaning))
        {
            return meaning;
        }
        entry.Problems.Add($"{column} '{text}' is not known; write {HerdColumns.Offered[column]}");
        return null;
    }

    private sealed class Entry(HerdRow row)
    {
        public HerdRow Row { get; } = row;
        public List<string> Problems { get; } = [];
        public bool Known { get; set; }
        public Animal? Animal { get; set; }
    }
}

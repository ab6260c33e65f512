using System.Collections.Immutable;
using HerdBot.App.Messages;
using HerdBot.Core.Calendar;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using NodaTime;

namespace HerdBot.App.Settings;

/// <summary>Reads the farm and its care part, from the settings file or from a script.</summary>
public static class FarmReader
{
    /// <summary>Reads a farm.</summary>
    /// <param name="farm">The farm part.</param>
    /// <param name="care">The care part; null where all stays as it comes.</param>
    public static FarmSetup Read(JsonReader farm, JsonReader? care)
    {
        ArgumentNullException.ThrowIfNull(farm);
        var species = SpeciesOf(farm, Species.Llama);
        var read = new Farm(new FarmClock(Zone(farm)), Tables(care))
        {
            Units = farm.Word("units", UnitSystem.Us, ("us", UnitSystem.Us), ("metric", UnitSystem.Metric)),
            Dates = farm.Word("dates", DateOrder.MonthFirst, ("mdy", DateOrder.MonthFirst), ("dmy", DateOrder.DayFirst)),
            Language = farm.Word("lang", Language.English, ("en", Language.English), ("es", Language.Spanish)),
            Species = species,
            People = [.. People(farm)],
        };
        var herd = farm.Parts("herd").Select(animal => AnimalOf(animal, species)).OfType<Animal>().ToList();
        foreach (var twice in herd.GroupBy(animal => animal.Id).Where(same => same.Count() > 1))
        {
            farm.Problem("herd", $"names {twice.First().Name} twice");
        }
        read = read with { Nicknames = Nicknames(farm, herd) };
        read = read with { Words = Words(farm, [.. herd.Select(animal => animal.Name), .. read.Nicknames.Keys]) };
        return new FarmSetup(care is null ? read : Cared(read, care), herd);
    }

    private static OwnWords Words(JsonReader farm, IEnumerable<string> names)
    {
        var (words, problems) = OwnWords.Read(farm.Part("words")?.Texts() ?? ImmutableDictionary<string, string>.Empty, names);
        foreach (var problem in problems)
        {
            farm.Problem("words", $"cannot stand: {problem}");
        }
        return words ?? OwnWords.None;
    }

    private static ImmutableDictionary<string, string> Nicknames(JsonReader farm, List<Animal> herd)
    {
        var nicknames = farm.Part("nicknames")?.Texts() ?? ImmutableDictionary<string, string>.Empty;
        foreach (var (nick, name) in nicknames)
        {
            if (herd.Find(animal => string.Equals(animal.Name, nick, StringComparison.OrdinalIgnoreCase)) is { } other && !string.Equals(other.Name, name, StringComparison.OrdinalIgnoreCase))
            {
                farm.Problem("nicknames", $"cannot stand: '{nick}' is to be {name}, but {other.Name} bears that name");
            }
        }
        return nicknames.ToImmutableDictionary(StringComparer.OrdinalIgnoreCase);
    }

    private static Farm Cared(Farm farm, JsonReader care)
    {
        var quiet = care.Hours("quietHours", 2, [farm.QuietHours.From, farm.QuietHours.To]);
        var waking = care.Hours("wakingHours", 2, [farm.WakingHours.From, farm.WakingHours.To]);
        var cared = farm with
        {
            VetPhone = Given(care.Text("vetPhone")),
            VetPhoneNight = Given(care.Text("vetPhoneNight")),
            QuietHours = new DaySpan(quiet[0], quiet[1]),
            WakingHours = new DaySpan(waking[0], waking[1]),
            RoundUps = [.. care.Hours("roundUps", 0, farm.RoundUps)],
            HotMonths = care.Months("hotMonths"),
            ColdMonths = care.Months("coldMonths"),
            IggTest = care.Flag("iggTest", true),
            VetDrive = Duration.FromMinutes(care.Whole("vetMinutes", 0, 0, 300)),
        };
        care.Done();
        return cared;
    }

    private static string? Given(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private static DateTimeZone Zone(JsonReader farm)
    {
        var name = farm.Text("zone");
        if (name is not null && DateTimeZoneProviders.Tzdb.GetZoneOrNull(name) is { } zone)
        {
            return zone;
        }
        if (name is not null || !farm.Has("zone"))
        {
            farm.Problem("zone", name is null ? "is missing; write the farm's time zone, like \"America/Denver\"" : $"is '{name}', which is no time zone; write one like \"America/Denver\"");
        }
        return DateTimeZone.Utc;
    }

    private static IEnumerable<string> People(JsonReader farm)
    {
        var people = farm.Parts("people").Select(person => (Reader: person, Name: person.Text("name"), Owner: person.Flag("owner", false))).ToList();
        foreach (var (reader, name, _) in people)
        {
            if (string.IsNullOrWhiteSpace(name))
            {
                reader.Problem("name", "is missing");
            }
            reader.Done();
        }
        return people.OrderByDescending(person => person.Owner).Select(person => person.Name).OfType<string>();
    }

    private static ImmutableDictionary<Species, CareTable> Tables(JsonReader? care)
    {
        var numbers = care?.Part("numbers")?.Numbers() ?? ImmutableDictionary<string, decimal>.Empty;
        var by = care?.Text("numbersBy");
        if (numbers.Count > 0 && string.IsNullOrWhiteSpace(by))
        {
            care!.Problem("numbersBy", "is missing: name the vet whose numbers these are");
        }
        var tables = ImmutableDictionary<Species, CareTable>.Empty;
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var species in new[] { Species.Llama, Species.Alpaca })
        {
            var builtIn = CareTable.BuiltIn(species);
            var (table, problems) = builtIn.With(numbers, by ?? "");
            foreach (var problem in problems.Where(told.Add))
            {
                care!.Problem("numbers", $"cannot stand: {problem.TrimEnd('.')}");
            }
            tables = tables.Add(species, table ?? builtIn);
        }
        return tables;
    }

    private static Animal? AnimalOf(JsonReader animal, Species usual)
    {
        var name = animal.Text("name");
        var role = animal.Word("role", HerdRole.Dam, ("dam", HerdRole.Dam), ("sire", HerdRole.Sire), ("young", HerdRole.Young));
        var read = Roster.NewAnimal(name ?? "", role, SpeciesOf(animal, usual)) with
        {
            Sex = FactWords.SexOf(animal.Text("sex")),
            Colour = animal.Text("colour"),
            Tag = animal.Text("tag"),
            State = animal.Word<HerdEntryState?>("state", null, ("due", HerdEntryState.Due), ("in_labour", HerdEntryState.InLabour), ("open", HerdEntryState.Open), ("sold", HerdEntryState.Sold), ("dead", HerdEntryState.Dead)),
        };
        if (string.IsNullOrWhiteSpace(name))
        {
            animal.Problem("name", "is missing");
        }
        animal.Done();
        return string.IsNullOrWhiteSpace(name) ? null : read;
    }

    private static Species SpeciesOf(JsonReader part, Species usual) =>
        part.Word("species", usual, ("llama", Species.Llama), ("alpaca", Species.Alpaca), ("sheep", Species.Sheep), ("goat", Species.Goat));
}

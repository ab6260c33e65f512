using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Due;

/// <summary>The herd's pregnancies and what they come to. Derived from the records alone; safe for use by several at once.</summary>
public sealed class DueBook
{
    private readonly FrozenDictionary<AnimalId, DamHistory> histories;
    private readonly FrozenDictionary<Species, (CareTable Table, Gestation Gestation, HerdLengths Lengths)> species;
    private readonly ConcurrentDictionary<(AnimalId Dam, LocalDate Today), DueForecast?> known = [];

    private DueBook(Farm farm, Dictionary<AnimalId, DamHistory> histories)
    {
        Farm = farm;
        this.histories = histories.ToFrozenDictionary();
        species = farm.Tables.ToFrozenDictionary(one => one.Key, one => (one.Value, Gestation.Of(one.Value),
            HerdLengths.Of(one.Value, Gestation.Of(one.Value), histories.Values.Where(dam => dam.Pregnancy.Dam.Species == one.Key).Select(dam => dam.Pregnancy.Past).Cast<IReadOnlyList<Length>>())));
    }

    /// <summary>The farm it was worked out for.</summary>
    public Farm Farm { get; }

    /// <summary>Every dam that may be carrying, in the order of the roster.</summary>
    public IEnumerable<Pregnancy> Pregnancies => histories.Values.Select(history => history.Pregnancy).Where(pregnancy => pregnancy.Matings.Length > 0 || pregnancy.Checks.Any(check => check.Expected is not null));

    /// <summary>Works it out.</summary>
    public static DueBook Of(HerdState state, Farm farm)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(farm);
        var histories = new Dictionary<AnimalId, DamHistory>();
        foreach (var dam in state.Roster.Where(animal => animal.Role == HerdRole.Dam && animal.State is not (HerdEntryState.Sold or HerdEntryState.Dead)))
        {
            if (farm.TableOf(dam.Species) is { } table)
            {
                histories[dam.Id] = new DamHistory(dam, farm, table, Gestation.Of(table));
            }
        }
        foreach (var (dam, history) in histories)
        {
            foreach (var record in state.RecordsOf(dam).Where(record => !record.Withdrawn && Counts(record)).OrderBy(record => record.At))
            {
                history.Take(record);
            }
        }
        return new DueBook(farm, histories);
    }

    /// <summary>What is known of a dam; null where the herd has no such dam, or no care is planned for her species.</summary>
    public Pregnancy? PregnancyOf(AnimalId dam) => histories.GetValueOrDefault(dam)?.Pregnancy;

    /// <summary>When she is due; null where nothing on record can be carried still.</summary>
    /// <param name="dam">The dam.</param>
    /// <param name="today">The farm's day.</param>
    public DueForecast? Of(AnimalId dam, LocalDate today) => known.GetOrAdd((dam, today), key =>
        PregnancyOf(key.Dam) is { } pregnancy && CaseOf(pregnancy, key.Today) is { } asked ? Of(asked, pregnancy.Past) : null);

    /// <summary>When she would be due, were she mated on a day and it took.</summary>
    /// <param name="dam">The dam; null for any dam of the farm's own species.</param>
    /// <param name="mated">The day of the mating.</param>
    public DueForecast? If(AnimalId? dam, LocalDate mated)
    {
        var pregnancy = dam is null ? null : PregnancyOf(dam);
        var past = pregnancy?.Past ?? [];
        return Of(new DueCase(pregnancy?.Dam.Species ?? Farm.Species, [Mating.On(mated)], mated) { Past = past, Hemisphere = Farm.Hemisphere }, past);
    }

    /// <summary>How long a newborn was carried, in days; null where no mating is on record, or none that fits.</summary>
    public int? CarriedOf(AnimalId newborn) => histories.Values.Select(history => history.Carried.GetValueOrDefault(newborn)).FirstOrDefault(days => days is not null);

    /// <summary>For a birth that no mating on record can have led to, though there is one: the days since the newest.</summary>
    public int? UnexplainedOf(AnimalId newborn)
    {
        foreach (var history in histories.Values)
        {
            if (history.Unexplained.TryGetValue(newborn, out var days))
            {
                return days;
            }
        }
        return null;
    }

    /// <summary>The dams that more likely carry than not, with their forecasts; the soonest first.</summary>
    /// <param name="today">The farm's day.</param>
    public IReadOnlyList<Awaited> Awaited(LocalDate today) => [.. Pregnancies.Select(pregnancy => (pregnancy.Dam, Due: Of(pregnancy.Dam.Id, today)))
        .Where(one => one.Due is { Open: < LikelyOpen }).Select(one => new Awaited(one.Dam, one.Due!)).OrderBy(one => one.Due.Median)];

    private const double LikelyOpen = 0.5;

    /// <summary>The first window that opens: the earliest 5 % point of those that most likely carry; null where nobody does.</summary>
    /// <param name="today">The farm's day.</param>
    public LocalDate? FirstWindow(LocalDate today) => Awaited(today).Select(one => (LocalDate?)one.Due.LookFrom).Min();

    private DueForecast? Of(DueCase asked, IReadOnlyList<Length> past)
    {
        if (!species.TryGetValue(asked.Species, out var numbers))
        {
            return null;
        }
        var (lean, residual) = numbers.Lengths.OfDam(past);
        return DueForecast.Of(numbers.Table, numbers.Gestation, asked, lean, residual);
    }

    private DueCase? CaseOf(Pregnancy pregnancy, LocalDate today)
    {
        var matings = pregnancy.Matings.Select(mating => mating.Mating).ToImmutableArray();
        var fromVet = matings.IsEmpty ? pregnancy.Checks.LastOrDefault(check => check.Expected is not null).Expected : null;
        if (fromVet is { } expected && species.TryGetValue(pregnancy.Dam.Species, out var numbers))
        {
            // No mating is on record: any day may be the one that the vet's date comes from.
            var (middle, around) = (expected.PlusDays(-(int)numbers.Gestation.Median), 3 * numbers.Table.Count(DueKeys.VetDateSpread));
            matings = [new Mating(middle.PlusDays(-around), middle.PlusDays(around))];
        }
        return matings.IsEmpty ? null : new DueCase(pregnancy.Dam.Species, matings, today)
        {
            Checks = pregnancy.Checks,
            Past = pregnancy.Past,
            HerdPast = [],
            Hemisphere = Farm.Hemisphere,
            FromVetsDate = fromVet is not null,
        };
    }

    /// <summary>Whether a record tells of matings, checks, births or their end, so that the book must be written anew.</summary>
    internal static bool Counts(HerdRecord record) => record.Fact.Kind is FactKind.Birth or FactKind.Breeding or FactKind.PregnancyCheck or FactKind.SpitOff or FactKind.Death;
}

/// <summary>A dam and when she is due.</summary>
/// <param name="Dam">The dam.</param>
/// <param name="Due">Her forecast.</param>
public sealed record Awaited(Animal Dam, DueForecast Due);

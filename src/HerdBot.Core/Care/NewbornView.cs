using System.Collections.Immutable;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>All that is on record of one newborn, and what follows from it for every task.</summary>
public sealed class NewbornView
{
    private NewbornView(Animal animal, HerdRecord birth, ToldRecords told, ToldRecords dam, CareTable table, Farm farm, Instant now)
    {
        Animal = animal;
        Table = table;
        Farm = farm;
        Now = now;
        Born = birth.At;
        ReportedAt = birth.SaidAt;
        Told = told;
        Dam = dam;
        Weights = [.. Certain(FactKind.Weight).Select(record => (record.At, Grams: Measures.Grams(record.Fact) ?? 0)).Where(weight => weight.Grams > 0)];
        Nursed = Bouts();
        var up = First(FactKind.Standing, Born) ?? Nursed.Cast<Instant?>().FirstOrDefault();
        Warmth = Care.Warmth.At(table, told.Of(FactKind.Temperature).Where(record => !record.Fact.Neg).Select(record => (record.Fact, record.At)), Born, up, FedAt, now);
    }

    /// <summary>The newborn.</summary>
    public Animal Animal { get; }
    /// <summary>Its species' numbers.</summary>
    public CareTable Table { get; }
    /// <summary>The farm.</summary>
    public Farm Farm { get; }
    /// <summary>Nothing after this counts.</summary>
    public Instant Now { get; }
    /// <summary>The birth.</summary>
    public Instant Born { get; }
    /// <summary>When the birth was first told.</summary>
    public Instant ReportedAt { get; }
    /// <summary>Its dam, or the one it was put to.</summary>
    public required AnimalId Pair { get; init; }
    /// <summary>What is on record of it.</summary>
    public ToldRecords Told { get; }
    /// <summary>What is on record of the dam that bore it.</summary>
    public ToldRecords Dam { get; }
    /// <summary>How warmth stands.</summary>
    public WarmthState Warmth { get; }
    /// <summary>Weights in grams, oldest first.</summary>
    public ImmutableArray<(Instant At, decimal Grams)> Weights { get; }
    /// <summary>Bouts of nursing, oldest first: seen closer together they are one.</summary>
    public ImmutableArray<Instant> Nursed { get; }
    /// <summary>At risk: the tables ask for more.</summary>
    public bool AtRisk { get; private set; }
    /// <summary>Days of pregnancy at the birth; null where no mating is on record.</summary>
    public int? GestationDays { get; private init; }
    /// <summary>Since when it is raised by hand; null where its dam feeds it.</summary>
    public Instant? ByHandSince { get; private init; }

    /// <summary>How old it is.</summary>
    public Duration Age => Now - Born;

    /// <summary>When it first got anything, from the dam or by hand; null where it did not.</summary>
    public Instant? FedAt => NewbornPlan.Earliest(Nursed.Cast<Instant?>().FirstOrDefault(), First(FactKind.Colostrum, Born), First(FactKind.Feed, Born));

    /// <summary>Colostrum given by hand so far, in millilitres.</summary>
    public decimal ColostrumGiven(Instant until) =>
        Certain(FactKind.Colostrum).Where(record => record.At <= until).Sum(record => Measures.Millilitres(record.Fact) ?? 0);

    /// <summary>What it should have had by hand or from the dam, in millilitres, and whether its weight is assumed.</summary>
    public (decimal Millilitres, bool Assumed) ColostrumTarget()
    {
        var weighed = Weights.Where(weight => weight.At < Born + Duration.FromDays(1)).Select(weight => (decimal?)weight.Grams).FirstOrDefault();
        var grams = weighed ?? Table.Number(CareKeys.ColostrumAssumedWeight) * 1000;
        return (grams * Table.Number(CareKeys.ColostrumPercent) / 100, weighed is null);
    }

    /// <inheritdoc cref="ToldRecords.Certain"/>
    public IEnumerable<HerdRecord> Certain(FactKind kind) => Told.Certain(kind);

    /// <inheritdoc cref="ToldRecords.About"/>
    public IEnumerable<HerdRecord> About(params string[] topics) => Told.About(topics);

    /// <inheritdoc cref="ToldRecords.First"/>
    public Instant? First(FactKind kind, Instant from) => Told.First(kind, from);

    /// <inheritdoc cref="ToldRecords.DoneFrom(CareTaskName, Instant)"/>
    public Instant? DoneFrom(CareTaskName task, Instant from) => Told.DoneFrom(task, from);

    /// <summary>The view of a newborn; null where its species' care is not planned.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="newborn">One of the herd's newborns.</param>
    /// <param name="now">Nothing after this counts.</param>
    public static NewbornView? Of(HerdState state, Farm farm, Animal newborn, Instant now)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(newborn);
        if (farm.TableOf(newborn.Species) is not { } table || newborn.Dam is not { } bore
            || state.RecordsOf(bore).FirstOrDefault(record => record.Newborn == newborn.Id && !record.Withdrawn) is not { } birth)
        {
            return null;
        }
        var told = new ToldRecords(state.RecordsOf(newborn.Id), now);
        var dam = new ToldRecords(state.RecordsOf(bore), now);
        var view = new NewbornView(newborn, birth, told, dam, table, farm, now)
        {
            Pair = Fostering.DamOf(state, told) ?? bore,
            GestationDays = state.Due(farm).CarriedOf(newborn.Id),
            ByHandSince = Fostering.ByHandSince(told, dam, birth.At),
        };
        view.AtRisk = Risk.Of(view);
        return view;
    }

    private ImmutableArray<Instant> Bouts()
    {
        var bouts = new List<Instant>();
        foreach (var at in Certain(FactKind.Nursing).Select(record => record.At))
        {
            if (bouts.Count == 0 || at - bouts[^1] >= Table.Time(CareKeys.NursingApart))
            {
                bouts.Add(at);
            }
        }
        return [.. bouts];
    }
}

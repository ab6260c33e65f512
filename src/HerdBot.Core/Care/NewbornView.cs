using System.Collections.Immutable;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>All that is on record of one newborn, and what follows from it for every task.</summary>
public sealed class NewbornView
{
    private readonly ILookup<FactKind, HerdRecord> records;

    private NewbornView(Animal animal, HerdRecord birth, IEnumerable<HerdRecord> records, CareTable table, Farm farm, Instant now)
    {
        Animal = animal;
        Table = table;
        Farm = farm;
        Now = now;
        Born = birth.At;
        ReportedAt = birth.SaidAt;
        Pair = birth.Animal!;
        this.records = records.Where(record => !record.Withdrawn).OrderBy(record => record.At).ToLookup(record => record.Fact.Kind);
        Weights = [.. Certain(FactKind.Weight).Select(record => (record.At, Grams: Measures.Grams(record.Fact) ?? 0)).Where(weight => weight.Grams > 0)];
        Nursed = Bouts();
        var up = First(FactKind.Standing, Born) ?? Nursed.Cast<Instant?>().FirstOrDefault();
        Warmth = Care.Warmth.At(table, this.records[FactKind.Temperature].Where(record => !record.Fact.Neg).Select(record => (record.Fact, record.At)), Born, up, FedAt, now);
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
    /// <summary>Its dam.</summary>
    public AnimalId Pair { get; }
    /// <summary>How warmth stands.</summary>
    public WarmthState Warmth { get; }
    /// <summary>Weights in grams, oldest first.</summary>
    public ImmutableArray<(Instant At, decimal Grams)> Weights { get; }
    /// <summary>Bouts of nursing, oldest first: seen closer together they are one.</summary>
    public ImmutableArray<Instant> Nursed { get; }
    /// <summary>At risk: the tables ask for more.</summary>
    public bool AtRisk { get; private set; }

    /// <summary>When it first got anything, from the dam or by hand; null where it did not.</summary>
    public Instant? FedAt => Nursed.Cast<Instant?>()
        .Concat([First(FactKind.Colostrum, Born), First(FactKind.Feed, Born)]).Where(at => at is not null).Min();

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

    /// <summary>The records of a kind that say it has happened, oldest first.</summary>
    public IEnumerable<HerdRecord> Certain(FactKind kind) => records[kind].Where(record => record.Certain && record.At <= Now);

    /// <summary>The records of a kind that say it has happened or may have, oldest first: for dangers.</summary>
    public IEnumerable<HerdRecord> Feared(FactKind kind) => records[kind].Where(record => !record.Fact.Neg && record.At <= Now);

    /// <summary>The records of a kind that say without a hedge that it has not happened, oldest first.</summary>
    public IEnumerable<HerdRecord> Denied(FactKind kind) => records[kind].Where(record => record.Fact is { Neg: true, Unsure: false } && record.At <= Now);

    /// <summary>What was said about a topic that the plan listens to, oldest first, hedged or not: danger counts all the same.</summary>
    public IEnumerable<HerdRecord> About(params string[] topics) => records.SelectMany(kind => kind)
        .Where(record => record.At <= Now && topics.Contains(record.Fact.Field) && record.Fact is not { Kind: FactKind.Note, Neg: true }).OrderBy(record => record.At);

    /// <summary>When it first happened from an instant on; null where it did not.</summary>
    public Instant? First(FactKind kind, Instant from) =>
        Certain(kind).Where(record => record.At >= from).Select(record => (Instant?)record.At).FirstOrDefault();

    /// <summary>When a task without a kind of its own was first done from an instant on; null where it was not.</summary>
    public Instant? DoneFrom(CareTaskName task, Instant from) => Certain(FactKind.Done)
        .Where(record => record.At >= from && record.Fact.Task == CareTaskWords.Word(task)).Select(record => (Instant?)record.At).FirstOrDefault();

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
        if (farm.TableOf(newborn.Species) is not { } table
            || newborn.Dam is not { } dam || state.RecordsOf(dam).FirstOrDefault(record => record.Newborn == newborn.Id && !record.Withdrawn) is not { } birth)
        {
            return null;
        }
        var view = new NewbornView(newborn, birth, state.RecordsOf(newborn.Id), table, farm, now);
        view.AtRisk = Risk.Of(state, view);
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

/// <summary>Who is at risk.</summary>
public static class Risk
{
    /// <summary>Assisted, early, small, a twin, weak, cold at some time, its dam ill or dead, rejected, low antibodies.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="newborn">What is on record of it.</param>
    public static bool Of(HerdState state, NewbornView newborn)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(newborn);
        var dam = state.RecordsOf(newborn.Pair).Where(record => record.Certain && record.At > newborn.Born - Duration.FromDays(2)).ToList();
        return newborn.Animal.Twin is not null
            || newborn.Warmth.WasCold
            || (newborn.Weights.Length > 0 && newborn.Weights[0].Grams < newborn.Table.Number(CareKeys.WeightSmall) * 1000)
            || newborn.About(NoteTopics.Weak, NoteTopics.HeadDown, NoteTopics.Early).Any()
            || dam.Any(record => record.Fact.Kind is FactKind.Assistance or FactKind.Death || record.Fact.Field is NoteTopics.NoMilk or NoteTopics.Rejects or NoteTopics.DamIll);
    }
}

/// <summary>What a note is about, where the plan listens to it: the note's <see cref="Fact.Field"/>.</summary>
public static class NoteTopics
{
    /// <summary>Limp, no suck, cold mouth, fits, down again.</summary>
    public const string Weak = "weak";
    /// <summary>The head is not up.</summary>
    public const string HeadDown = "head_down";
    /// <summary>Signs that it came before its time.</summary>
    public const string Early = "early";
    /// <summary>The dam has no milk.</summary>
    public const string NoMilk = "no_milk";
    /// <summary>The dam rejects it.</summary>
    public const string Rejects = "rejects";
    /// <summary>The dam is down, pale, colicky or dull.</summary>
    public const string DamIll = "dam_ill";
    /// <summary>Bright, eating, doing well.</summary>
    public const string Well = "well";
    /// <summary>Blood in a stream, or pale gums.</summary>
    public const string Stream = "stream";
    /// <summary>A sign that labour is on: up and down, rolling, straining, tail up.</summary>
    public const string Labour = "labour";
    /// <summary>A sign that only puts her on the list.</summary>
    public const string CloseUp = "close_up";
    /// <summary>Straining, or a bag or bubble in view: the clocks of the birth itself run.</summary>
    public const string InView = "in_view";
    /// <summary>Nose and two forefeet.</summary>
    public const string Normal = "normal";
    /// <summary>Anything else in view.</summary>
    public const string Abnormal = "abnormal";
}

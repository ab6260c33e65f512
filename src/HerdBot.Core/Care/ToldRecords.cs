using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>What is on record of one animal until an instant, oldest first; nothing that was taken back.</summary>
public sealed class ToldRecords
{
    private readonly ILookup<FactKind, HerdRecord> byKind;

    /// <summary>Sorts them.</summary>
    /// <param name="records">The animal's records.</param>
    /// <param name="now">Nothing after this counts.</param>
    public ToldRecords(IEnumerable<HerdRecord> records, Instant now)
    {
        All = [.. records.Where(record => !record.Withdrawn && record.At <= now).OrderBy(record => record.At)];
        byKind = All.ToLookup(record => record.Fact.Kind);
    }

    /// <summary>All of them, oldest first.</summary>
    public IReadOnlyList<HerdRecord> All { get; }

    /// <summary>The records of a kind, whatever they say of it.</summary>
    public IEnumerable<HerdRecord> Of(FactKind kind) => byKind[kind];

    /// <summary>The records of a kind that say it has happened.</summary>
    public IEnumerable<HerdRecord> Certain(FactKind kind) => byKind[kind].Where(record => record.Certain);

    /// <summary>The records of a kind that say it has happened or may have: for dangers.</summary>
    public IEnumerable<HerdRecord> Feared(FactKind kind) => byKind[kind].Where(record => !record.Fact.Neg);

    /// <summary>The records of a kind that say without a hedge that it has not happened.</summary>
    public IEnumerable<HerdRecord> Denied(FactKind kind) => byKind[kind].Where(record => record.Fact is { Neg: true, Unsure: false });

    /// <summary>What was said about some topics, hedged or not: danger counts all the same.</summary>
    public IEnumerable<HerdRecord> About(params string[] topics) =>
        All.Where(record => record.Fact.Field is not null && record.Fact is not { Kind: FactKind.Note, Neg: true } && record.Fact.Says(topics));

    /// <summary>When a topic was first spoken of without a hedge from an instant on; null where it was not.</summary>
    public Instant? Said(Instant from, params string[] topics) =>
        About(topics).Where(record => record.At >= from && !record.Fact.Unsure).Select(record => (Instant?)record.At).FirstOrDefault();

    /// <summary>When a thing first happened from an instant on; null where it did not.</summary>
    public Instant? First(FactKind kind, Instant from) =>
        Certain(kind).Where(record => record.At >= from).Select(record => (Instant?)record.At).FirstOrDefault();

    /// <summary>When a task without a kind of its own was first done from an instant on; null where it was not.</summary>
    public Instant? DoneFrom(CareTaskName task, Instant from)
    {
        var word = CareTaskWords.Word(task);
        return Certain(FactKind.Done).Where(record => record.At >= from && record.Fact.Task == word).Select(record => (Instant?)record.At).FirstOrDefault();
    }

    /// <summary>When one very task was first answered from an instant on; null where it was not.</summary>
    public Instant? DoneFrom(TaskKey key, Instant from)
    {
        ArgumentNullException.ThrowIfNull(key);
        return All.Where(record => record.At >= from && record.Task == key && record is { Certain: true, Fact.Kind: not FactKind.Claim and not FactKind.NotDone })
            .Select(record => (Instant?)record.At).FirstOrDefault();
    }

    /// <summary>When somebody first phoned the vet about it from an instant on; null where nobody did.</summary>
    public Instant? CalledFrom(Instant from) => Certain(FactKind.Claim)
        .Where(record => record.At >= from && record.Fact.Task == CareTaskWords.CallVet).Select(record => (Instant?)record.At).FirstOrDefault();
}

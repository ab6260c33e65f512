using System.Collections.Immutable;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>All that is on record of one dam of late, and the birth that her tasks run from.</summary>
internal sealed class DamView
{
    private DamView(HerdState state, Animal animal, ToldRecords told, CareTable table, Farm farm, Instant now)
    {
        Animal = animal;
        Told = told;
        Table = table;
        Farm = farm;
        Now = now;
        Births = [.. told.All.Where(record => record.Newborn is not null)];
        GestationDays = state.Due(farm).Of(animal.Id, farm.Clock.Day(now))?.Days;
    }

    public Animal Animal { get; }
    public ToldRecords Told { get; }
    public CareTable Table { get; }
    public Farm Farm { get; }
    public Instant Now { get; }

    /// <summary>Births on record, also of a dead cria, oldest first.</summary>
    public ImmutableArray<HerdRecord> Births { get; }

    /// <summary>The newest birth; null where none is on record.</summary>
    public HerdRecord? LastBirth => Births.LastOrDefault();

    /// <summary>Days that she has carried; null where no mating can still be carried.</summary>
    public int? GestationDays { get; }

    /// <summary>Her newborns of the last birth that live.</summary>
    public ImmutableArray<NewbornView> Young { get; private init; } = [];

    public Subject Subject => new(Table, Told, Animal.Id, Animal.Id);

    public TaskKey Key(CareTaskName name, string which) => new(name, Animal.Id, which);

    /// <summary>The view of a dam; null where nothing is on record of her, she is dead, or her species' care is not planned.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="dam">One of the herd's dams.</param>
    /// <param name="young">Her newborns.</param>
    /// <param name="now">Nothing after this counts.</param>
    public static DamView? Of(HerdState state, Farm farm, Animal dam, IEnumerable<NewbornView> young, Instant now)
    {
        var told = new ToldRecords(state.RecordsOf(dam.Id), now);
        return told.All.Count == 0 || farm.TableOf(dam.Species) is not { } table || told.All.Any(record => record is { Certain: true, Newborn: null, Fact.Kind: FactKind.Death })
            ? null : new DamView(state, dam, told, table, farm, now) { Young = [.. young] };
    }
}

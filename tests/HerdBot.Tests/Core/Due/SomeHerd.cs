using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Tests.Support;
using NodaTime;

namespace HerdBot.Tests.Core.Due;

/// <summary>Thirty alpacas mated over a spring: some seen, some in the pen, most checked; one of them is late.</summary>
internal static class SomeHerd
{
    private static readonly string[] Names =
    [
        "Clover", "Juniper", "Bramble", "Sorrel", "Hazel", "Tansy", "Marigold", "Wren", "Saffron", "Pepita", "Linnet", "Ochre", "Teasel", "Mallow", "Bracken",
        "Yarrow", "Plover", "Damson", "Sable", "Rosehip", "Thistle", "Catkin", "Filbert", "Larch", "Rowan", "Heather", "Poppy", "Sedge", "Aster", "Quince",
    ];

    public static readonly Farm Farm = Some.Farm() with { Species = Species.Alpaca };

    public static readonly Instant Now = Farm.Clock.At(new LocalDate(2027, 4, 18), new LocalTime(12, 0));

    public static HerdState State { get; } = Make();

    private static HerdState Make()
    {
        var state = HerdState.Empty;
        for (var n = 0; n < Names.Length; n++)
        {
            var dam = Roster.NewAnimal(Names[n], HerdRole.Dam, Species.Alpaca);
            var mated = new LocalDate(2026, 4, 20).PlusDays(n * 4 % 90);
            state = state.Apply(new HerdEvent.AnimalAdded(dam));
            state = With(state, new Fact(FactKind.Breeding) { Until = n % 4 == 0 ? mated.PlusDays(28) : null }, dam, n == 7 ? new LocalDate(2026, 4, 12) : mated);
            state = n % 3 == 2 ? state : With(state, new Fact(FactKind.PregnancyCheck), dam, mated.PlusDays(60));
        }
        return state;
    }

    public static HerdState With(HerdState state, Fact fact, Animal animal, LocalDate on, AnimalId? newborn = null)
    {
        var at = Farm.Clock.At(on, new LocalTime(12, 0));
        return state.Apply(new HerdEvent.FactRecorded(state.NextFact, fact, animal.Id, at, at, "Ana") { Newborn = newborn });
    }
}

using System.Globalization;
using HerdBot.Core.Care;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Benchmarks;

/// <summary>How long it takes to work out one newborn's plan, with a first day's records on it.</summary>
internal static class PlanBenchmarks
{
    public static void Run(TextWriter output)
    {
        var born = Instant.FromUtc(2027, 4, 18, 12, 40);
        var state = Day(born);
        // Each time for another instant: for the same one it is not worked out again.
        var now = born + Duration.FromHours(13);
        var taken = Watch.Microseconds(2000, 5000, () => CarePlan.At(state, Yard.Farm, now += Duration.FromTicks(1)));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"one newborn's plan, {state.Records.Count} records: median {Watch.At(taken, 0.5):0.0} µs, 99th percentile {Watch.At(taken, 0.99):0.0} µs"));
    }

    private static HerdState Day(Instant born)
    {
        var dam = Roster.NewAnimal("Clementine", HerdRole.Dam, Species.Llama);
        var baby = new AnimalId("clementine/1");
        var state = HerdState.Empty.Apply(new HerdEvent.AnimalAdded(dam));
        HerdState With(Fact fact, AnimalId animal, double hours, AnimalId? newborn = null) => state.Apply(
            new HerdEvent.FactRecorded(state.NextFact, fact, animal, born + Duration.FromHours(hours), born + Duration.FromHours(hours), "Teo") { Newborn = newborn });
        state = With(new Fact(FactKind.Birth), dam.Id, 0, baby);
        for (var n = 0; n < 6; n++)
        {
            state = With(new Fact(FactKind.Temperature) { Value = 99.2m + n * 0.2m, Unit = FactUnit.F }, baby, 0.3 + n * 2);
            state = With(new Fact(FactKind.Nursing), baby, 0.9 + n * 2);
            state = With(new Fact(FactKind.Weight) { Value = 24 + n * 0.1m, Unit = FactUnit.Lb }, baby, 1.1 + n * 2);
        }
        return state;
    }
}

using System.Globalization;
using HerdBot.Core.Decisions;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Host.Commands;
using HerdBot.Tests.Core.Due;
using NodaTime;

namespace HerdBot.Benchmarks;

/// <summary>How long due windows take, and what they are worth on made-up births.</summary>
internal static class DueBenchmarks
{
    private const int Dams = 10_000;
    private const int Births = 20_000;

    public static void Run(TextWriter output)
    {
        Lines(output);
        Chat(output);
        Worth(output, 1, 1);
        Worth(output, 2, 1);
        Worth(output, 1, 1.3);
    }

    private static void Lines(TextWriter output)
    {
        var lines = Enumerable.Range(0, Dams).Select(n => n % 2 == 0
            ? $$"""{"id":{{n}},"species":"alpaca","matings":[{"on":"2026-05-{{1 + n % 28:00}}"}],"past":[353,350],"herd_past":[[351,349],[344]],"hemisphere":"north","today":"2027-04-10"}"""
            : $$"""{"id":{{n}},"species":"llama","matings":[{"from":"2026-05-{{1 + n % 28:00}}","to":"2026-06-20"}],"checks":[{"on":"2026-06-05","result":"spit_off"},{"on":"2026-08-01","result":"pregnant"}],"hemisphere":"south","today":"2027-04-10"}""").ToList();
        var before = Environment.CpuUsage.TotalTime;
        var taken = Watch.Microseconds(1, 5, () =>
        {
            using var answers = new MemoryStream();
            DueCommand.Answer(lines, answers);
        });
        var work = (Environment.CpuUsage.TotalTime - before).TotalSeconds / (taken.Length + 1);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"herdbot due for {Dams} dams, half of them penned for a month or two: median {Watch.At(taken, 0.5) / 1e6:0.00} s, slowest {taken.Max() / 1e6:0.00} s, processor time {work:0.00} s"));
    }

    private static void Chat(TextWriter output)
    {
        var now = Instant.FromUtc(2027, 4, 18, 12, 40);
        var state = HerdState.Empty;
        for (var n = 0; n < 30; n++)
        {
            var dam = Roster.NewAnimal($"Dam{n}", HerdRole.Dam, Species.Llama);
            state = state.Apply(new HerdEvent.AnimalAdded(dam));
            foreach (var day in new[] { 1050, 700 })
            {
                state = With(state, new Fact(FactKind.Breeding), dam.Id, now - Duration.FromDays(day + n), null);
                state = With(state, new Fact(FactKind.Birth), dam.Id, now - Duration.FromDays(day + n - 347), new AnimalId($"{dam.Id.Value}/{day}"));
            }
            state = With(state, new Fact(FactKind.Breeding) { Until = new LocalDate(2026, 6, 20) }, dam.Id, now - Duration.FromDays(340 + n), null);
            state = With(state, new Fact(FactKind.PregnancyCheck), dam.Id, now - Duration.FromDays(250), null);
        }
        Asked(output, state, "after a start, all windows worked out anew");
        state.Due(Yard.Farm).Awaited(Yard.Farm.Clock.Day(now));
        Asked(output, state, "windows known, a note just recorded");

        static void Asked(TextWriter output, HerdState state, string when)
        {
            var now = Instant.FromUtc(2027, 4, 18, 12, 40);
            var before = Environment.CpuUsage.TotalTime;
            var taken = Watch.Microseconds(100, 400, () =>
            {
                var fresh = With(state, new Fact(FactKind.Note) { Text = "fence mended" }, null, now, null);
                Hear.Line(fresh, Yard.Farm, now, "Teo", "m", "when is Dam7 due?", null);
            });
            var work = (Environment.CpuUsage.TotalTime - before).TotalMilliseconds / (taken.Length + 100);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"'when is she due?' in a herd of 30, {when}: median {Watch.At(taken, 0.5) / 1000:0.00} ms, 99th percentile {Watch.At(taken, 0.99) / 1000:0.00} ms, processor time {work:0.00} ms"));
        }
    }

    private static HerdState With(HerdState state, Fact fact, AnimalId? animal, Instant at, AnimalId? newborn) =>
        state.Apply(new HerdEvent.FactRecorded(state.NextFact, fact, animal, at, at, "Teo") { Newborn = newborn });

    private static void Worth(TextWriter output, int seed, double stretched)
    {
        var worth = new Calibration(Births, seed, stretched).Finish();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Births} made-up births, seed {seed}, {(stretched > 1 ? "spread 30 % wider than assumed" : "as assumed")}:"));
        output.WriteLine($"  tenths {Shares(worth.Tenths)}; from the median on {Shares(worth.TenthsFromTheMedian)} (10 each is right)");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  windows of 50, 80, 95 % held {100 * worth.Covered[0]:0.0}, {100 * worth.Covered[1]:0.0}, {100 * worth.Covered[2]:0.0} %"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  score (CRPS) of dams with three births or more {worth.Score:0.00} days: {worth.Score / worth.ScoreOfTheMean:0.000} of 'mating + species mean', {worth.Score / worth.ScoreOfTheSpecies:0.000} of the species' spread; all dams {worth.ScoreOfAll:0.00}"));
    }

    private static string Shares(double[] shares) => string.Join(" ", shares.Select(share => (100 * share).ToString("0.0", CultureInfo.InvariantCulture)));
}

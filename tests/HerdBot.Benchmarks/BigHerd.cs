using System.Collections.Immutable;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using NodaTime;

namespace HerdBot.Benchmarks;

/// <summary>Fills the herd of a message up to a size that no small farm has: grown females, some of them awaited, males, young ones.</summary>
internal static class BigHerd
{
    /// <summary>How many animals it has in the end.</summary>
    public const int Size = 300;

    private static readonly string[] Heads = ["Alm", "Brin", "Cald", "Drov", "Esk", "Fjor", "Gral", "Hest", "Imb", "Jorv", "Kelm", "Lund", "Morv", "Nesk", "Ostr", "Pell", "Quar", "Rusk", "Stol", "Tarv"];
    private static readonly string[] Tails = ["andel", "ebrook", "ichen", "oway", "umber", "ystone", "avelle", "embly", "ingdor", "ophine", "uscany", "arvest", "enwick", "illion", "oldeny"];

    // Older than the corpus, whose messages are of 2027.
    private static readonly LocalDate Oldest = new(2026, 1, 5);

    private static readonly ImmutableArray<HerdEntry> Others = [.. Enumerable.Range(0, Size).Select(n => Entry([.. Tails.SelectMany(tail => Heads.Select(head => head + tail))], n))];

    /// <summary>The same circumstances in a herd of <see cref="Size"/>.</summary>
    public static ReadingContext Around(ReadingContext context) => context with { Herd = [.. context.Herd, .. Others.Take(Size - context.Herd.Length)] };

    private static HerdEntry Entry(List<string> names, int n) => (n % 20) switch
    {
        0 => new(names[n], HerdRole.Sire) { Sex = Sex.Male },
        < 8 and var k => new(names[n], HerdRole.Young) { Dam = names[n + 12], Sex = k % 2 == 0 ? Sex.Male : Sex.Female, Born = new FactTime(Oldest.PlusDays(n), new LocalTime(9, 30)), Colour = "brown" },
        < 12 => new(names[n], HerdRole.Dam) { State = HerdEntryState.Due, Tag = $"7{n:000}" },
        _ => new(names[n], HerdRole.Dam) { State = HerdEntryState.Open, Tag = $"7{n:000}" },
    };
}

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

    /// <summary>The same circumstances in a herd of <see cref="Size"/>.</summary>
    public static ReadingContext Around(ReadingContext context)
    {
        var names = Tails.SelectMany(tail => Heads.Select(head => head + tail)).ToList();
        var more = Enumerable.Range(0, Size - context.Herd.Length).Select(n => Entry(names, n, context.Now.Date));
        return context with { Herd = [.. context.Herd, .. more] };
    }

    private static HerdEntry Entry(List<string> names, int n, LocalDate today) => (n % 20) switch
    {
        0 => new(names[n], HerdRole.Sire) { Sex = Sex.Male },
        < 8 and var k => new(names[n], HerdRole.Young) { Dam = names[n + 12 - k], Sex = k % 2 == 0 ? Sex.Male : Sex.Female, Born = new FactTime(today.PlusDays(-20 - n), new LocalTime(9, 30)), Colour = "brown" },
        < 12 => new(names[n], HerdRole.Dam) { State = HerdEntryState.Due, Tag = $"7{n:000}" },
        _ => new(names[n], HerdRole.Dam) { State = HerdEntryState.Open, Tag = $"7{n:000}" },
    };
}

using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading.Lexicon;

namespace HerdBot.Core.Reading.Animals;

/// <summary>The herd by name, by tag, by dam and by what the animals are. Built once for a herd; safe to share.</summary>
internal sealed class HerdIndex
{
    private static readonly ConditionalWeakTable<HerdEntry[], HerdIndex> Known = [];

    private readonly HerdEntry[] entries;
    private readonly Dictionary<string, int> byName = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, int> byTag = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<int>[] babies;
    private readonly int[] colours;

    private HerdIndex(HerdEntry[] entries)
    {
        this.entries = entries;
        HasGoats = Array.Exists(entries, one => one.Species is null or Core.Herd.Species.Goat);
        babies = new List<int>[entries.Length];
        colours = Array.ConvertAll(entries, ColourOf);
        // Who is here is meant before who has left.
        int[] order = [.. Enumerable.Range(0, entries.Length).Where(i => IsHere(entries[i])), .. Enumerable.Range(0, entries.Length).Where(i => !IsHere(entries[i]))];
        foreach (var i in order)
        {
            byName.TryAdd(entries[i].Name, i);
        }

        foreach (var i in order)
        {
            AddNames(i);
        }

        for (var i = 0; i < entries.Length; i++)
        {
            AddBaby(i);
        }

        Dams = Those(entry => entry.Role == HerdRole.Dam && IsHere(entry));
        Sires = Those(entry => entry.Role == HerdRole.Sire && IsHere(entry));
        Young = Those(entry => entry.Role is HerdRole.Newborn or HerdRole.Young && IsHere(entry));
        TwinDams = [.. Enumerable.Range(0, entries.Length).Where(i => BabiesOf(i).Count(baby => Entry(baby).Role == HerdRole.Newborn) > 1)];
        AnyInLabour = Array.Exists(entries, entry => entry.State == HerdEntryState.InLabour);
        AnyDue = Array.Exists(entries, entry => entry.State == HerdEntryState.Due);
    }

    public int Count => entries.Length;

    /// <summary>Names and their slips.</summary>
    public NameIndex Names { get; } = new();

    /// <summary>Grown females that are neither sold nor dead.</summary>
    public ImmutableArray<int> Dams { get; }

    /// <summary>Grown males that are neither sold nor dead.</summary>
    public ImmutableArray<int> Sires { get; }

    /// <summary>This season's young, neither sold nor dead.</summary>
    public ImmutableArray<int> Young { get; }

    /// <summary>Dams of more than one newborn.</summary>
    public ImmutableArray<int> TwinDams { get; }

    /// <summary>Somebody gives birth.</summary>
    public bool AnyInLabour { get; }

    /// <summary>Somebody is awaited.</summary>
    public bool AnyDue { get; }

    /// <summary>The herd has goats, or animals of a kind not told: kids may be theirs.</summary>
    public bool HasGoats { get; }

    public static HerdIndex Of(ImmutableArray<HerdEntry> herd)
    {
        var entries = ImmutableCollectionsMarshal.AsArray(herd) ?? [];
        return Known.GetValue(entries, static all => new HerdIndex(all));
    }

    /// <summary>"Sage's baby 2" as dam and number; null where the name is of another shape.</summary>
    public static (string Dam, int? N)? SplitBabyName(string name)
    {
        var at = name.IndexOf("'s baby", StringComparison.OrdinalIgnoreCase);
        if (at <= 0)
        {
            return null;
        }

        var tail = name[(at + 7)..].Trim();
        return (name[..at], int.TryParse(tail, System.Globalization.CultureInfo.InvariantCulture, out var n) ? n : null);
    }

    public int Find(string? name) => name is not null && byName.TryGetValue(name, out var entry) ? entry : -1;

    public int FindTag(string tag) => byTag.TryGetValue(tag, out var entry) ? entry : -1;

    /// <summary>This season's young of a dam, in the order of the herd.</summary>
    public IReadOnlyList<int> BabiesOf(int dam) => dam >= 0 && babies[dam] is { } list ? list : [];

    public HerdEntry Entry(int index) => entries[index];

    public bool IsYoung(int index) => entries[index].Role is HerdRole.Newborn or HerdRole.Young;

    public Sex? SexOf(int index) => entries[index] is var entry && entry.Sex is { } sex ? sex
        : entry.Role switch { HerdRole.Dam => Sex.Female, HerdRole.Sire => Sex.Male, _ => null };

    /// <summary>The animal may be the one that the words describe: a young one by its sex and colour, a grown one by species and colour.</summary>
    public bool Suits(int index, Mention? mention) => mention is null
        || ((mention.Colour == 0 || mention.Colour == colours[index])
            && (IsYoung(index) ? mention.Sex is not { } sex || SexOf(index) is not { } its || its == sex
                : mention.Species is not { } species || entries[index].Species is not { } own || own == species));

    // "light brown" is brown.
    private static int ColourOf(HerdEntry entry)
    {
        if (entry.Colour is null)
        {
            return 0;
        }

        var words = Vocabulary.English;
        var word = entry.Colour.Split(' ')[^1].ToLowerInvariant();
        var sense = words.Phrases.Alone(words.Words.Find(word, word));
        return sense.Tags.Has(Tag.Colour) ? sense.Argument : 0;
    }

    private static bool IsHere(HerdEntry entry) => entry.State is not (HerdEntryState.Sold or HerdEntryState.Dead);

    private ImmutableArray<int> Those(Func<HerdEntry, bool> are) => [.. Enumerable.Range(0, entries.Length).Where(i => are(entries[i]))];

    private void AddNames(int entry)
    {
        if (entries[entry].Tag is { Length: > 0 } tag)
        {
            byTag.TryAdd(tag, entry);
        }

        foreach (var name in entries[entry].OtherNames.Prepend(entries[entry].Name).Where(name => SplitBabyName(name) is null))
        {
            byName.TryAdd(name, entry);
            Names.Add(name, entry, IsHere(entries[entry]));
        }
    }

    private void AddBaby(int entry)
    {
        if (IsYoung(entry) && Find(entries[entry].Dam ?? SplitBabyName(entries[entry].Name)?.Dam) is >= 0 and var dam)
        {
            (babies[dam] ??= []).Add(entry);
        }
    }
}

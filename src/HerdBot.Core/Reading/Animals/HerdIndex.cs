using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Tokens;

namespace HerdBot.Core.Reading.Animals;

/// <summary>The herd by name, by slip of a name, by dam. Built once for a herd; safe to share.</summary>
internal sealed class HerdIndex
{
    private const int ShortestMended = 4;
    private static readonly ConditionalWeakTable<HerdEntry[], HerdIndex> Known = [];

    private readonly Dictionary<string, List<Named>> names = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<string>> slips = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> byName = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, int> byTag = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<int>[] babies;

    private HerdIndex(HerdEntry[] entries)
    {
        Entries = entries;
        babies = new List<int>[entries.Length];
        // Who is here is meant before who has left.
        int[] order = [.. Enumerable.Range(0, entries.Length).OrderBy(i => !IsHere(i))];
        foreach (var i in order)
        {
            byName.TryAdd(entries[i].Name, i);
        }

        foreach (var i in order)
        {
            AddNames(i);
            AddBaby(i);
        }

        foreach (var word in names.Keys.Where(word => word.Length >= ShortestMended))
        {
            AddSlips(word);
        }
    }

    public HerdEntry[] Entries { get; }

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

    public HerdEntry Entry(int index) => Entries[index];

    public bool IsYoung(int index) => Entries[index].Role is HerdRole.Newborn or HerdRole.Young;

    public Sex? SexOf(int index) => Entries[index] is var entry && entry.Sex is { } sex ? sex
        : entry.Role switch { HerdRole.Dam => Sex.Female, HerdRole.Sire => Sex.Male, _ => null };

    /// <summary>The entry of a name that two or more bear.</summary>
    public const int Alike = -2;

    /// <summary>The longest name that begins at a token.</summary>
    /// <returns>The entry and the number of tokens; -1 where there is none, <see cref="Alike"/> where there are two.</returns>
    public (int Entry, int Length) Match(ReadOnlySpan<Token> tokens, int start, string? mended = null)
    {
        var best = (Entry: -1, Length: 0);
        foreach (var name in names.TryGetValue(mended ?? tokens[start].Text, out var list) ? list : [])
        {
            if (name.Words.Length > best.Length && Fits(tokens, start, name.Words))
            {
                best = (name.Entry, name.Words.Length);
            }
        }

        return best;
    }

    /// <summary>The name's first word that this one was meant to be, by one slip; null where none, or two.</summary>
    public string? Mend(string word)
    {
        if (word.Length < ShortestMended || word.Length > 20)
        {
            return null;
        }

        string? found = null;
        foreach (var variant in Slips.Deletes(word).Append(word))
        {
            foreach (var name in slips.TryGetValue(variant, out var list) ? list : [])
            {
                if (name != found && Slips.IsOne(word, name))
                {
                    if (found is not null)
                    {
                        return null;
                    }

                    found = name;
                }
            }
        }

        return found;
    }

    private static bool Fits(ReadOnlySpan<Token> tokens, int start, string[] words)
    {
        if (start + words.Length > tokens.Length)
        {
            return false;
        }

        for (var i = 1; i < words.Length; i++)
        {
            if (tokens[start + i].Text != words[i])
            {
                return false;
            }
        }

        return true;
    }

    private void AddNames(int entry)
    {
        if (Entries[entry].Tag is { Length: > 0 } tag)
        {
            byTag.TryAdd(tag, entry);
        }

        foreach (var name in Entries[entry].OtherNames.Prepend(Entries[entry].Name).Where(name => SplitBabyName(name) is null))
        {
            byName.TryAdd(name, entry);
            var words = Tokenizer.Tokenize(name).Select(token => token.Text).ToArray();
            AddName(words, entry, false);
            foreach (var word in words.Length > 1 ? words.Where(IsTelling) : [])
            {
                AddName([word], entry, true);
            }
        }
    }

    // "Luna" for Luna Grande, as long as no other is called so: a whole name goes before a part of one.
    private void AddName(string[] words, int entry, bool part)
    {
        if (words.Length == 0)
        {
            return;
        }

        var list = names.TryGetValue(words[0], out var known) ? known : names[words[0]] = [];
        var at = list.FindIndex(name => name.Words.AsSpan().SequenceEqual(words));
        var named = new Named(words, entry, part);
        if (at < 0)
        {
            list.Add(named);
        }
        else if (list[at].Entry != entry && list[at].Part == part)
        {
            list[at] = IsHere(entry) ? named with { Entry = Alike } : list[at];
        }
        else if (list[at].Part && !part)
        {
            list[at] = named;
        }
    }

    private bool IsHere(int entry) => Entries[entry].State is not (HerdEntryState.Sold or HerdEntryState.Dead);

    private static bool IsTelling(string word) =>
        word.Length > 2 && char.IsLetter(word[0]) && Vocabulary.English.Words.Find(word, word) < 0 && Vocabulary.Spanish.Words.Find(word, word) < 0;

    private void AddBaby(int entry)
    {
        if (IsYoung(entry) && Find(Entries[entry].Dam ?? SplitBabyName(Entries[entry].Name)?.Dam) is >= 0 and var dam)
        {
            (babies[dam] ??= []).Add(entry);
        }
    }

    private void AddSlips(string word)
    {
        foreach (var variant in Slips.Deletes(word).Append(word))
        {
            (slips.TryGetValue(variant, out var list) ? list : slips[variant] = []).Add(word);
        }
    }

    private sealed record Named(string[] Words, int Entry, bool Part);
}

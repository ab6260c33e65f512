using HerdBot.Core.Facts;
using HerdBot.Core.Herd;

namespace HerdBot.Core.Reading.Animals;

/// <summary>Settles which animal a fact is about, from how it was named and from what went before.</summary>
internal sealed class AnimalResolver(Circumstances known)
{
    private readonly HerdIndex herd = known.Herd;
    private readonly ContextGuess guess = new(known);
    private readonly HashSet<string> spoken = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Dams that this message says have just given birth, with the sexes of their young.</summary>
    public Dictionary<string, List<Sex?>> Births { get; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Names that this message gives, and whom.</summary>
    public Dictionary<string, string> NewNames { get; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>This message tells of one more newborn of the dam.</summary>
    public void Born(string dam, Sex? sex) => (Births.TryGetValue(dam, out var litter) ? litter : Births[dam] = []).Add(sex);

    /// <summary>The animals' names; "?" where it has to be asked.</summary>
    /// <param name="mention">How the message names it; null where it does not.</param>
    /// <param name="whom">Whether the dam or the newborn is meant.</param>
    /// <param name="task">The task that such a fact answers.</param>
    public IReadOnlyList<string> Resolve(Mention? mention, Whom whom, string? task)
    {
        if (whom == Whom.Nobody)
        {
            return [];
        }

        if (mention is { Other: true } && Births.Count == 0 && whom == Whom.Baby && Others() is { } other)
        {
            return [other];
        }

        var names = Found(mention, whom, task);
        spoken.UnionWith(names);
        return names;
    }

    // The only newborn that the message has not spoken of yet.
    private string? Others()
    {
        var left = herd.Young.Select(herd.Entry).Where(one => one.Role == HerdRole.Newborn && !spoken.Contains(one.Name)).Take(2).ToArray();
        return spoken.Count > 0 && left.Length == 1 ? left[0].Name : null;
    }

    private IReadOnlyList<string> Found(Mention? mention, Whom whom, string? task)
    {
        return mention?.Kind switch
        {
            MentionKind.Named => mention.Plural || mention.Entries.Count > 1 ? [.. mention.Entries.SelectMany(entry => OfNamed(entry, mention, whom))] : OfNamed(mention.Entries[0], mention, whom),
            MentionKind.BabyOf when mention.Entries.Count > 0 => [.. mention.Entries.SelectMany(dam => OfBaby(dam, mention, whom))],
            MentionKind.Unknown => [mention.Name is { } name && NewNames.TryGetValue(name, out var animal) ? animal : Fact.AskAnimal],
            MentionKind.SomeDam when whom == Whom.Baby && !mention.Plural && task is not ("temperature" or "weight") => guess.Baby(null, task),
            MentionKind.SomeDam => SomeDams(mention, task),
            MentionKind.SomeMale => Males(),
            MentionKind.SomeBaby => SomeBabies(mention, whom, task),
            _ => Guessed(mention, whom, task),
        };
    }

    /// <summary>The only male that can be meant.</summary>
    public IReadOnlyList<string> Males()
    {
        var spoken = known.Said.FirstOrDefault(line => line.Mention.Entries.Exists(entry => herd.Entry(entry).Role == HerdRole.Sire));
        if (spoken.Mention is { } mention)
        {
            return [herd.Entry(mention.Entries.Find(entry => herd.Entry(entry).Role == HerdRole.Sire)).Name];
        }

        return herd.Sires is [var only] ? [herd.Entry(only).Name] : [];
    }

    private IReadOnlyList<string> OfNamed(int entry, Mention mention, Whom whom)
    {
        var one = herd.Entry(entry);
        if (whom == Whom.Dam)
        {
            return [herd.IsYoung(entry) ? one.Dam ?? HerdIndex.SplitBabyName(one.Name)?.Dam ?? one.Name : one.Name];
        }

        var baby = (whom == Whom.Baby || mention.BareGenitive) && !mention.Self;
        return baby && one.Role == HerdRole.Dam && (HasBaby(entry) || (mention.BareGenitive && whom != Whom.Anyone)) ? OfBaby(entry, mention, Whom.Baby) : [one.Name];
    }

    private bool HasBaby(int dam) => Births.ContainsKey(herd.Entry(dam).Name) || herd.BabiesOf(dam).Count > 0;

    private IReadOnlyList<string> OfBaby(int dam, Mention mention, Whom whom)
    {
        var name = herd.Entry(dam).Name;
        if (whom == Whom.Dam)
        {
            return [name];
        }

        if (Births.TryGetValue(name, out var litter))
        {
            var count = litter.Count;
            if (count > 1 && mention.Sex is { } sex && litter.Count(one => one == sex) == 1)
            {
                return [BabyName(name, litter.IndexOf(sex) + 1)];
            }

            return count == 1 ? [BabyName(name, null)] : mention.Ordinal is { } n && n <= count ? [BabyName(name, n)] : [.. Enumerable.Range(1, count).Select(k => BabyName(name, k))];
        }

        var babies = Youngest(dam).Where(baby => herd.Suits(baby, mention)).ToArray();
        return babies.Length switch
        {
            0 => [herd.BabiesOf(dam).Count == 0 && herd.Entry(dam).State is HerdEntryState.Due or HerdEntryState.InLabour ? BabyName(name, null) : Fact.AskAnimal],
            1 => [herd.Entry(babies[0]).Name],
            _ when mention.Ordinal is { } n && n <= babies.Length => [herd.Entry(InOrder(babies)[n - 1]).Name],
            _ when mention.Plural => [.. InOrder(babies).Select(baby => herd.Entry(baby).Name)],
            _ => [Fact.AskAnimal],
        };
    }

    // Last season's young is not meant where this season's is there.
    private IEnumerable<int> Youngest(int dam)
    {
        var all = herd.BabiesOf(dam);
        var newborn = all.Where(baby => herd.Entry(baby).Role == HerdRole.Newborn).ToArray();
        return newborn.Length > 0 ? newborn : all;
    }

    private int[] InOrder(IEnumerable<int> babies) =>
        [.. babies.OrderBy(baby => herd.Entry(baby).Born?.Date).ThenBy(baby => herd.Entry(baby).Born?.Time).ThenBy(baby => herd.Entry(baby).Name, StringComparer.Ordinal)];

    private IReadOnlyList<string> SomeDams(Mention mention, string? task)
    {
        var dams = herd.Dams.Where(dam => herd.Suits(dam, mention)).Select(dam => herd.Entry(dam).Name).ToArray();
        return mention.Plural && (mention.Count is null || mention.Count == dams.Length) ? dams : dams.Length == 1 ? dams : mention.Colour > 0 || mention.Plural ? [Fact.AskAnimal] : guess.Dam(mention, task);
    }

    private IReadOnlyList<string> SomeBabies(Mention mention, Whom whom, string? task)
    {
        if (Births.Count == 1 && whom != Whom.Dam)
        {
            return OfBaby(herd.Find(Births.First().Key), mention, whom);
        }

        if (whom == Whom.Dam)
        {
            return mention.Colour > 0 ? SomeDams(mention, task) : guess.Dam(mention, task);
        }

        if (!mention.Plural)
        {
            return guess.Baby(mention, task);
        }

        var all = guess.Babies(mention).ToArray();
        var newborn = all.Where(baby => herd.Entry(baby).Role == HerdRole.Newborn).ToArray();
        var twins = guess.TwinsLastNamed();
        var meant = mention.Count == 2 && twins.Length == 2 ? twins : mention.Count is { } count && count == newborn.Length ? newborn : all;
        return mention.Count is null || mention.Count == meant.Length ? [.. InOrder(meant).Select(baby => herd.Entry(baby).Name)] : [Fact.AskAnimal];
    }

    private IReadOnlyList<string> Guessed(Mention? mention, Whom whom, string? task)
    {
        if (Births.Count == 1)
        {
            var (dam, litter) = Births.First();
            return whom == Whom.Dam ? [dam] : litter.Count == 1 || mention?.Plural == true ? OfBaby(herd.Find(dam), mention ?? new Mention(MentionKind.BabyOf), Whom.Baby) : [Fact.AskAnimal];
        }

        return whom == Whom.Dam ? guess.Dam(mention, task) : mention is { Plural: true } && guess.TwinsLastNamed() is { Length: > 1 } twins ? [.. twins.Select(baby => herd.Entry(baby).Name)] : guess.Baby(mention, task);
    }

    private static string BabyName(string dam, int? n) => n is null ? $"{dam}'s baby" : $"{dam}'s baby {n}";
}

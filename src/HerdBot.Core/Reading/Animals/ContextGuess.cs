using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading.Lexicon;
using NodaTime;

namespace HerdBot.Core.Reading.Animals;

/// <summary>Weighs which animal a message means that names none. Where two are as likely, it asks.</summary>
internal sealed class ContextGuess(Circumstances known)
{
    private const int Clear = 10;
    private const int SaidWeight = 60;
    private const int TaskWeight = 40;
    private const int ReminderWeight = 15;
    private const int RecentWeight = 25;
    private const int YoungWeight = 20;
    private static readonly string[] ColourWords = ["", "white", "black", "brown", "tan", "grey", "spotted", "red", "roan", "paint", "cream"];
    private readonly HerdIndex herd = known.Herd;

    public static bool HasColour(HerdEntry entry, int colour) =>
        entry.Colour is { } own && colour > 0 && colour < ColourWords.Length
        && Vocabulary.English.Phrases.Match([Vocabulary.English.Words.Find(own.Split(' ')[^1].ToLowerInvariant(), own.Split(' ')[^1].ToLowerInvariant())], 0, out var sense) == 1
        && sense.Tags.Has(Tag.Colour) && sense.Argument == colour;

    public IReadOnlyList<string> Baby(Mention? mention, string? task)
    {
        if (Replied(mention, task) is { } replied)
        {
            return [replied];
        }

        if (mention?.Ordinal is { } n && TwinsLastNamed() is { } twins && twins.Length >= n)
        {
            return [herd.Entry(twins[n - 1]).Name];
        }

        if (mention is { Size: not 0 } && BySize(mention.Size) is { } sized)
        {
            return [sized];
        }

        if (mention is { Size: not 0 })
        {
            return [Fact.AskAnimal];
        }

        // Both are waited for: only what was said tells them apart.
        var waited = Babies(mention).Where(baby => known.Context.Reminders.Any(one => one.Task == task && SameName(one.Animal, herd.Entry(baby).Name))).ToList();
        return waited.Count > 1 && known.Reply is null ? Best(waited, baby => SaidScore(baby, herd.Find(herd.Entry(baby).Dam))) : Best(Babies(mention), baby => BabyScore(baby, task));
    }

    // "the smaller one": by the weights on record
    private string? BySize(int size)
    {
        var young = TwinsLastNamed() is { Length: > 1 } twins ? twins : [.. Babies(null)];
        var weights = young.Select(baby => (herd.Entry(baby).Name, Grams(known.Context.Log.LastOrDefault(fact => fact.Fact.Kind == FactKind.Weight && SameName(fact.Fact.Animal, herd.Entry(baby).Name))?.Fact))).ToList();
        return young.Length < 2 || weights.Exists(one => one.Item2 is null) ? null : (size < 0 ? weights.MinBy(one => one.Item2) : weights.MaxBy(one => one.Item2)).Name;
    }

    private static decimal? Grams(Fact? fact) =>
        fact?.Value * fact?.Unit switch { FactUnit.Lb => 453.6m, FactUnit.Kg => 1000m, _ => 1m };

    public IReadOnlyList<string> Dam(Mention? mention, string? task)
    {
        if (Replied(null, task) is { } replied && DamOf(replied) is { } dam)
        {
            return [dam];
        }

        var dams = Enumerable.Range(0, herd.Entries.Length).Where(i => herd.Entry(i).Role == HerdRole.Dam
            && herd.Entry(i).State is not (HerdEntryState.Sold or HerdEntryState.Dead) && (mention?.Species is not { } species || herd.Entry(i).Species is not { } own || own == species)
            && (mention is not { Colour: > 0 } || HasColour(herd.Entry(i), mention.Colour)));
        return Best(dams, i => DamScore(i, task));
    }

    /// <summary>This season's young that the words fit.</summary>
    public IEnumerable<int> Babies(Mention? mention) =>
        Enumerable.Range(0, herd.Entries.Length).Where(i => herd.IsYoung(i) && herd.Entry(i).State is not (HerdEntryState.Sold or HerdEntryState.Dead)
            && (mention?.Sex is not { } sex || herd.SexOf(i) is not { } own || own == sex)
            && (mention is not { Colour: > 0 } || HasColour(herd.Entry(i), mention.Colour)));

    /// <summary>The twins that were born or named last, in their order.</summary>
    public int[] TwinsLastNamed()
    {
        var dams = Enumerable.Range(0, herd.Entries.Length).Where(i => herd.BabiesOf(i).Count(baby => herd.Entry(baby).Role == HerdRole.Newborn) > 1).ToArray();
        var dam = dams.Length == 1 ? dams[0] : dams.OrderByDescending(i => DamScore(i, null)).Cast<int?>().FirstOrDefault() ?? -1;
        return [.. herd.BabiesOf(dam).OrderBy(baby => herd.Entry(baby).Name, StringComparer.Ordinal)];
    }

    private string? Replied(Mention? mention, string? task)
    {
        var animal = known.Reply?.Animal ?? known.ReplyLog?.Fact.Animal;
        var entry = herd.Find(animal);
        if (animal is null || (entry >= 0 && mention?.Sex is { } sex && herd.SexOf(entry) is { } own && own != sex && mention.Kind != MentionKind.Pronoun))
        {
            return null;
        }

        if (entry >= 0 && herd.Entry(entry).Role == HerdRole.Dam && Kinship.OfTask(task) == Whom.Baby && herd.BabiesOf(entry) is { Count: 1 } babies)
        {
            return herd.Entry(babies[0]).Name;
        }

        return animal;
    }

    private string? DamOf(string animal) =>
        herd.Find(animal) is >= 0 and var entry ? herd.IsYoung(entry) ? herd.Entry(entry).Dam : animal : HerdIndex.SplitBabyName(animal)?.Dam;

    private IReadOnlyList<string> Best(IEnumerable<int> candidates, Func<int, int> score)
    {
        var ranked = candidates.Select(i => (Entry: i, Score: score(i))).OrderByDescending(pair => pair.Score).Take(2).ToArray();
        return ranked.Length switch
        {
            0 => [],
            1 => [herd.Entry(ranked[0].Entry).Name],
            _ => ranked[0].Score - ranked[1].Score >= Clear ? [herd.Entry(ranked[0].Entry).Name] : [Fact.AskAnimal],
        };
    }

    private int BabyScore(int baby, string? task)
    {
        var entry = herd.Entry(baby);
        var dam = entry.Dam ?? "";
        var score = SaidScore(baby, herd.Find(dam));
        foreach (var reminder in known.Context.Reminders.Where(one => SameName(one.Animal, entry.Name)))
        {
            score += reminder.Task == task ? TaskWeight : ReminderWeight;
        }

        score += Lead(entry.Name, dam) ? RecentWeight : 0;
        return score + AgeScore(baby) + (entry.Role == HerdRole.Newborn ? 5 : 0);
    }

    private int AgeScore(int baby) => known.BornAt(baby) is { } born && Period.DaysBetween(born.Date, known.Context.Now.Date) is var days
        ? days switch { <= 1 when Hours(born) < 6 => YoungWeight + 5, <= 1 => YoungWeight, <= 7 => 8, _ => 0 }
        : 0;

    private long Hours(LocalDateTime born) => Period.Between(born, known.Context.Now.LocalDateTime, PeriodUnits.Hours).Hours;

    private int DamScore(int dam, string? task)
    {
        var entry = herd.Entry(dam);
        var score = SaidScore(dam, dam) + herd.BabiesOf(dam).Select(baby => SaidScore(baby, -1)).DefaultIfEmpty().Max() / 2;
        foreach (var reminder in known.Context.Reminders.Where(one => SameName(one.Animal, entry.Name)))
        {
            score += reminder.Task == task ? TaskWeight : ReminderWeight;
        }

        var fresh = known.Context.Log.LastOrDefault(fact => fact.Fact.Kind == FactKind.Birth && SameName(fact.Fact.Animal, entry.Name)) is { } birth
            && known.IsFresh(birth, Duration.FromHours(36));
        score += Lead(entry.Name, $"{entry.Name}'s baby") ? RecentWeight : 0;
        score += entry.State == HerdEntryState.InLabour && task is not "placenta" ? TaskWeight : 0;
        score += fresh ? (task == "placenta" ? PlacentaScore(entry.Name) : YoungWeight) : 0;
        return score + (task is "birth" or "labour" && entry.State is HerdEntryState.Due ? Clear + 5 : 0);
    }

    private int PlacentaScore(string dam) =>
        known.Context.Log.Any(fact => fact.Fact is { Kind: FactKind.Placenta, Neg: false } && SameName(fact.Fact.Animal, dam)) ? 0 : TaskWeight;

    private int SaidScore(int animal, int dam)
    {
        for (var i = known.Said.Count - 1; i >= 0; i--)
        {
            var (mention, age) = known.Said[i];
            if (mention.Entries.Contains(animal) || (dam >= 0 && mention.Entries.Contains(dam)))
            {
                return Math.Max(0, SaidWeight - ((known.Said.Count - 1 - i) * 12) - (int)Math.Min(SaidWeight, age.TotalMinutes / 20));
            }
        }

        return 0;
    }

    // The newest record is about this animal, and clearly newer than any about another.
    private bool Lead(string name, string kin)
    {
        var log = known.Context.Log;
        if (log.IsDefaultOrEmpty)
        {
            return false;
        }

        var newest = log[^1];
        var other = log.LastOrDefault(fact => !SameName(fact.Fact.Animal, name) && !SameName(fact.Fact.Animal, kin) && fact.Fact.Animal is not null);
        return (SameName(newest.Fact.Animal, name) || SameName(newest.Fact.Animal, kin))
            && known.IsFresh(newest, Duration.FromHours(8))
            && (other?.At is not { } at || newest.At is not { } last || last - at > Duration.FromMinutes(newest.Fact.Kind == FactKind.Birth && other.Fact.Kind == FactKind.Birth ? 60 : 10) || newest.Fact.Kind is FactKind.Birth == false && other.Fact.Kind == FactKind.Birth);
    }

    private static bool SameName(string? a, string? b) => a is not null && string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}

using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Reading.Animals;

/// <summary>Weighs which animal a message means that names none. Where two are as likely, it asks.</summary>
internal sealed class ContextGuess(Circumstances known)
{
    private const int Clear = 10;
    private const int SaidWeight = 60;
    private const int SaidStep = 12;
    private const int TaskWeight = 40;
    private const int ReminderWeight = 15;
    private const int RecentWeight = 25;
    private const int YoungWeight = 20;
    private const int DaysYoung = 7;
    private const string Unnamed = "'s baby";
    private readonly HerdIndex herd = known.Herd;
    private (Mention Mention, int Weight)[]? said;

    // What was said further back has no weight any more.
    private (Mention Mention, int Weight)[] Said => said ??=
        [.. known.Said.Take(SaidWeight / SaidStep).Select((line, back) => (line.Mention, Math.Max(0, SaidWeight - (back * SaidStep) - (int)Math.Min(SaidWeight, line.Age.TotalMinutes / 20))))];

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

        if (mention is { Size: not 0 })
        {
            return [BySize(mention.Size) ?? Fact.AskAnimal];
        }

        // Both are waited for: only what was said tells them apart.
        int[] waited = known.Reply is null && known.Context.Reminders.Length > 1 ? [.. WaitedFor(task).Where(baby => herd.Suits(baby, mention))] : [];
        return waited.Length > 1 ? Best(waited, mention, task, (baby, _) => SaidScore(baby, herd.Entry(baby).Dam)) : Best(herd.Young.AsSpan(), mention, task, BabyScore);
    }

    public IReadOnlyList<string> Dam(Mention? mention, string? task) =>
        Replied(null, task) is { } replied && DamOf(replied) is { } dam ? [dam] : Best(herd.Dams.AsSpan(), mention, task, DamScore);

    private IEnumerable<int> WaitedFor(string? task) =>
        known.Context.Reminders.Where(one => one.Task == task).Select(one => herd.Find(one.Animal)).Where(entry => entry >= 0 && herd.IsYoung(entry)).Distinct();

    // "the smaller one": by the weights on record
    private string? BySize(int size)
    {
        var young = TwinsLastNamed() is { Length: > 1 } twins ? twins : [.. herd.Young];
        var weights = young.Select(baby => (herd.Entry(baby).Name, Grams: Grams(known.Context.Log.LastOrDefault(fact => fact.Fact.Kind == FactKind.Weight && SameName(fact.Fact.Animal, herd.Entry(baby).Name))?.Fact))).ToList();
        return young.Length < 2 || weights.Exists(one => one.Grams is null) ? null : (size < 0 ? weights.MinBy(one => one.Grams) : weights.MaxBy(one => one.Grams)).Name;
    }

    private static decimal? Grams(Fact? fact) =>
        fact?.Value * fact?.Unit switch { FactUnit.Lb => 453.6m, FactUnit.Kg => 1000m, _ => 1m };

    /// <summary>This season's young that the words fit.</summary>
    public IEnumerable<int> Babies(Mention? mention) => herd.Young.Where(baby => herd.Suits(baby, mention));

    /// <summary>The twins that were born or named last, in their order.</summary>
    public int[] TwinsLastNamed()
    {
        var dams = herd.TwinDams;
        var dam = dams.Length switch { 0 => -1, 1 => dams[0], _ => dams.MaxBy(i => DamScore(i, null)) };
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

    private IReadOnlyList<string> Best(ReadOnlySpan<int> candidates, Mention? mention, string? task, Func<int, string?, int> score)
    {
        var (best, first, second) = (-1, int.MinValue, int.MinValue);
        foreach (var candidate in candidates)
        {
            if (!herd.Suits(candidate, mention))
            {
                continue;
            }

            var points = score(candidate, task);
            if (points > first)
            {
                (best, first, second) = (candidate, points, first);
            }
            else
            {
                second = Math.Max(second, points);
            }
        }

        return best < 0 ? [] : second == int.MinValue || first - second >= Clear ? [herd.Entry(best).Name] : [Fact.AskAnimal];
    }

    private int BabyScore(int baby, string? task)
    {
        var entry = herd.Entry(baby);
        var dam = entry.Dam ?? "";
        var score = SaidScore(baby, dam) + ReminderScore(entry.Name, task);
        score += Lead(entry.Name, dam) ? RecentWeight : 0;
        return score + AgeScore(entry) + (entry.Role == HerdRole.Newborn ? 5 : 0);
    }

    private int AgeScore(HerdEntry baby)
    {
        var today = known.Context.Now.Date;
        if (baby.Born is not { Time: { } time } born || born.Date < today.PlusDays(-DaysYoung))
        {
            return 0;
        }

        return born.Date < today.PlusDays(-1) ? 8
            : Period.Between(born.Date + time, known.Context.Now.LocalDateTime, PeriodUnits.Hours).Hours < 6 ? YoungWeight + 5
            : YoungWeight;
    }

    private int DamScore(int dam, string? task)
    {
        var entry = herd.Entry(dam);
        var score = SaidScore(dam, null) + (BabiesSaidScore(dam) / 2) + ReminderScore(entry.Name, task);
        var fresh = known.BirthOf(entry.Name) is { } birth && known.IsFresh(birth, Duration.FromHours(36));
        score += Lead(entry.Name, null) ? RecentWeight : 0;
        score += entry.State == HerdEntryState.InLabour && task is not "placenta" ? TaskWeight : 0;
        score += fresh ? (task == "placenta" ? PlacentaScore(entry.Name) : YoungWeight) : 0;
        return score + (task is "birth" or "labour" && entry.State is HerdEntryState.Due ? Clear + 5 : 0);
    }

    private int PlacentaScore(string dam) =>
        known.Context.Log.Any(fact => fact.Fact is { Kind: FactKind.Placenta, Neg: false } && SameName(fact.Fact.Animal, dam)) ? 0 : TaskWeight;

    private int ReminderScore(string animal, string? task)
    {
        var score = 0;
        foreach (var reminder in known.Context.Reminders)
        {
            score += !SameName(reminder.Animal, animal) ? 0 : reminder.Task == task ? TaskWeight : ReminderWeight;
        }

        return score;
    }

    private int BabiesSaidScore(int dam)
    {
        var babies = herd.BabiesOf(dam);
        var score = 0;
        for (var i = 0; i < babies.Count; i++)
        {
            score = Math.Max(score, SaidScore(babies[i], null));
        }

        return score;
    }

    private int SaidScore(int animal, string? dam)
    {
        foreach (var (mention, weight) in Said)
        {
            if (mention.Entries.Contains(animal) || (dam is not null && herd.Find(dam) is >= 0 and var entry && mention.Entries.Contains(entry)))
            {
                return weight;
            }
        }

        return 0;
    }

    // The newest record is about this animal or its kin (a dam's unnamed newborn, a newborn's dam), and clearly newer than any about another.
    private bool Lead(string name, string? dam) =>
        known.LastLog is { } newest && IsKin(newest, name, dam) && known.IsFresh(newest, Duration.FromHours(8)) && IsAhead(newest, name, dam);

    private bool IsAhead(LoggedFact newest, string name, string? dam)
    {
        var other = known.Context.Log.LastOrDefault(fact => fact.Fact.Animal is not null && !IsKin(fact, name, dam));
        var births = newest.Fact.Kind == FactKind.Birth && other?.Fact.Kind == FactKind.Birth;
        return other?.At is not { } at || newest.At is not { } last || last - at > Duration.FromMinutes(births ? 60 : 10) || (newest.Fact.Kind != FactKind.Birth && other.Fact.Kind == FactKind.Birth);
    }

    private static bool IsKin(LoggedFact fact, string name, string? dam) =>
        fact.Fact.Animal is { } animal && (SameName(animal, name) || (dam is not null ? SameName(animal, dam) : IsBabyOf(animal, name)));

    private static bool IsBabyOf(string animal, string dam) =>
        animal.Length == dam.Length + Unnamed.Length && animal.StartsWith(dam, StringComparison.OrdinalIgnoreCase) && animal.EndsWith(Unnamed, StringComparison.OrdinalIgnoreCase);

    private static bool SameName(string? a, string? b) => a is not null && string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}

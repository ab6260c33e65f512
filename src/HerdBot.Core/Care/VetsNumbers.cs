using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Whether a number that the farm's vet set stands behind what a post says.</summary>
public static class VetsNumbers
{
    /// <summary>What stands behind a wording that is not the name of a number itself.</summary>
    private static readonly Dictionary<string, string[]> Behind = new(StringComparer.Ordinal)
    {
        ["warm cold"] = ["warmth.normal_low"],
        ["warm unfed"] = ["warmth.normal_low", "warmth.sugar_age"],
        ["warm late_cold"] = ["warmth.normal_low", "warmth.late_cold"],
        ["warm emergency"] = ["warmth.emergency_low"],
        ["warm critical"] = ["warmth.critical_low"],
        ["warm slow"] = ["warmth.slow_rise", "warmth.slow_within", "warmth.slow_after"],
        ["temperature hot"] = ["warmth.vet_high"],
        ["temperature dull"] = ["warmth.high"],
        ["temperature again"] = ["warmth.read_again", "warmth.read_late", "warmth.read_vet"],
        ["weight small"] = ["weight.small"],
        ["weight first_loss"] = ["weight.first_loss", "weight.first_loss_percent"],
        ["weight slow"] = ["weight.gain_low", "weight.slow_days"],
        ["vet_today early"] = ["due.early", "early.signs", "early.up_by"],
        ["colostrum"] = ["colostrum.percent", "colostrum.assumed_weight"],
        ["feed"] = ["feed.percent", "feed.percent_top", "feed.a_day", "feed.a_day_second", "feed.a_day_third", "feed.most_per_kg"],
    };

    /// <summary>Whether the vet's own number brought the step at which a task stands, or figures in its words.</summary>
    /// <param name="table">The species' numbers.</param>
    /// <param name="task">A task of the plan.</param>
    /// <param name="now">The instant.</param>
    public static bool Speaks(CareTable table, CareTask task, Instant now)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(task);
        if (table.OfTheVet.IsEmpty)
        {
            return false;
        }
        var word = CareTaskWords.Word(task.Key.Name);
        var label = (task.StepAt(now)?.Label ?? "").Split(' ') is [var first, ..] ? first : "";
        string[] names = [$"{word}.{label}", $"{word}.risk_{label}", $"{word}.{task.Wording}", $"{word}.{task.Wording}_{label}", $"{word}.{task.Key.Which}"];
        string[] wordings = [word, $"{word} {task.Wording}", $"{word} {label}"];
        return table.OfTheVet.Intersect(names.Concat(wordings.SelectMany(wording => Behind.GetValueOrDefault(wording) ?? []))).Any();
    }
}

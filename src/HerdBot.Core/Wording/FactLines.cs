using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Wording;

/// <summary>Says back what was understood: animal, what, value with unit, time.</summary>
/// <param name="Speaker">Says times and figures.</param>
public sealed record FactLines(Speaker Speaker)
{
    private Phrases Phrases => Speaker.Phrases;

    /// <summary>A record in a few words: "girl, born 6:40", "99.2 °F", "nursing 7:50".</summary>
    public string Say(HerdRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return Say(record.Fact, record.Fact.At is null ? null : record.At, record.Fact.Kind == FactKind.Birth ? record.At : null, record.By);
    }

    /// <summary>A fact that is not recorded yet.</summary>
    public string Say(Fact fact, string by)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return Say(fact, null, null, by);
    }

    private string Say(Fact fact, Instant? at, Instant? born, string by)
    {
        var word = FactWords.Word(fact.Kind);
        string[] keys =
        [
            fact.Task is not null ? $"fact.{word}.{fact.Task}" : $"fact.{word}.-",
            fact.Kind == FactKind.Temperature && fact.Value is null ? $"fact.{word}.none" : $"fact.{word}.-",
            fact.Sire is not null && !fact.Neg ? $"fact.{word}.sire" : $"fact.{word}.-",
            fact.Neg ? $"fact.{word}.neg" : fact.Sex is { } sex ? $"fact.{word}.{FactWords.Word(sex)}" : $"fact.{word}.-",
            $"fact.{word}", "noun.other",
        ];
        var said = Phrases.SayFirst(keys, ("value", Speaker.Said(fact)), ("text", fact.Text ?? ""), ("name", fact.Name ?? ""), ("by", by),
            ("task", Task(fact)), ("answer", Answer(fact)), ("sire", fact.Sire ?? ""), ("at", born is { } instant ? Speaker.Clock(instant) : "")).Trim().TrimEnd(',', ':');
        said = fact.Unsure ? Phrases.Say("fact.unsure", ("fact", said)) : said;
        return at is { } when && born is null ? Phrases.Say("fact.at", ("fact", said), ("at", Speaker.Clock(when))) : said;
    }

    private string Answer(Fact fact) => Phrases.SayFirst([$"button.{fact.Task}", "button.other"]).ToLowerInvariant();

    private string Task(Fact fact) => CareTaskWords.TryParse(fact.Task, out var name)
        ? Phrases.SayFirst([$"noun.{CareTaskWords.Word(name)}", "noun.other"]) : fact.Task ?? "";
}

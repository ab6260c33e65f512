using HerdBot.Core.Care;
using HerdBot.Core.Due;
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
            fact.Says(MatingTopics.Pen) && fact is { Sire: not null, Neg: false } ? $"fact.{word}.pen" : $"fact.{word}.-",
            fact.Task is not null ? $"fact.{word}.{fact.Task}" : $"fact.{word}.-",
            CareTaskWords.TryParse(fact.Task, out _) ? $"fact.{word}.task" : $"fact.{word}.-",
            fact.Kind == FactKind.Temperature && fact.Value is null ? $"fact.{word}.none" : $"fact.{word}.-",
            fact is { Kind: FactKind.Roster, Field: not null } ? $"fact.{word}.{fact.Field}" : $"fact.{word}.-",
            fact.Sire is not null && !fact.Neg ? $"fact.{word}.sire" : $"fact.{word}.-",
            fact.Neg ? $"fact.{word}.neg" : fact.Sex is { } sex ? $"fact.{word}.{FactWords.Word(sex)}" : $"fact.{word}.-",
            $"fact.{word}", "noun.other",
        ];
        var said = Phrases.SayFirst(keys, ("value", Speaker.Said(fact)), ("text", fact.Text ?? ""), ("name", fact.Name ?? ""), ("was", Speaker.Name(fact.Was ?? fact.Animal ?? "")), ("traits", Traits(fact)), ("by", by),
            ("task", Task(fact)), ("answer", Answer(fact)), ("sire", fact.Sire ?? ""), ("at", born is { } instant ? Speaker.Clock(instant) : "")).Trim().TrimEnd(',', ':');
        said = fact.Unsure ? Phrases.Say("fact.unsure", ("fact", said)) : said;
        return at is not { } when || born is not null ? said
            : fact.Until is { } until ? Phrases.Say("fact.from_to", ("fact", said), ("from", Speaker.Date(fact.At!.Value.Date)), ("to", Speaker.Date(until)))
            : Phrases.Say("fact.at", ("fact", said), ("at", fact.At is { Time: null } day && day.Date != Speaker.Farm.Clock.Day(Speaker.Now) ? Speaker.Date(day.Date) : Speaker.Clock(when)));
    }

    /// <summary>"dam, alpaca, brown, tag 14": what is told of an animal that joins the herd.</summary>
    private string Traits(Fact fact)
    {
        var traits = fact.Traits ?? new AnimalTraits();
        string?[] told =
        [
            traits.Role is { } role ? Phrases.SayFirst([$"role.{FactWords.Snake(role.ToString())}", "role.young"]) : fact.Sex is { } sex ? Phrases.Say(sex == Sex.Female ? "role.dam" : "role.sire") : null,
            traits.Dam is { } dam ? Phrases.Say(fact.Sex switch { Sex.Female => "roster.girl_of", Sex.Male => "roster.boy_of", _ => "roster.baby_of" }, ("dam", dam)) : null,
            traits.Species switch
            {
                Species.Llama => Phrases.Say("species.llama"),
                Species.Alpaca => Phrases.Say("species.alpaca"),
                Species.Sheep => Phrases.Say("species.sheep"),
                Species.Goat => Phrases.Say("species.goat"),
                _ => null,
            },
            traits.Colour, traits.Tag is { } tag ? Phrases.Say("fact.roster.tag", ("traits", tag)) : null,
        ];
        return fact.Field == RosterWords.Tag ? traits.Tag ?? "" : string.Join(", ", told.Where(one => one is not null).Select((one, place) => place == 0 ? one!.ToLowerInvariant() : one));
    }

    private string Answer(Fact fact) => Phrases.SayFirst([$"button.{fact.Task}", "button.other"]).ToLowerInvariant();

    private string Task(Fact fact) => CareTaskWords.TryParse(fact.Task, out var name)
        ? Phrases.SayFirst([$"noun.{CareTaskWords.Word(name)}", "noun.other"]) : fact.Task ?? "";
}

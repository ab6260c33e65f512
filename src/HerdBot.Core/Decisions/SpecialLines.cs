using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Wording;

namespace HerdBot.Core.Decisions;

/// <summary>What is new to say about a record: warmth, feeding in the cold, milk so far.</summary>
internal static class SpecialLines
{
    public static IEnumerable<string> Of(Draft draft, HerdRecord record)
    {
        var animal = draft.State.Find(record.Newborn ?? record.Animal);
        if (animal is null)
        {
            return [];
        }
        if (record is { Certain: true, Fact.Kind: FactKind.Death })
        {
            return [draft.Phrases.Say("reply.death", ("animal", draft.Called(animal)))];
        }
        if (animal.Born is null || NewbornView.Of(draft.State, draft.Farm, animal, draft.Now) is not { } baby)
        {
            return animal.Born is not null && record.Fact.Kind == FactKind.Birth ? [draft.Phrases.Say("reply.no_care")] : OfDam(draft, record);
        }
        return record.Fact.Kind switch
        {
            FactKind.Temperature => Temperature(draft, baby),
            FactKind.Nursing when record.Certain && baby.Warmth.HoldSince is not null => [draft.Phrases.Say("reply.nursing_cold", Again(draft, baby))],
            FactKind.Colostrum or FactKind.Feed when record.Certain => Milk(draft, record, baby),
            FactKind.Weight when baby.Weights.Length == 1 && baby.Weights[0].Grams < baby.Table.Number(CareKeys.WeightSmall) * 1000 => [draft.Phrases.Say("reply.small")],
            FactKind.Claim => Called(draft, record),
            _ => [],
        };
    }

    private static IEnumerable<string> OfDam(Draft draft, HerdRecord record) => record.Fact.Kind switch
    {
        FactKind.Placenta when record.Certain => Says(draft, record, "words.torn") ? [draft.Phrases.Say("reply.placenta.torn")]
            : Says(draft, record, "words.whole") ? [] : [draft.Phrases.Say("reply.placenta")],
        FactKind.Claim => Called(draft, record),
        _ => [],
    };

    /// <summary>Whether the message that a record came in has one of some words.</summary>
    private static bool Says(Draft draft, HerdRecord record, string words) => draft.State.Lines.FindLast(line => line.Message == record.Message)?.Text is { } text
        && Phrases.All.SelectMany(language => language.Words(words)).Any(word => text.Contains(word, StringComparison.OrdinalIgnoreCase));

    private static IEnumerable<string> Called(Draft draft, HerdRecord record)
    {
        if (record.Fact.Task == CareTaskWords.CallVet && record.Animal is { } animal && draft.State.Find(animal) is { } named && draft.Farm.TableOf(named.Species) is { } table)
        {
            yield return draft.Phrases.Say("reply.called", ("animal", draft.Called(named)), ("until", draft.Speaker.Clock(record.SaidAt + table.Time(CareKeys.PostingCalled))));
        }
    }

    private static IEnumerable<string> Temperature(Draft draft, NewbornView baby)
    {
        if (baby.Warmth.Last is not { } last)
        {
            yield break;
        }
        if (baby.Warmth.HoldEnded == last.At)
        {
            yield return draft.Phrases.Say("reply.warm.released", ("stop", draft.Speaker.Temperature(baby.Table.Number(CareKeys.WarmthStrongHeatStop))));
            yield break;
        }
        var held = baby.Warmth.HoldSince is not null;
        if (held && baby.Warmth.Progress is { PerHour: { } rise } progress && last.Fahrenheit < baby.Table.Number(CareKeys.WarmthNormalLow))
        {
            yield return progress.NormalAt is { } at
                ? draft.Phrases.Say("reply.warm.rise_at", ("rise", draft.Speaker.Rise(rise)), ("normal", draft.Speaker.Temperature(baby.Table.Number(CareKeys.WarmthNormalLow))), ("at", draft.Speaker.Clock(at)))
                : rise > 0 ? draft.Phrases.Say("reply.warm.rise", ("rise", draft.Speaker.Rise(rise))) : draft.Phrases.Say("reply.warm.falling");
        }
        var key = held && !last.Holds ? "reply.warm.holding"
            : held && baby.Warmth.HoldSince != last.At ? "reply.warm.still" : $"reply.warm.{last.Band}";
        if (draft.Phrases.Has(key))
        {
            yield return draft.Phrases.Say(key, [.. Again(draft, baby), ("watch", draft.Speaker.Temperature(baby.Table.Number(CareKeys.WarmthWatchLow)))]);
        }
    }

    private static IEnumerable<string> Milk(Draft draft, HerdRecord record, NewbornView baby)
    {
        if (baby.Warmth.HoldSince is not null)
        {
            yield return draft.Phrases.Say("reply.fed_cold", Again(draft, baby));
        }
        else if (record.Fact.Kind == FactKind.Colostrum && draft.Now - baby.Born < baby.Table.Time(CareKeys.ColostrumLapses))
        {
            var (target, assumed) = baby.ColostrumTarget();
            yield return draft.Phrases.Say("reply.colostrum", ("given", draft.Speaker.Amount(baby.ColostrumGiven(draft.Now))), ("target", draft.Speaker.Amount(target)),
                ("assumed", assumed ? draft.Phrases.Say("post.assumed") : ""));
        }
    }

    private static (string, string)[] Again(Draft draft, NewbornView baby) =>
        [("again_at", baby.Warmth.Last is { Again: { } pause } last ? draft.Speaker.Coming(last.At + pause) : "")];
}

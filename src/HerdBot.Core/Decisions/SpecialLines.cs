using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;

namespace HerdBot.Core.Decisions;

/// <summary>What is new to say about a record: warmth, feeding in the cold, milk so far, the vet's orders.</summary>
internal static class SpecialLines
{
    public static IEnumerable<string> Of(Draft draft, HerdRecord record)
    {
        if (record.Fact.Kind == FactKind.Weather)
        {
            return Weather(draft, record);
        }
        var animal = draft.State.Find(record.Newborn ?? record.Animal);
        if (animal is null)
        {
            return [];
        }
        if (record is { Certain: true, Fact.Kind: FactKind.Death })
        {
            string[] sorry = [draft.Phrases.Say("reply.death", ("animal", draft.Called(animal)))];
            return record.Newborn is null ? sorry : [.. sorry, draft.Phrases.Say("reply.people")];
        }
        if (record is { Certain: true, Fact.Kind: FactKind.Breeding or FactKind.PregnancyCheck } or { Fact: { Kind: FactKind.PregnancyCheck, Neg: true, Unsure: false }, Withdrawn: false })
        {
            return DueLines.Of(draft, record, animal);
        }
        if (animal.Born is null || NewbornView.Of(draft.State, draft.Farm, animal, draft.Now) is not { } baby)
        {
            return animal.Born is not null && record.Fact.Kind == FactKind.Birth ? [draft.Phrases.Say("reply.no_care")] : [.. OfDam(draft, record), .. Vet(draft, record, animal)];
        }
        return [.. OfNewborn(draft, record, baby), .. Vet(draft, record, animal)];
    }

    private static IEnumerable<string> OfNewborn(Draft draft, HerdRecord record, NewbornView baby) => record.Fact.Kind switch
    {
        FactKind.Birth => DueLines.Born(draft, baby),
        FactKind.Temperature => Temperature(draft, baby),
        FactKind.Nursing when record.Certain && baby.Warmth.HoldSince is not null => [draft.Phrases.Say("reply.nursing_cold", Again(draft, baby))],
        FactKind.Colostrum or FactKind.Feed when record.Certain => MilkLines.Of(draft, record, baby),
        FactKind.Weight when record.Certain => Gain(draft, baby),
        FactKind.Note when record.Certain && record.Fact.Says(NoteTopics.CoatOn) => [draft.Phrases.Say("reply.coat_on")],
        _ => [],
    };

    private static IEnumerable<string> OfDam(Draft draft, HerdRecord record) =>
        record is { Certain: true, Fact.Kind: FactKind.Placenta } && !record.Fact.Says(NoteTopics.Torn, NoteTopics.Whole) ? [draft.Phrases.Say("reply.placenta")] : [];

    /// <summary>Whatever the animal: the vet was phoned, has it, is gone, or ordered something.</summary>
    private static IEnumerable<string> Vet(Draft draft, HerdRecord record, Animal animal)
    {
        if (draft.Farm.TableOf(animal.Species) is not { } table)
        {
            yield break;
        }
        if (record is { Fact: { Kind: FactKind.Claim, Task: CareTaskWords.CallVet } })
        {
            yield return draft.Phrases.Say("reply.called", ("animal", draft.Called(animal)), ("until", draft.Speaker.Clock(record.SaidAt + table.Time(CareKeys.PostingCalled))));
        }
        else if (record.Certain && record.Fact.Says(NoteTopics.Back))
        {
            yield return draft.Phrases.Say("reply.back", ("animal", draft.Called(animal)));
        }
        else if (record.Certain && record.Fact.Says(NoteTopics.Away))
        {
            yield return draft.Phrases.Say("reply.away", ("animal", draft.Called(animal)), ("until", draft.Speaker.Clock(record.SaidAt + table.Time(CareKeys.AwayMost))));
        }
        else if (VetOrders.Of(record, draft.Farm) is { } order)
        {
            yield return Order(draft, order, animal);
        }
    }

    private static string Order(Draft draft, VetOrder order, Animal animal)
    {
        var often = order.Every is { } hours ? draft.Phrases.Say("order.every", ("n", draft.Speaker.Figure(hours, 0))) : draft.Phrases.Say($"order.a_day.{order.ADay}");
        var once = order.From == order.Until && order.ADay == 1;
        var task = order.Task == CareTaskName.VetToday ? order.Words : draft.TaskLines.Noun(order.Task);
        return draft.Phrases.Say(once ? "reply.order.once" : order.EndSaid ? "reply.order" : "reply.order.open",
            ("animal", draft.Called(animal)), ("task", task), ("often", often), ("until", draft.Speaker.Date(order.Until)));
    }

    /// <summary>Cold weather and newborns without a coat.</summary>
    private static IEnumerable<string> Weather(Draft draft, HerdRecord record)
    {
        var fahrenheit = Measures.Fahrenheit(record.Fact);
        var young = draft.State.Newborns.Where(baby => baby.State is null && draft.Farm.TableOf(baby.Species) is { } table
            && fahrenheit < table.Number(CareKeys.CoatUnder) && draft.Now - baby.Born < table.Time(CareKeys.CoatDays)).Select(draft.Called).ToList();
        return young.Count == 0 ? [] : [draft.Phrases.Say("reply.coat_cold", ("animals", draft.Speaker.List(young)))];
    }

    private static IEnumerable<string> Gain(Draft draft, NewbornView baby)
    {
        if (Growth.Of(baby) is not { } growth)
        {
            yield break;
        }
        if (growth.Band == "first_day")
        {
            yield return draft.Phrases.Say("reply.gain.first_day");
        }
        else if (growth is { Level: Level.Fine, GainADay: { } gain } && baby.Age > baby.Table.Time(CareKeys.WeightTrendDays) / 2)
        {
            yield return draft.Phrases.Say("reply.gain", ("gain", draft.Speaker.Gain(gain)),
                ("low", draft.Speaker.Gain(baby.Table.Number(CareKeys.WeightGainLow))), ("high", draft.Speaker.Gain(baby.Table.Number(CareKeys.WeightGainTop))));
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

    /// <summary>When the temperature is read again, for the wording.</summary>
    public static (string, string)[] Again(Draft draft, NewbornView baby) =>
        [("again_at", baby.Warmth.Last is { Again: { } pause } last ? draft.Speaker.Coming(last.At + pause) : "")];
}

using System.Collections.Immutable;
using System.Text.RegularExpressions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>A fact that is asked back although it is whole.</summary>
/// <param name="Fact">What waits.</param>
/// <param name="Ask">What is asked.</param>
/// <param name="Text">The question; null for the usual one.</param>
/// <param name="Choices">The answers; null for the usual ones.</param>
internal sealed record Doubt(Fact Fact, Ask Ask, string? Text = null, ImmutableArray<string>? Choices = null);

/// <summary>Figures that cannot be, births told twice, animals that nobody knows: asked before they are recorded.</summary>
internal static partial class Doubts
{
    private static readonly string[] UnitWords = ["lb", "#", "pound", "libra"];

    public static Doubt? About(Draft draft, Fact fact, string? message) => fact.Kind switch
    {
        FactKind.Breeding or FactKind.PregnancyCheck or FactKind.SpitOff when MatingDoubts.About(draft, fact) is { } doubt => doubt,
        _ when fact.Neg => Unknown(draft, fact),
        FactKind.Birth => TwinOrTwice(draft, fact, message) ?? Unknown(draft, fact),
        FactKind.Temperature => Impossible(draft, fact) ?? Unknown(draft, fact),
        FactKind.Weight => OffTheCurve(draft, fact, message) ?? OtherUnit(draft, fact, message) ?? Unknown(draft, fact),
        FactKind.Death => new Doubt(fact, Ask.Sure),
        FactKind.Note when Scale(draft, fact) is { } scale => scale,
        FactKind.Correction or FactKind.Undo => null,
        FactKind.Roster => Naming.Doubt(draft, fact),
        _ when OwnKinds.IsQuestion(fact.Kind) => null,
        _ => Future(draft, fact) ?? Unknown(draft, fact),
    };

    private static Doubt? Unknown(Draft draft, Fact fact) =>
        fact.Animal is null || Recording.AnimalOf(draft.State, fact) is not null ? null
            : new Doubt(fact with { Animal = Fact.AskAnimal, Name = fact.Animal }, Ask.Animal);

    private static Doubt? Future(Draft draft, Fact fact) =>
        fact.At is not null && fact.Kind is not (FactKind.Claim or FactKind.Note) && Recording.At(draft, fact, draft.Now) > draft.Now + Duration.FromMinutes(2)
            ? new Doubt(fact with { At = null }, Ask.Time) : null;

    /// <summary>Another birth of a dam that has one on record: a twin, or the same one told twice.</summary>
    private static Doubt? TwinOrTwice(Draft draft, Fact fact, string? message)
    {
        var dam = draft.State.Named(fact.Animal);
        var before = dam is null ? null : draft.State.NewbornsOf(dam.Id).LastOrDefault(baby => draft.Now - baby.Born < Duration.FromDays(60));
        if (before is null || fact.N > 1 || draft.State.RecordsOf(dam!.Id).Any(record => record.Newborn == before.Id && record.Message == message))
        {
            return Future(draft, fact);
        }
        var text = draft.Phrases.Say("ask.sure.twin", ("animal", draft.Called(dam!)), ("at", draft.Speaker.Clock(before.Born!.Value)));
        return new Doubt(fact, Ask.Sure, text, [draft.Phrases.Say("ask.twin.yes"), draft.Phrases.Say("ask.twin.no")]);
    }

    /// <summary>A score of body condition is one thing out of five and another out of nine.</summary>
    private static Doubt? Scale(Draft draft, Fact fact)
    {
        string[] scales = [draft.Phrases.Say("ask.scale.five"), draft.Phrases.Say("ask.scale.nine")];
        var score = fact.Says(NoteTopics.Condition) && fact.Text is { } text ? Score().Match(text) : Match.Empty;
        return !score.Success || scales.Any(scale => fact.Text!.EndsWith(scale, StringComparison.Ordinal)) ? null
            : new Doubt(fact, Ask.Unit, draft.Phrases.Say("ask.scale", ("animal", fact.Animal ?? ""), ("what", fact.Text!)), [.. scales]);
    }

    /// <summary>A figure from 1 to 9, and no "of 5", "/9" or "1-5" behind it.</summary>
    [GeneratedRegex(@"(?<![\d.,/-])[1-9]([.,]\d+)?(?![\d]|\s*(/|of|out of|de|sobre|-)\s*\d)", RegexOptions.IgnoreCase)]
    private static partial Regex Score();

    private static Doubt? Impossible(Draft draft, Fact fact)
    {
        var table = draft.Farm.TableOf(Recording.AnimalOf(draft.State, fact)?.Species ?? draft.Farm.Species);
        return Measures.Fahrenheit(fact) is { } f && table is not null && (f < table.Number(CareKeys.WarmthPossibleLow) || f > table.Number(CareKeys.WarmthPossibleHigh))
            ? new Doubt(fact with { Value = null, Unit = null }, Ask.Value) : Future(draft, fact);
    }

    /// <summary>A bare first weight that is far too small in pounds and common in kilograms: which unit?</summary>
    private static Doubt? OtherUnit(Draft draft, Fact fact, string? message)
    {
        var animal = Recording.AnimalOf(draft.State, fact);
        var text = draft.State.Lines.FindLast(line => line.Message == message)?.Text ?? "";
        if (animal?.Born is null || fact is not { Value: { } value, Unit: FactUnit.Lb } || Measures.Grams(fact) is not { } grams || draft.Newest(animal.Id, FactKind.Weight) is not null
            || draft.Farm.TableOf(animal.Species) is not { } table || UnitWords.Any(word => text.Contains(word, StringComparison.OrdinalIgnoreCase)))
        {
            return null;
        }
        var small = table.Number(CareKeys.WeightSmall) * 1000;
        return grams < small && value * 1000 >= small ? new Doubt(fact with { Unit = null }, Ask.Unit) : null;
    }

    /// <summary>Too far from the last weight for the days between.</summary>
    private static Doubt? OffTheCurve(Draft draft, Fact fact, string? message)
    {
        var animal = Recording.AnimalOf(draft.State, fact);
        if (animal?.Born is null || draft.Farm.TableOf(animal.Species) is not { } table || Measures.Grams(fact) is not { } grams || draft.State.RecordsOf(animal.Id).LastOrDefault(record => record.Certain && record.Fact.Kind == FactKind.Weight && (message is null || record.Message != message)) is not { } last || Measures.Grams(last.Fact) is not { } before)
        {
            return Future(draft, fact);
        }
        var share = table.Number(CareKeys.WeightOffPercent) / 100;
        var days = (decimal)(Recording.At(draft, fact, draft.Now) - last.At).TotalDays;
        var fits = grams >= before * (1 - share) && grams <= before * (1 + share) + Math.Max(0, days) * table.Number(CareKeys.WeightGainTop);
        return fits ? Future(draft, fact) : new Doubt(fact, Ask.Sure, draft.Phrases.Say("ask.sure.weight", ("animal", draft.Called(animal)), ("what", draft.FactLines.Say(fact, "")), ("was", draft.FactLines.Say(last.Fact with { At = null }, ""))));
    }
}

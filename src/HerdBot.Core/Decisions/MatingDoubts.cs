using HerdBot.Core.Due;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>Matings that cannot be or hardly are: asked before they are recorded.</summary>
internal static class MatingDoubts
{
    private const double Carries = 0.8;
    private const int ShownEarly = 60;

    public static Doubt? About(Draft draft, Fact fact)
    {
        if (Recording.AnimalOf(draft.State, fact) is not { } animal)
        {
            return null;
        }
        if (animal.Role == HerdRole.Sire || animal.Sex == Sex.Male)
        {
            return new Doubt(fact with { Animal = Fact.AskAnimal, Sire = fact.Kind == FactKind.Breeding ? animal.Name : fact.Sire }, Ask.Animal, draft.Phrases.Say("ask.male", ("name", animal.Name)));
        }
        return fact is { Kind: FactKind.Breeding, Neg: false } ? OfMating(draft, fact, animal) : null;
    }

    private static Doubt? OfMating(Draft draft, Fact fact, Animal dam)
    {
        var today = draft.Farm.Clock.Day(draft.Now);
        var from = fact.At?.Date ?? today;
        if (from > today)
        {
            return new Doubt(fact with { At = null, Until = null }, Ask.Time, draft.Phrases.Say("ask.mating.ahead", ("animal", dam.Name), ("date", draft.Speaker.Date(from))));
        }
        if (fact.Until < from)
        {
            return new Doubt(fact with { At = null, Until = null }, Ask.Time, draft.Phrases.Say("ask.mating.window", ("animal", dam.Name), ("from", draft.Speaker.Date(from)), ("to", draft.Speaker.Date(fact.Until.Value))));
        }
        return TooSoon(draft, fact, dam, from) ?? Carrying(draft, fact, dam, from);
    }

    private static Doubt? TooSoon(Draft draft, Fact fact, Animal dam, LocalDate from)
    {
        var born = draft.State.Newborns.Where(baby => baby.Dam == dam.Id).Select(baby => draft.Farm.Clock.Day(baby.Born!.Value)).Where(day => day <= from).DefaultIfEmpty(LocalDate.MinIsoValue).Max();
        var days = Period.DaysBetween(born, from);
        return draft.Farm.TableOf(dam.Species) is { } table && days < table.Count(DueKeys.TooSoon)
            ? new Doubt(fact, Ask.Sure, draft.Phrases.Say("ask.mating.soon", ("animal", dam.Name), ("days", DueAnswers.Whole(days)))) : null;
    }

    /// <summary>She counts as pregnant, and not just since: two pregnancies would overlap.</summary>
    private static Doubt? Carrying(Draft draft, Fact fact, Animal dam, LocalDate from)
    {
        var due = draft.State.Due(draft.Farm).Of(dam.Id, from);
        return due is not null && due.Open < 1 - Carries && due.Days >= ShownEarly && draft.State.Due(draft.Farm).PregnancyOf(dam.Id)!.Checks.Any(check => check.Result == CheckResult.Pregnant)
            ? new Doubt(fact, Ask.Sure, draft.Phrases.Say("ask.mating.carrying", ("animal", dam.Name), ("days", DueAnswers.Whole(due.Days)))) : null;
    }
}

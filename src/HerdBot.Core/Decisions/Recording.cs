using HerdBot.Core.Care;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>Puts facts on record, each with its animal and its instant.</summary>
internal static class Recording
{
    /// <summary>Records a fact.</summary>
    /// <param name="draft">The decision so far.</param>
    /// <param name="fact">A complete fact: its animal is in the herd, or it has none.</param>
    /// <param name="by">Who said it.</param>
    /// <param name="message">The message it came in; null for a button.</param>
    /// <param name="saidAt">When it was said.</param>
    /// <param name="task">The task a button answers.</param>
    public static HerdRecord Record(Draft draft, Fact fact, string by, string? message, Instant saidAt, TaskKey? task = null)
    {
        var answered = task ?? TaskOf(draft, fact);
        var own = fact is { Kind: FactKind.Done, Neg: false } && CareTaskWords.TryParse(fact.Task, out var name) && !OwnKinds.IsReading(name)
            ? OwnKinds.Done(name, fact.Animal, answered?.Which) with { At = fact.At, Unsure = fact.Unsure, Text = fact.Text } : fact;
        var animal = own is { Kind: FactKind.Claim, Task: CareTaskWords.CallVet } ? Alarmed(draft, AnimalOf(draft.State, own)) : AnimalOf(draft.State, own);
        var id = draft.State.NextFact;
        animal ??= Stillborn(draft, own);
        var newcomer = own is { Kind: FactKind.Roster, Field: RosterWords.Added } ? Roster.Newcomer(draft.State, own, draft.Farm.Species) : null;
        own = own.Kind == FactKind.Roster && RosterWords.Names(own.Field) ? own with { Was = animal?.Name } : own;
        animal = newcomer ?? animal;
        draft.Add(new HerdEvent.FactRecorded(id, own, animal?.Id, At(draft, own, saidAt), saidAt, by)
        {
            Message = message,
            Newborn = Ends(own, animal) is { } dam ? new AnimalId($"{dam.Id.Value}/{id.Number}") : null,
            Task = answered,
        });
        if (newcomer is not null)
        {
            draft.Add(new HerdEvent.AnimalAdded(newcomer) { Told = id });
        }
        return draft.State.Record(id)!;
    }

    /// <summary>The dam whose pregnancy a fact ends: by a birth, or by the death of a baby that was never on record.</summary>
    private static Animal? Ends(Fact fact, Animal? animal) => fact switch
    {
        { Kind: FactKind.Birth, Neg: false } => animal,
        { Kind: FactKind.Death, Neg: false, Unsure: false, Animal: { } name } when animal is { Role: HerdRole.Dam } && !string.Equals(name, animal.Name, StringComparison.OrdinalIgnoreCase) => animal,
        _ => null,
    };

    /// <summary>The dam of a baby that came dead: nothing else is on record of it.</summary>
    private static Animal? Stillborn(Draft draft, Fact fact) => fact is { Kind: FactKind.Death, Animal: { } name } && BabyName.Read(name) is { } baby ? draft.State.Named(baby.Dam) : null;

    /// <summary>The instant of a fact: what it says, or when it was said.</summary>
    public static Instant At(Draft draft, Fact fact, Instant saidAt) => fact.At switch
    {
        null => saidAt,
        { Time: { } time } day => draft.Farm.Clock.At(day.Date, time),
        { } day => day.Date == draft.Farm.Clock.Day(saidAt) ? saidAt : draft.Farm.Clock.At(day.Date, new LocalTime(12, 0)),
    };

    /// <summary>The animal meant: by its name, or the only newborn of the dam that is named.</summary>
    public static Animal? AnimalOf(HerdState state, Fact fact) => state.Named(fact.Animal) ?? OnlyOf(state, fact.Animal);

    private static Animal? OnlyOf(HerdState state, string? name)
    {
        if (BabyName.Read(name) is not { } meant)
        {
            return null;
        }
        var dam = state.Named(meant.Dam);
        var babies = dam is null ? [] : state.NewbornsOf(dam.Id).ToList();
        return meant.N is { } number
            ? babies.LastOrDefault(baby => baby.Twin == number) ?? (babies.Count == 1 && number == 1 ? babies[0] : null)
            : babies.Count == 1 ? babies[0] : null;
    }

    /// <summary>Whom the vet was called for: the animal meant, or the one of its pair that the newest alarm was about; of any pair where none was meant.</summary>
    private static Animal? Alarmed(Draft draft, Animal? meant)
    {
        var alarms = draft.Plan.Where(task => task.LevelAt(draft.Now) == Level.Vet).ToList();
        var pair = meant is null ? alarms : alarms.FindAll(task => task.Pair == (meant.Dam ?? meant.Id));
        return alarms.Exists(task => task.Key.Animal == meant?.Id) ? meant
            : draft.State.Find(pair.OrderBy(task => draft.State.Posted.GetValueOrDefault(task.Key)?.Last ?? Instant.MinValue).LastOrDefault()?.Key.Animal) ?? meant;
    }

    /// <summary>The open task that a claim or an answer means.</summary>
    private static TaskKey? TaskOf(Draft draft, Fact fact)
    {
        if (fact.Kind is not (FactKind.Claim or FactKind.Done or FactKind.NotDone) || !CareTaskWords.TryParse(fact.Task, out var name))
        {
            return null;
        }
        var animal = AnimalOf(draft.State, fact)?.Id;
        return draft.Plan.Where(task => task.Key.Name == name && (animal is null || task.Key.Animal == animal) && task.OpenAt(draft.Now))
            .OrderBy(task => task.Due).Select(task => task.Key).LastOrDefault();
    }
}

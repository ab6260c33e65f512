using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>What may be wrong with a newborn: weak, born with something, sick.</summary>
internal static class NewbornTroubles
{
    public static IEnumerable<CareTask> Tasks(NewbornView baby)
    {
        var subject = new Subject(baby.Table, baby.Told, baby.Animal.Id, baby.Pair);
        var passed = baby.First(FactKind.Meconium, baby.Born);
        var strains = baby.About(NoteTopics.Strains).ToList();
        CareTask?[] seen =
        [
            Troubles.Of(subject, CareTaskName.LookOver, NoteTopics.Breathing, Level.Vet, baby.About(NoteTopics.Breathing)) is { } breathing ? Steps.Urgent(baby.Table, breathing) : null,
            Troubles.Of(subject, CareTaskName.LookOver, NoteTopics.GraveDefect, Level.Vet, baby.About(NoteTopics.GraveDefect)),
            Troubles.Of(subject, CareTaskName.LookOver, NoteTopics.Defect, Level.Act, baby.About(NoteTopics.Defect), baby.Told.CalledFrom),
            Troubles.Of(subject, CareTaskName.Meconium, NoteTopics.Strains, Level.Vet, strains.Where(record => !(passed <= record.At)), at => baby.First(FactKind.Meconium, at)),
            Troubles.Of(subject, CareTaskName.DayLook, NoteTopics.Strains, Level.Vet, strains.Where(record => passed <= record.At)),
            Troubles.Of(subject, CareTaskName.DayLook, NoteTopics.Scours, Level.Vet, baby.About(NoteTopics.Scours)),
            Troubles.Of(subject, CareTaskName.DayLook, NoteTopics.Joint, Level.Vet, baby.About(NoteTopics.Joint)),
            Troubles.Of(subject, CareTaskName.DayLook, NoteTopics.Navel, Level.Vet, Navel(baby)),
            Troubles.Of(subject, CareTaskName.DayLook, NoteTopics.OffMilk, Level.Vet, OffMilk(baby), at => baby.First(FactKind.Nursing, at + Duration.Epsilon)),
        ];
        return [.. Weak(baby), .. seen.OfType<CareTask>()];
    }

    /// <summary>It is said to be weak, and nothing said since says better.</summary>
    public static bool IsWeak(NewbornView baby) => baby.About(NoteTopics.Weak).LastOrDefault() is { } told && Better(baby, told.At) is null;

    private static IEnumerable<CareTask> Weak(NewbornView baby)
    {
        var notes = baby.About(NoteTopics.Weak, NoteTopics.HeadDown).ToList();
        if (notes.Count == 0)
        {
            yield break;
        }
        var told = notes[^1];
        var open = notes.Where(note => !(Better(baby, note.At) <= told.At));
        var early = told.At - baby.Born < baby.Table.Time(CareKeys.WeakHeadUp) && open.All(note => !note.Fact.Says(NoteTopics.Weak));
        var task = Steps.From(baby.Table, baby.Farm, new TaskKey(CareTaskName.Weak, baby.Animal.Id, $"{told.Id.Number}"), baby.Pair, told.At, null, null);
        yield return task with
        {
            Steps = [early ? new TaskStep(told.SaidAt, "late", TaskState.Late, Level.Act) : Steps.VetStep(told.SaidAt, "vet") with { News = true }],
            DoneAt = Better(baby, told.At),
            Prompt = true,
        };
    }

    /// <summary>Up or nursing after it was said to be weak; "up, but weak" is not better.</summary>
    private static Instant? Better(NewbornView baby, Instant weak) => NewbornPlan.Earliest(
        baby.First(FactKind.Standing, weak + Duration.Epsilon), baby.First(FactKind.Nursing, weak + Duration.Epsilon), baby.DoneFrom(CareTaskName.Weak, weak));

    /// <summary>Hot, smelly or swollen at any time; wet once the first day is over.</summary>
    private static IEnumerable<HerdRecord> Navel(NewbornView baby)
    {
        var old = baby.Born + baby.Table.Time(CareKeys.NavelWetAfter);
        return baby.About(NoteTopics.Navel).Concat(baby.Told.Of(FactKind.CordDry).Where(record => record.Fact.Neg && record.At >= old && !record.Fact.Says(NoteTopics.Navel))).OrderBy(record => record.At);
    }

    /// <summary>It drank and has stopped: said so, or not nursing any more after the first day.</summary>
    private static IEnumerable<HerdRecord> OffMilk(NewbornView baby)
    {
        var old = baby.Born + Duration.FromDays(1);
        return baby.About(NoteTopics.OffMilk).Concat(baby.Told.Denied(FactKind.Nursing).Where(record => record.At >= old && baby.Nursed.Length > 0 && baby.Nursed[0] < record.At && !record.Fact.Says(NoteTopics.OffMilk))).OrderBy(record => record.At);
    }
}

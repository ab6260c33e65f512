using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>A newborn's tasks. What was past when the birth was told is asked at once, and late or vet a little later.</summary>
internal static class NewbornPlan
{
    /// <summary>From this age on only weights, dates, feeds by hand, orders and troubles are left.</summary>
    private static readonly Duration Young = Duration.FromDays(21);

    public static IEnumerable<CareTask> Of(NewbornView baby) => baby.Age > Young ? Later(baby) : [.. First(baby), .. Later(baby)];

    private static IEnumerable<CareTask> First(NewbornView baby) =>
    [
        LookOver(baby), .. Cord.Tasks(baby), .. Temperatures.Tasks(baby), Standing(baby), .. Nursing(baby),
        .. Colostrum.Tasks(baby), Passed(baby, CareTaskName.Meconium, FactKind.Meconium, CareKeys.MeconiumAsked, CareKeys.MeconiumLate, CareKeys.MeconiumVet),
        Passed(baby, CareTaskName.Urine, FactKind.Urine, CareKeys.UrineAsked, CareKeys.UrineLate, CareKeys.UrineVet),
        .. Antibodies.Tasks(baby), .. DayLooks.Tasks(baby), .. Prematurity.Tasks(baby),
    ];

    private static IEnumerable<CareTask> Later(NewbornView baby) =>
        [.. NewbornTroubles.Tasks(baby), .. Weighing.Tasks(baby), .. Feeding.Tasks(baby), .. Weaning.Tasks(baby), .. Coats.Tasks(baby)];

    private static CareTask LookOver(NewbornView baby)
    {
        var watch = Prematurity.Of(baby).Watch;
        var task = Steps.FromBirth(baby, CareTaskName.LookOver, "", Duration.Zero, baby.Table.Time(CareKeys.LookOverLate), null, Level.Heed);
        return task with
        {
            Steps = watch ? task.Steps.SetItem(0, task.Steps[0] with { Level = Level.Heed }) : task.Steps,
            DoneAt = Earliest(baby.DoneFrom(CareTaskName.LookOver, baby.Born), baby.Told.Said(baby.Born, NoteTopics.LookedOver),
                baby.About(NoteTopics.GraveDefect, NoteTopics.Defect, NoteTopics.Breathing).Select(record => (Instant?)record.At).FirstOrDefault()),
            LapsesAt = baby.Born + baby.Table.Time(CareKeys.LookOverLapses),
            Wording = watch ? "early" : "",
        };
    }

    private static CareTask Standing(NewbornView baby) => Steps.FromBirth(
        baby, CareTaskName.Standing, "", baby.Table.Time(CareKeys.StandingAsked), baby.Table.Time(CareKeys.StandingLate), baby.Table.Time(CareKeys.StandingVet)) with
    {
        DoneAt = Earliest(baby.First(FactKind.Standing, baby.Born), baby.Nursed.Cast<Instant?>().FirstOrDefault()),
        LapsesAt = baby.Born + FirstDays,
    };

    private static IEnumerable<CareTask> Nursing(NewbornView baby)
    {
        var held = baby.Warmth.HoldSince is not null;
        yield return Steps.FromBirth(
            baby, CareTaskName.Nursing, "", baby.Table.Time(CareKeys.NursingAsked), baby.Table.Time(CareKeys.NursingLate), baby.Table.Time(CareKeys.NursingVet)) with
        {
            DoneAt = baby.Nursed.Cast<Instant?>().FirstOrDefault(),
            LapsesAt = Earliest(baby.Born + FirstDays, baby.ByHandSince),
            Held = held,
        };
        if (baby.Nursed.Length > 0)
        {
            var (second, late) = (baby.Table.Time(CareKeys.NursingSecond), baby.Table.Time(CareKeys.NursingSecondLate));
            var asked = baby.Nursed[0] <= baby.Born + second ? second : baby.Nursed[0] - baby.Born + (late - second);
            yield return Steps.FromBirth(baby, CareTaskName.Nursing, "second", asked, asked + (late - second), null, Level.Heed) with
            {
                DoneAt = baby.Nursed.Length > 1 ? baby.Nursed[1] : null,
                LapsesAt = Earliest(baby.Born + Duration.FromDays(1), baby.ByHandSince),
                Held = held,
                Wording = "second",
            };
        }
    }

    private static CareTask Passed(NewbornView baby, CareTaskName name, FactKind kind, CareKey asked, CareKey late, CareKey vet) =>
        Steps.FromBirth(baby, name, "", baby.Table.Time(asked), baby.Table.Time(late), baby.Table.Time(vet)) with
        {
            DoneAt = baby.First(kind, baby.Born),
            LapsesAt = baby.Born + FirstDays,
        };

    /// <summary>After this the first days' tasks are no longer asked.</summary>
    public static Duration FirstDays { get; } = Duration.FromDays(3);

    public static Instant? Earliest(params ReadOnlySpan<Instant?> instants)
    {
        Instant? earliest = null;
        foreach (var at in instants)
        {
            earliest = earliest < at ? earliest : at ?? earliest;
        }
        return earliest;
    }
}

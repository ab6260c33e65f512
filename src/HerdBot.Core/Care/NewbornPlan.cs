using System.Collections.Immutable;
using System.Globalization;
using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>A newborn's tasks. What was past when the birth was told is asked at once, and late or vet a little later.</summary>
internal static class NewbornPlan
{
    public static IEnumerable<CareTask> Of(NewbornView baby) =>
    [
        LookOver(baby), .. Early(baby), .. Weak(baby), .. Cord.Tasks(baby), .. Temperatures.Tasks(baby), Standing(baby), .. Nursing(baby),
        .. Colostrum.Tasks(baby), Passed(baby, CareTaskName.Meconium, FactKind.Meconium, CareKeys.MeconiumAsked, CareKeys.MeconiumLate, CareKeys.MeconiumVet),
        Passed(baby, CareTaskName.Urine, FactKind.Urine, CareKeys.UrineAsked, CareKeys.UrineLate, CareKeys.UrineVet),
        .. Weighing.Tasks(baby), .. DayLooks(baby),
    ];

    private static CareTask LookOver(NewbornView baby) => Steps.FromBirth(
        baby, CareTaskName.LookOver, "", Duration.Zero, baby.Table.Time(CareKeys.LookOverLate), null, Level.Heed) with
    {
        DoneAt = baby.DoneFrom(CareTaskName.LookOver, baby.Born),
        LapsesAt = baby.Born + baby.Table.Time(CareKeys.LookOverLapses),
    };

    /// <summary>Born before its time by the mating's day: the vet is phoned within the hour.</summary>
    private static IEnumerable<CareTask> Early(NewbornView baby)
    {
        if (baby.EarlyLevel == Level.Act)
        {
            yield return Steps.From(baby.Table, baby.Farm, new TaskKey(CareTaskName.VetToday, baby.Animal.Id, "early"), baby.Pair, baby.ReportedAt, null, null, whenAsked: Level.Act) with
            {
                DoneAt = Earliest(baby.DoneFrom(CareTaskName.VetToday, baby.Born), baby.Certain(FactKind.Claim).Where(claim => claim.Fact.Task == CareTaskWords.CallVet).Select(claim => (Instant?)claim.At).FirstOrDefault()),
                LapsesAt = baby.Born + FirstDays,
                Prompt = true,
                Wording = "early",
                Figures = ImmutableDictionary<string, string>.Empty.Add(CloseUp.Days, baby.CarriedDays!.Value.ToString(CultureInfo.InvariantCulture)),
            };
        }
    }

    private static IEnumerable<CareTask> Weak(NewbornView baby)
    {
        var notes = baby.About(NoteTopics.Weak, NoteTopics.HeadDown).ToList();
        if (notes.Count == 0)
        {
            yield break;
        }
        var told = notes[^1];
        var open = notes.Where(note => !(Better(baby, note.At) <= told.At));
        var early = told.At - baby.Born < baby.Table.Time(CareKeys.WeakHeadUp) && open.All(note => note.Fact.Field == NoteTopics.HeadDown);
        var task = Steps.From(baby.Table, baby.Farm, new TaskKey(CareTaskName.Weak, baby.Animal.Id, $"{told.Id.Number}"), baby.Pair, told.At, null, null);
        yield return task with
        {
            Steps = [early ? new TaskStep(told.SaidAt, "late", TaskState.Late, Level.Act) : Steps.VetStep(told.SaidAt, "vet") with { News = true }],
            DoneAt = Better(baby, told.At),
            Prompt = true,
        };
    }

    /// <summary>Up or nursing after it was said to be weak; "up, but weak" is not better.</summary>
    private static Instant? Better(NewbornView baby, Instant weak) => Earliest(
        baby.First(FactKind.Standing, weak + Duration.Epsilon), baby.First(FactKind.Nursing, weak + Duration.Epsilon), baby.DoneFrom(CareTaskName.Weak, weak));

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
            LapsesAt = baby.Born + FirstDays,
            Held = held,
        };
        if (baby.Nursed.Length > 0)
        {
            var (second, late) = (baby.Table.Time(CareKeys.NursingSecond), baby.Table.Time(CareKeys.NursingSecondLate));
            var asked = baby.Nursed[0] <= baby.Born + second ? second : baby.Nursed[0] - baby.Born + (late - second);
            yield return Steps.FromBirth(baby, CareTaskName.Nursing, "second", asked, asked + (late - second), null, Level.Heed) with
            {
                DoneAt = baby.Nursed.Length > 1 ? baby.Nursed[1] : null,
                LapsesAt = baby.Born + Duration.FromDays(1),
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

    private static IEnumerable<CareTask> DayLooks(NewbornView baby)
    {
        var clock = baby.Farm.Clock;
        var time = baby.Farm.RoundUps.Length > 0 ? baby.Farm.RoundUps.Min() : new LocalTime(7, 0);
        var today = clock.Day(baby.Now);
        var born = clock.Day(baby.Born);
        for (var day = today; day <= today.PlusDays(1); day = day.PlusDays(1))
        {
            var number = Period.DaysBetween(born, day);
            if (number >= 1 && number <= baby.Table.Count(CareKeys.DayLookDays))
            {
                var asked = clock.At(day, time);
                yield return new CareTask(new TaskKey(CareTaskName.DayLook, baby.Animal.Id, $"day {number}"), baby.Pair, asked,
                    [new TaskStep(asked, "asked", TaskState.Asked, Level.Fine)])
                {
                    DoneAt = baby.DoneFrom(CareTaskName.DayLook, clock.At(day, LocalTime.Midnight)),
                    LapsesAt = clock.At(day.PlusDays(1), time),
                    RoundUpOnly = true,
                };
            }
        }
    }

    /// <summary>After this the first days' tasks are no longer asked.</summary>
    public static Duration FirstDays { get; } = Duration.FromDays(3);

    public static Instant? Earliest(params Instant?[] instants) => instants.Where(at => at is not null).Min();
}

using System.Collections.Immutable;
using System.Globalization;
using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Weights: once soon after birth, each morning for a while, weekly, then monthly until it is weaned; and what the newest says.</summary>
internal static class Weighing
{
    private const int Week = 7;
    private const int AlmostAMonth = 20;

    public static IEnumerable<CareTask> Tasks(NewbornView baby)
    {
        var clock = baby.Farm.Clock;
        var born = clock.Day(baby.Born);
        var firstMorning = Enumerable.Range(1, 2).Select(day => Morning(baby, born.PlusDays(day)))
            .First(morning => morning > baby.Born + baby.Table.Time(CareKeys.WeightAsked) * 2);
        yield return Steps.FromBirth(baby, CareTaskName.Weight, "first", baby.Table.Time(CareKeys.WeightAsked), baby.Table.Time(CareKeys.WeightLate), null, Level.Heed) with
        {
            DoneAt = baby.Weights.Select(weight => (Instant?)weight.At).FirstOrDefault(),
            LapsesAt = firstMorning,
            Wording = "first",
        };
        var today = clock.Day(baby.Now);
        for (var day = today.PlusDays(-1); day <= today.PlusDays(1); day = day.PlusDays(1))
        {
            if (Morning(baby, day) >= firstMorning && Period.DaysBetween(born, day) <= baby.Table.Count(CareKeys.WeightDays))
            {
                yield return Weigh(baby, day, baby.Table.Time(CareKeys.WeightLate), day.PlusDays(1), "");
            }
        }
        foreach (var task in Seldom(baby, born, today))
        {
            yield return task;
        }
        foreach (var task in Judged(baby))
        {
            yield return task;
        }
    }

    /// <summary>Weekly, then monthly until it is weaned: the one before today and the next.</summary>
    private static IEnumerable<CareTask> Seldom(NewbornView baby, LocalDate born, LocalDate today)
    {
        var (daily, weekly) = (baby.Table.Count(CareKeys.WeightDays), baby.Table.Count(CareKeys.WeightWeeklyDays));
        var last = born.PlusDays(daily);
        for (var next = Next(last); last <= today; (last, next) = (next, Next(next)))
        {
            if (Next(next) > today && !(Weaning.WeanedAt(baby) < Morning(baby, next)))
            {
                yield return Weigh(baby, next, baby.Table.Time(CareKeys.WeightWeeklyLate), Next(next), "seldom");
            }
        }

        LocalDate Next(LocalDate day) => Period.DaysBetween(born, day) is var age && age + Week <= weekly ? day.PlusDays(Week)
            : born.PlusMonths(Enumerable.Range(1, 60).First(months => born.PlusMonths(months) > day.PlusDays(AlmostAMonth)));
    }

    private static CareTask Weigh(NewbornView baby, LocalDate day, Duration late, LocalDate lapses, string wording)
    {
        var until = Morning(baby, lapses);
        return Steps.From(baby.Table, baby.Farm, new TaskKey(CareTaskName.Weight, baby.Animal.Id, Iso(day)), baby.Pair, Morning(baby, day), late, null, Level.Heed) with
        {
            DoneAt = baby.Weights.Where(weight => baby.Farm.Clock.Day(weight.At) >= day && weight.At < until).Select(weight => (Instant?)weight.At).FirstOrDefault(),
            LapsesAt = until,
            Wording = wording,
        };
    }

    /// <summary>What the newest weight calls for: done by the next one, or by a word that somebody sees to it.</summary>
    private static IEnumerable<CareTask> Judged(NewbornView baby)
    {
        if (Growth.Of(baby) is not { Level: > Level.Fine } growth
            || baby.Certain(FactKind.Weight).LastOrDefault(record => record.At == growth.At) is not { } record)
        {
            yield break;
        }
        var key = new TaskKey(CareTaskName.Weight, baby.Animal.Id, $"gain {record.Id.Number}");
        var step = growth.Level == Level.Vet ? Steps.VetStep(record.SaidAt, growth.Band) with { News = true }
            : new TaskStep(record.SaidAt, growth.Band, TaskState.Late, Level.Act) { News = true };
        yield return Steps.Claimable(baby.Table, new CareTask(key, baby.Pair, record.At, [step])
        {
            DoneAt = NewbornPlan.Earliest(baby.DoneFrom(CareTaskName.Weight, record.At), baby.Told.CalledFrom(record.At)),
            LapsesAt = record.At + Duration.FromDays(2),
            Prompt = true,
            Wording = growth.Band,
            Figures = growth.GainADay is { } gain ? ImmutableDictionary<string, string>.Empty.Add("gain", gain.ToString(CultureInfo.InvariantCulture)) : ImmutableDictionary<string, string>.Empty,
        });
    }

    private static Instant Morning(NewbornView baby, LocalDate day) => baby.Farm.Clock.At(day, baby.Farm.WakingHours.From);

    private static string Iso(LocalDate day) => day.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);
}

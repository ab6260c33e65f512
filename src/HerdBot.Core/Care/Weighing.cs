using System.Globalization;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Weights: once soon after birth, then each morning.</summary>
internal static class Weighing
{
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
            var asked = Morning(baby, day);
            if (asked >= firstMorning && Period.DaysBetween(born, day) <= baby.Table.Count(CareKeys.WeightDays))
            {
                yield return Steps.From(baby.Table, baby.Farm, new TaskKey(CareTaskName.Weight, baby.Animal.Id, Iso(day)), baby.Pair, asked,
                    baby.Table.Time(CareKeys.WeightLate), null, Level.Heed) with
                {
                    DoneAt = baby.Weights.Where(weight => clock.Day(weight.At) == day).Select(weight => (Instant?)weight.At).FirstOrDefault(),
                    LapsesAt = Morning(baby, day.PlusDays(1)),
                };
            }
        }
    }

    private static Instant Morning(NewbornView baby, LocalDate day) => baby.Farm.Clock.At(day, baby.Farm.WakingHours.From);

    private static string Iso(LocalDate day) => day.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);
}

using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>After hands were inside: the vet is asked today about infection, and her temperature is read for some days.</summary>
internal static class Assisted
{
    private static readonly Duration Late = Duration.FromHours(2);

    public static IEnumerable<CareTask> Tasks(DamView dam)
    {
        var days = dam.Table.Count(CareKeys.AssistedDays);
        var helped = dam.Told.Certain(FactKind.Assistance).Where(record => record.At > dam.Now - Duration.FromDays(days + 1)).ToList();
        if (helped.Count == 0)
        {
            yield break;
        }
        if (Troubles.Of(dam.Subject, CareTaskName.VetToday, "assisted", Level.Act, helped, at => NewbornPlan.Earliest(dam.Told.CalledFrom(at), dam.Told.DoneFrom(CareTaskName.VetToday, at))) is { } phone)
        {
            yield return phone;
        }
        foreach (var task in Readings(dam, helped[^1].At, days))
        {
            yield return task;
        }
    }

    private static IEnumerable<CareTask> Readings(DamView dam, Instant helped, int days)
    {
        var clock = dam.Farm.Clock;
        var evening = dam.Farm.RoundUps.Length > 1 ? dam.Farm.RoundUps.Max() : new LocalTime(19, 0);
        var first = clock.Day(helped);
        var times = Enumerable.Range(0, days + 1).SelectMany(day => new[] { clock.At(first.PlusDays(day), dam.Farm.WakingHours.From), clock.At(first.PlusDays(day), evening) })
            .Where(at => at > helped).Take(days * 2).ToList();
        for (var n = 0; n < times.Count; n++)
        {
            var (asked, next) = (times[n], n + 1 < times.Count ? times[n + 1] : times[n] + Duration.FromHours(12));
            if (next > dam.Now - Duration.FromDays(1) && asked < dam.Now + Duration.FromDays(1))
            {
                yield return Steps.From(dam.Table, dam.Farm, dam.Key(CareTaskName.Temperature, $"assisted {asked.ToUnixTimeSeconds()}"), dam.Animal.Id, asked, Late, null, Level.Heed) with
                {
                    DoneAt = dam.Told.First(FactKind.Temperature, asked - dam.Table.Time(CareKeys.TemperatureBefore)),
                    LapsesAt = next,
                    Wording = "dam",
                };
            }
        }
    }
}

using System.Collections.Immutable;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>The vet's orders as dated tasks.</summary>
public static class VetOrders
{
    private static readonly Duration Near = Duration.FromDays(1);
    private static readonly Duration Late = Duration.FromHours(1);

    /// <summary>The order that a record tells; null where it tells none.</summary>
    /// <param name="record">A record.</param>
    /// <param name="farm">The farm.</param>
    public static VetOrder? Of(HerdRecord record, Farm farm)
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(farm);
        // "The vet says" is hearsay by its nature, and an order all the same.
        return record is { Withdrawn: false, Fact: { Neg: false, Text: { } text } } && record.Fact.Says(NoteTopics.Order)
            ? VetOrderReader.Read(text, farm.Clock.Day(record.SaidAt), farm.Dates == DateOrder.MonthFirst) : null;
    }

    internal static IEnumerable<CareTask> Tasks(Subject subject, Farm farm, Instant now)
    {
        foreach (var record in subject.Told.About(NoteTopics.Order))
        {
            if (Of(record, farm) is { } order && farm.Clock.At(order.Until.PlusDays(2), LocalTime.Midnight) > now)
            {
                foreach (var task in Tasks(subject, farm, record, order, now))
                {
                    yield return task;
                }
            }
        }
    }

    /// <summary>When an order of a sort was first told; null where none was.</summary>
    internal static Instant? FirstOf(NewbornView baby, CareTaskName task) =>
        baby.About(NoteTopics.Order).Where(record => Of(record, baby.Farm)?.Task == task).Select(record => (Instant?)record.At).FirstOrDefault();

    private static IEnumerable<CareTask> Tasks(Subject subject, Farm farm, HerdRecord record, VetOrder order, Instant now)
    {
        var times = Times(farm, record, order).Where(at => at > record.SaidAt).ToList();
        for (var n = 0; n < times.Count; n++)
        {
            var (asked, next) = (times[n], n + 1 < times.Count ? times[n + 1] : times[n] + Near);
            if (next < now - Near || asked > now + Near)
            {
                continue;
            }
            var key = new TaskKey(order.Task, subject.Animal, $"order {record.Id.Number} {asked.ToUnixTimeSeconds()}");
            yield return Steps.From(subject.Table, farm, key, subject.Pair, asked, Late, null, Level.Heed) with
            {
                DoneAt = NewbornPlan.Earliest(subject.Told.DoneFrom(key, asked - Late), FactWords.TryKind(CareTaskWords.Word(order.Task), out var kind) ? subject.Told.First(kind, asked - Late) : null),
                LapsesAt = next,
                Prompt = order.Every is not null,
                Wording = "order",
                Figures = ImmutableDictionary<string, string>.Empty.Add("seen", order.Words),
            };
        }
    }

    private static IEnumerable<Instant> Times(Farm farm, HerdRecord record, VetOrder order)
    {
        var clock = farm.Clock;
        if (order.Every is { } hours)
        {
            var end = clock.At(order.Until.PlusDays(1), LocalTime.Midnight);
            for (var at = record.SaidAt + Duration.FromHours(hours); at < end; at += Duration.FromHours(hours))
            {
                yield return at;
            }
            yield break;
        }
        var (first, last) = (farm.WakingHours.From, farm.RoundUps.Length > 1 ? farm.RoundUps.Max() : new LocalTime(19, 0));
        var parts = Math.Max(1, order.ADay!.Value - 1);
        for (var day = order.From; day <= order.Until; day = day.PlusDays(1))
        {
            for (var n = 0; n < order.ADay; n++)
            {
                yield return clock.At(day, first.PlusMinutes(Period.Between(first, last, PeriodUnits.Minutes).Minutes * n / parts));
            }
        }
    }
}

using System.Collections.Immutable;
using System.Globalization;
using HerdBot.Core.Due;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.Core.Care;

/// <summary>
/// The close-up list: who is looked in on, and how often. In the round-ups from the 5 % point on, at noon too as the
/// chance of a birth rises, through the day where it is high or signs are told. Past the 95 % point the vet is asked.
/// </summary>
internal static class CloseUp
{
    /// <summary>A figure of a task: the chance of a birth within the day, 0 to 1.</summary>
    public const string Chance = "chance";
    /// <summary>A figure of a task: a day.</summary>
    public const string Opens = "opens";
    /// <summary>A figure of a task: how many days.</summary>
    public const string Carried = "carried";

    private static readonly Duration SignsLast = Duration.FromDays(7);
    private static readonly Duration Before = Duration.FromHours(1);
    private static readonly Period VaccinationAhead = Period.FromDays(60);
    private const double Gone = 0.95;

    /// <summary>Every task of the list: ahead, open, done and lapsed.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="now">Nothing after this counts.</param>
    /// <param name="others">The plan's other tasks: where labour is on, its own clocks run.</param>
    public static IEnumerable<CareTask> Of(HerdState state, Farm farm, Instant now, IReadOnlyCollection<CareTask> others)
    {
        var (book, today) = (state.Due(farm), farm.Clock.Day(now));
        var labour = others.Where(task => task.Key.Name is CareTaskName.Labour or CareTaskName.Presentation && task.OpenAt(now)).Select(task => task.Key.Animal).ToHashSet();
        var rounds = state.NewestFirst().TakeWhile(record => record.SaidAt > now - SignsLast).Where(record => record.Animal is null && IsRound(record) && record.At <= now).ToList();
        foreach (var dam in state.Roster.Where(animal => animal.Role == HerdRole.Dam && !labour.Contains(animal.Id)))
        {
            if (farm.TableOf(dam.Species) is { } table)
            {
                foreach (var task in new Look(farm, table, dam, book.Of(dam.Id, today), state.RecordsOf(dam.Id), rounds, now).Tasks())
                {
                    yield return task;
                }
            }
        }
        if (Vaccination(state, farm, book, today) is { } asked)
        {
            yield return asked;
        }
    }

    /// <summary>Before the season's first window: the vet's day for the dams' vaccination is asked for once, and never invented.</summary>
    private static CareTask? Vaccination(HerdState state, Farm farm, DueBook book, LocalDate today)
    {
        if (book.Awaited(today).MinBy(one => one.Due.LookFrom) is not ({ } first, { } due))
        {
            return null;
        }
        var which = string.Create(CultureInfo.InvariantCulture, $"before {due.LookFrom.Year}");
        var key = state.Posted.Keys.FirstOrDefault(posted => posted.Name == CareTaskName.Vaccination && posted.Which == which) ?? new TaskKey(CareTaskName.Vaccination, first.Id, which);
        var known = book.PregnancyOf(first.Id)!.Matings.Select(mating => mating.Record.SaidAt).DefaultIfEmpty(Instant.MinValue).Min();
        var (asked, from) = (farm.Clock.Next(Instant.Max(farm.Clock.At(due.LookFrom - VaccinationAhead, LocalTime.Midnight), known), FirstRoundUp(farm).PlusHours(1)),
            farm.Clock.At(due.LookFrom - VaccinationAhead - VaccinationAhead, LocalTime.Midnight));
        return new CareTask(key, key.Animal, asked, [new TaskStep(asked, "asked", TaskState.Asked, Level.Fine)])
        {
            DoneAt = state.Records.Where(record => record.At >= from && record.Certain && (record.Fact.Kind == FactKind.Vaccination || record.Fact is { Kind: FactKind.Done, Task: "vaccination" })
                && (record.Animal is null || state.Roster.Any(animal => animal.Id == record.Animal && animal.Role == HerdRole.Dam))).Select(record => (Instant?)record.At).Min(),
            // Asked for once: no round-up says it again.
            LapsesAt = state.Posted.TryGetValue(key, out var posts) ? posts.First + Duration.FromMinutes(5) : farm.Clock.At(due.LookFrom, LocalTime.Midnight),
            Wording = "season",
            Figures = ImmutableDictionary<string, string>.Empty.Add(Opens, LocalDatePattern.Iso.Format(due.LookFrom)),
        };
    }

    /// <summary>Somebody looked in on them all.</summary>
    private static bool IsRound(HerdRecord record) => record is { Certain: true, Fact: { Kind: FactKind.Done, Task: "look_in" } };

    private static LocalTime FirstRoundUp(Farm farm) => farm.RoundUps.Length > 0 ? farm.RoundUps.Min() : new LocalTime(7, 0);

    /// <summary>One dam.</summary>
    private sealed class Look(Farm farm, CareTable table, Animal dam, DueForecast? due, ImmutableArray<HerdRecord> records, IReadOnlyList<HerdRecord> rounds, Instant now)
    {
        private readonly LocalDate today = farm.Clock.Day(now);
        private readonly List<HerdRecord> hers = [.. records.Where(record => !record.Withdrawn && record.At > now - SignsLast && record.At <= now).OrderBy(record => record.At)];

        public IEnumerable<CareTask> Tasks()
        {
            var born = hers.FindLastIndex(record => record.Newborn is not null);
            var signs = hers.Skip(born + 1).Where(record => record is { Certain: true, Fact.Kind: FactKind.LabourSign }).ToList();
            var awaited = due is not null && due.Open < Gone;
            if (signs.Count == 0 && !awaited)
            {
                return [];
            }
            if (signs.Count == 0 && today < due!.LookFrom)
            {
                return [Slot(farm.Clock.At(due.LookFrom, FirstRoundUp(farm)), null, true, 0)];
            }
            IEnumerable<CareTask> tasks = [.. Looks(signs), .. Overdue()];
            return Absence.Of(new ToldRecords(records, now), table) is { } away && now < away.Until ? tasks.Select(task => task with { RestsUntil = away.Until }) : tasks;
        }

        private IEnumerable<CareTask> Looks(List<HerdRecord> signs)
        {
            var chance = ChanceWith(signs.Exists(sign => sign.At > now - Duration.FromDays(1) && sign.Fact.Field != NoteTopics.Bagging));
            var slots = new[] { today.PlusDays(-1), today, today.PlusDays(1) }.SelectMany(day => Slots(day, chance)).OrderBy(slot => slot.At).ToList();
            for (var n = 0; n < slots.Count - 1; n++)
            {
                if (slots[n + 1].At > now)
                {
                    yield return Slot(slots[n].At, slots[n + 1].At, slots[n].RoundUp, chance);
                }
            }
        }

        /// <summary>The chance of a birth within the day; signs raise it, never to certainty.</summary>
        private double ChanceWith(bool signs)
        {
            var chance = due?.Today ?? 0;
            return !signs ? chance : Math.Min((double)table.Number(DueKeys.SignMost) / 100, (double)table.Number(DueKeys.SignTimes) * Math.Max(chance, (double)table.Number(DueKeys.SignLeast) / 100));
        }

        private IEnumerable<(Instant At, bool RoundUp)> Slots(LocalDate day, double chance)
        {
            var often = (double)table.Number(DueKeys.LookOften) / 100;
            var roundUps = farm.RoundUps.Length > 0 ? farm.RoundUps : [FirstRoundUp(farm)];
            var between = chance >= 2 * often ? Through(table.Time(DueKeys.LookEvery)).ToList()
                : chance >= often || due?.OverdueFrom <= today ? [Noon(roundUps)] : [];
            return roundUps.Select(time => (farm.Clock.At(day, time), true))
                .Concat(between.Where(time => !roundUps.Any(other => Math.Abs((other - time).ToDuration().TotalHours) < 1.5)).Select(time => (farm.Clock.At(day, time), false)));
        }

        private static LocalTime Noon(ImmutableArray<LocalTime> roundUps) =>
            LocalTime.FromMinutesSinceMidnight((roundUps.Min().Hour * 60 + roundUps.Min().Minute + roundUps.Max().Hour * 60 + roundUps.Max().Minute) / 2);

        private IEnumerable<LocalTime> Through(Duration every)
        {
            var (time, steps) = (farm.WakingHours.From, (int)(Duration.FromHours(24) / every));
            for (var n = 0; n <= steps && farm.WakingHours.Holds(time); n++, time = time.PlusMinutes((long)every.TotalMinutes))
            {
                yield return time;
            }
        }

        private CareTask Slot(Instant at, Instant? lapses, bool roundUp, double chance) =>
            new(new TaskKey(CareTaskName.LookIn, dam.Id, farm.Clock.Local(at).ToString("uuuu-MM-dd HH:mm", CultureInfo.InvariantCulture)), dam.Id, at,
                [new TaskStep(at, "asked", TaskState.Asked, Level.Fine)])
            {
                DoneAt = hers.Where(IsLook).Concat(rounds).Where(record => record.At >= at - Before).Select(record => (Instant?)record.At).Min(),
                LapsesAt = lapses,
                RoundUpOnly = roundUp,
                ClaimLasts = table.Time(CareKeys.PostingClaim),
                Figures = ImmutableDictionary<string, string>.Empty.Add(Chance, chance.ToString("0.0000", CultureInfo.InvariantCulture)),
            };

        /// <summary>Whoever tells something of her has looked at her.</summary>
        private static bool IsLook(HerdRecord record) => record.Fact.Kind is not (FactKind.Claim or FactKind.NotDone or FactKind.Breeding or FactKind.PregnancyCheck or FactKind.Roster);

        private IEnumerable<CareTask> Overdue()
        {
            if (due is null || today < due.OverdueFrom)
            {
                yield break;
            }
            var asked = farm.Clock.At(due.OverdueFrom, FirstRoundUp(farm));
            yield return new CareTask(new TaskKey(CareTaskName.VetToday, dam.Id, $"overdue {LocalDatePattern.Iso.Format(due.Mating.From)}"), dam.Id, asked,
                [new TaskStep(asked, "overdue", TaskState.Asked, Level.Heed)])
            {
                DoneAt = hers.Where(record => record.At >= asked && record.Certain && (record.Fact.Kind == FactKind.PregnancyCheck
                    || record.Fact.Task == CareTaskWords.CallVet || record.Fact is { Kind: FactKind.Done, Task: "vet_today" })).Select(record => (Instant?)record.At).Min(),
                ClaimLasts = table.Time(CareKeys.PostingClaim),
                Wording = "overdue",
                Figures = ImmutableDictionary<string, string>.Empty.Add(Carried, due.Days.ToString(CultureInfo.InvariantCulture)),
            };
        }
    }
}

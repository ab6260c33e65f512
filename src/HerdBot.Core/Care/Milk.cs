using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Udder and milk, and a dam that will not have her cria.</summary>
internal static class Milk
{
    private static readonly Duration Watched = Duration.FromDays(21);

    public static IEnumerable<CareTask> Tasks(DamView dam)
    {
        if (dam.LastBirth is not { } birth || birth.At < dam.Now - Watched || dam.Young.Length == 0)
        {
            yield break;
        }
        var table = dam.Table;
        var nursed = dam.Young.All(baby => baby.Nursed.Length > 0) ? dam.Young.Max(baby => (Instant?)baby.Nursed[0]) : null;
        yield return Steps.FromBirth(table, dam.Farm, dam.Key(CareTaskName.Udder, AfterBirth.Which(birth)), dam.Animal.Id, birth.At, birth.SaidAt,
            table.Time(CareKeys.UdderAsked), table.Time(CareKeys.UdderLate), table.Time(CareKeys.UdderVet)) with
        {
            DoneAt = NewbornPlan.Earliest(nursed, dam.Told.DoneFrom(CareTaskName.Udder, birth.At), Comes(dam, birth.At),
                Dry(dam, birth).Select(record => (Instant?)record.At).FirstOrDefault()),
            LapsesAt = birth.At + Duration.FromDays(1),
        };
        if (Troubles.Of(dam.Subject, CareTaskName.Udder, NoteTopics.NoMilk, Level.Act, Dry(dam, birth), at => NewbornPlan.Earliest(Comes(dam, at + Duration.Epsilon), dam.Told.DoneFrom(CareTaskName.Udder, at))) is { } dry)
        {
            var grace = table.Time(CareKeys.UdderVet) - table.Time(CareKeys.UdderAsked);
            yield return Troubles.ThenVet(dry, Instant.Max(birth.At + table.Time(CareKeys.UdderVet), dry.Due + grace) - dam.Farm.VetDrive);
        }
        if (Troubles.Of(dam.Subject, CareTaskName.Rejection, NoteTopics.Rejects, Level.Act, Rejects(dam, birth), at => Accepted(dam, at)) is { } rejected)
        {
            yield return Troubles.ThenVet(rejected, rejected.Due + table.Time(CareKeys.RejectionVet) - dam.Farm.VetDrive);
        }
    }

    /// <summary>When milk was first seen from an instant on, said of the dam or of her cria; null where nobody saw it.</summary>
    private static Instant? Comes(DamView dam, Instant from) =>
        NewbornPlan.Earliest(dam.Told.Said(from, NoteTopics.MilkComes), dam.Young.Select(baby => baby.Told.Said(from, NoteTopics.MilkComes)).Min());

    private static IEnumerable<HerdRecord> Dry(DamView dam, HerdRecord birth) => Of(dam, birth, NoteTopics.NoMilk);

    private static IEnumerable<HerdRecord> Rejects(DamView dam, HerdRecord birth) => Of(dam, birth, NoteTopics.Rejects);

    /// <summary>Said of the dam or of her cria.</summary>
    private static IEnumerable<HerdRecord> Of(DamView dam, HerdRecord birth, string topic) =>
        dam.Told.About(topic).Where(record => record.At >= birth.At).Concat(dam.Young.SelectMany(baby => baby.About(topic))).OrderBy(record => record.At);

    private static Instant? Accepted(DamView dam, Instant from) => NewbornPlan.Earliest(
        dam.Told.Said(from + Duration.Epsilon, NoteTopics.Accepts), dam.Young.Select(baby => baby.First(FactKind.Nursing, from + Duration.Epsilon)).Min(), dam.Told.DoneFrom(CareTaskName.Rejection, from));
}

using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>The dam after a birth: a first look, the placenta, her check on the next day, and when she may be bred again.</summary>
internal static class AfterBirth
{
    private static readonly Duration Watched = Duration.FromDays(60);
    private static readonly Duration Told = Duration.FromDays(1);

    public static IEnumerable<CareTask> Tasks(DamView dam)
    {
        if (dam.LastBirth is not { } birth || birth.At < dam.Now - Watched)
        {
            yield break;
        }
        yield return Look(dam, birth);
        yield return Placenta(dam, birth);
        yield return Check(dam, birth);
        yield return Rebreed(dam, birth);
        if (Troubles.Of(dam.Subject, CareTaskName.Placenta, NoteTopics.Torn, Level.Act, dam.Told.About(NoteTopics.Torn).Where(record => record.At >= birth.At), dam.Told.CalledFrom) is { } torn)
        {
            yield return torn;
        }
    }

    private static CareTask Look(DamView dam, HerdRecord birth) => From(dam, birth, CareTaskName.DamLook, CareKeys.DamLookAsked, CareKeys.DamLookLate, null, Level.Heed) with
    {
        DoneAt = NewbornPlan.Earliest(dam.Told.DoneFrom(CareTaskName.DamLook, birth.At), dam.Told.Said(birth.At, NoteTopics.Well)),
        LapsesAt = birth.At + Duration.FromDays(1),
    };

    private static CareTask Placenta(DamView dam, HerdRecord birth) => From(dam, birth, CareTaskName.Placenta, CareKeys.PlacentaAsked, CareKeys.PlacentaLate, CareKeys.PlacentaVet, Level.Act) with
    {
        DoneAt = PlacentaOut(dam, birth),
        LapsesAt = birth.At + NewbornPlan.FirstDays,
    };

    private static CareTask Check(DamView dam, HerdRecord birth)
    {
        var asked = birth.At + dam.Table.Time(CareKeys.DamCheckAsked);
        return From(dam, birth, CareTaskName.DamCheck, CareKeys.DamCheckAsked, CareKeys.DamCheckLate, null, Level.Heed) with
        {
            DoneAt = NewbornPlan.Earliest(dam.Told.DoneFrom(CareTaskName.DamCheck, birth.At), dam.Told.Said(asked, NoteTopics.Well)),
            LapsesAt = birth.At + NewbornPlan.FirstDays,
        };
    }

    /// <summary>For information, once; held while an infection or a retained placenta is on record and no check has cleared it.</summary>
    private static CareTask Rebreed(DamView dam, HerdRecord birth)
    {
        var asked = dam.Farm.Clock.At(dam.Farm.Clock.Day(birth.At).PlusDays(dam.Table.Count(CareKeys.RebreedAsked)), DayLooks.Hour(dam.Farm));
        var retained = birth.At + dam.Table.Time(CareKeys.PlacentaVet);
        Instant? troubled = dam.Told.About(NoteTopics.Infection).Where(record => record.At > birth.At).Select(record => (Instant?)record.At).LastOrDefault()
            ?? (PlacentaOut(dam, birth) <= retained || dam.Now < retained ? null : retained);
        var cleared = troubled is { } from ? dam.Told.DoneFrom(CareTaskName.DamCheck, from) : null;
        var held = troubled is not null && cleared is null;
        return Steps.From(dam.Table, dam.Farm, dam.Key(CareTaskName.Rebreed, Which(birth)), dam.Animal.Id, Instant.Max(asked, cleared ?? asked), null, null) with
        {
            Held = held,
            RestsUntil = held ? birth.At + Watched : null,
            DoneAt = NewbornPlan.Earliest(dam.Told.DoneFrom(CareTaskName.Rebreed, birth.At), dam.Told.First(FactKind.Breeding, birth.At)),
            LapsesAt = held ? birth.At + Watched : Instant.Max(asked, cleared ?? asked) + Told,
        };
    }

    private static Instant? PlacentaOut(DamView dam, HerdRecord birth) => dam.Told.First(FactKind.Placenta, birth.At - Duration.FromMinutes(5));

    private static CareTask From(DamView dam, HerdRecord birth, CareTaskName name, CareKey asked, CareKey late, CareKey? vet, Level whenLate) =>
        Steps.FromBirth(dam.Table, dam.Farm, dam.Key(name, Which(birth)), dam.Animal.Id, birth.At, birth.SaidAt, dam.Table.Time(asked), dam.Table.Time(late), vet is null ? null : dam.Table.Time(vet), whenLate);

    public static string Which(HerdRecord birth) => $"birth {birth.Id.Number}";
}

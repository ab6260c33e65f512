using HerdBot.Core.Due;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>What may be wrong with a dam: blood, a prolapse, colic, an infection.</summary>
internal static class DamTroubles
{
    private static readonly Duration Watched = Duration.FromDays(3);

    public static IEnumerable<CareTask> Tasks(DamView dam)
    {
        CareTask?[] seen =
        [
            Troubles.Of(dam.Subject, CareTaskName.DamBleeding, NoteTopics.Bleeds, Level.Vet, Late(dam, NoteTopics.Bleeds)) is { } blood ? Steps.Urgent(dam.Table, blood) : null,
            Troubles.Of(dam.Subject, CareTaskName.Prolapse, NoteTopics.Prolapse, Level.Vet, Late(dam, NoteTopics.Prolapse)),
            Colic(dam),
            Troubles.Of(dam.Subject, CareTaskName.DamLook, NoteTopics.DamIll, Level.Vet, Late(dam, NoteTopics.DamIll), at => dam.Told.DoneFrom(CareTaskName.DamLook, at)),
            Troubles.Of(dam.Subject, CareTaskName.DamCheck, NoteTopics.Infection, Level.Vet, Infected(dam), at => dam.Told.DoneFrom(CareTaskName.DamCheck, at)),
        ];
        return seen.OfType<CareTask>();
    }

    /// <summary>Rolling or kicking long before her time may be a twisted womb; at her time it is labour.</summary>
    public static bool IsTwist(DamView dam, HerdRecord record) => record.Fact is { Neg: false, Text: not null }
        && (record.Fact.Says(NoteTopics.Rolls) || (record.Fact.Says(NoteTopics.Labour) && record.Fact.Kind == FactKind.LabourSign))
        && dam.GestationDays >= dam.Table.Count(CareKeys.DamColicFrom) && dam.GestationDays < dam.Table.Count(DueKeys.Early);

    private static CareTask? Colic(DamView dam)
    {
        var twist = dam.GestationDays >= dam.Table.Count(CareKeys.DamColicFrom);
        var seen = dam.Told.All.Where(record => record.At > dam.Now - Watched && !record.Fact.Neg && (record.Fact.Says(NoteTopics.Colic) || IsTwist(dam, record)));
        return Troubles.Of(dam.Subject, CareTaskName.DamColic, NoteTopics.Colic, Level.Vet, seen) is { } colic ? colic with { Wording = twist ? "twist" : "" } : null;
    }

    /// <summary>After a birth: foul discharge, fever, dull, off feed.</summary>
    private static IEnumerable<HerdRecord> Infected(DamView dam)
    {
        if (dam.LastBirth is not { } birth)
        {
            return [];
        }
        var until = birth.At + dam.Table.Time(CareKeys.DamCheckDays);
        return dam.Told.All.Where(record => record.At > birth.At && record.At < until && record.At > dam.Now - Watched && !record.Fact.Neg
            && (record.Fact.Says(NoteTopics.Infection, NoteTopics.Weak, NoteTopics.OffFeed) || IsFever(dam, record)));
    }

    private static bool IsFever(DamView dam, HerdRecord record) =>
        record.Fact.Kind == FactKind.Temperature && Measures.Fahrenheit(record.Fact) >= dam.Table.Number(CareKeys.DamCheckFever);

    private static IEnumerable<HerdRecord> Late(DamView dam, string topic) => dam.Told.About(topic).Where(record => record.At > dam.Now - Watched);
}

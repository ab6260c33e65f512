using System.Collections.Immutable;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>The clocks of a birth under way; none once it is over.</summary>
internal static class Labour
{
    private static readonly Duration Lasts = Duration.FromDays(1);

    public static IEnumerable<CareTask> Tasks(DamView dam)
    {
        var births = dam.Births;
        var under = dam.Told.All.Where(record => record.At > dam.Now - Lasts && !(births.Length > 0 && record.At < births[^1].At - Lasts)
            && births.All(birth => birth.At > record.At || record.At > birth.At + HerdState.Twins)).ToList();
        if (under.Count == 0)
        {
            yield break;
        }
        var born = births.Select(birth => (Instant?)birth.At).LastOrDefault(at => at >= under[0].At);
        var signs = under.Where(record => record is { Certain: true, Fact.Kind: FactKind.LabourSign } && IsOn(record.Fact) && !DamTroubles.IsTwist(dam, record)).ToList();
        if (signs.Count > 0)
        {
            var first = signs.Find(sign => !(dam.Told.DoneFrom(CareTaskName.Labour, sign.At) < signs[^1].At))!;
            yield return FirstStage(dam, first, NewbornPlan.Earliest(born, dam.Told.DoneFrom(CareTaskName.Labour, first.At)));
        }
        var inView = under.Where(record => !record.Fact.Neg && (record.Fact.Kind is FactKind.WaterBroke or FactKind.Presentation
            || (record.Fact.Kind == FactKind.LabourSign && record.Fact.Says(NoteTopics.InView)) || (record.Fact.Kind == FactKind.Note && record.Fact.Says(NoteTopics.Abnormal)))).ToList();
        if (inView.Count > 0)
        {
            yield return SecondStage(dam, inView, NewbornPlan.Earliest(born, dam.Told.DoneFrom(CareTaskName.Presentation, inView[^1].At)));
        }
    }

    /// <summary>Udder, wax, ligaments and a small appetite only put her on the list.</summary>
    private static bool IsOn(Fact sign) => !sign.Says(NoteTopics.CloseUp, NoteTopics.Bagging, NoteTopics.OffFeed) || sign.Says(NoteTopics.Labour, NoteTopics.InView);

    private static CareTask FirstStage(DamView dam, HerdRecord sign, Instant? doneAt)
    {
        var table = dam.Table;
        var late = dam.Farm.Clock.Local(sign.At).Hour >= table.Count(CareKeys.LabourLateHour);
        var task = Steps.From(table, dam.Farm, dam.Key(CareTaskName.Labour, $"{sign.Id.Number}"), dam.Animal.Id, sign.At, table.Time(CareKeys.LabourLate), table.Time(CareKeys.LabourVet));
        return task with
        {
            Steps = task.Steps.SetItem(0, task.Steps[0] with { At = sign.SaidAt, Level = late ? Level.Heed : Level.Fine }),
            DoneAt = doneAt,
            LapsesAt = sign.At + Lasts,
            Prompt = true,
            Wording = late ? "late in the day" : "",
        };
    }

    private static CareTask SecondStage(DamView dam, List<HerdRecord> inView, Instant? doneAt)
    {
        var table = dam.Table;
        var (first, newest) = (inView[0], inView[^1]);
        var wrong = inView.Find(record => record.Fact.Says(NoteTopics.Abnormal));
        var late = Instant.Max(newest.At + table.Time(CareKeys.PresentationLate), newest.SaidAt);
        var vet = Instant.Max(Instant.Min(newest.At + table.Time(CareKeys.PresentationVet), first.At + table.Time(CareKeys.PresentationBirth)) - dam.Farm.VetDrive, newest.SaidAt);
        TaskStep[] steps = wrong is not null ? [Steps.VetStep(wrong.SaidAt, "wrong way") with { News = true }]
            : [new(newest.SaidAt, "asked", TaskState.Asked, Level.Act), .. late < vet ? [new TaskStep(late, "late", TaskState.Late, Level.Act)] : Array.Empty<TaskStep>(), Steps.VetStep(vet, "vet")];
        return Steps.Urgent(table, new CareTask(dam.Key(CareTaskName.Presentation, $"{first.Id.Number} {newest.Id.Number}"), dam.Animal.Id, newest.At, [.. steps])
        {
            DoneAt = doneAt,
            Since = first.At,
            Wording = wrong is not null ? "wrong way" : inView.Exists(record => record.Fact.Says(NoteTopics.Normal)) ? "normal" : "",
            Figures = wrong?.Fact.Text is { } seen ? ImmutableDictionary<string, string>.Empty.Add("seen", seen) : ImmutableDictionary<string, string>.Empty,
        });
    }
}

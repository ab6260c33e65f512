using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>A dam's tasks: after a birth, and while one is under way.</summary>
internal static class DamPlan
{
    public static IEnumerable<CareTask> AfterBirth(CareTable table, Farm farm, Animal dam, HerdRecord lastBirth, IReadOnlyList<HerdRecord> records)
    {
        var born = lastBirth.At;
        yield return Steps.FromBirth(table, farm, new TaskKey(CareTaskName.DamLook, dam.Id, Which(lastBirth)), dam.Id, born, lastBirth.SaidAt,
            table.Time(CareKeys.DamLookAsked), table.Time(CareKeys.DamLookLate), null, Level.Heed) with
        {
            DoneAt = NewbornPlan.Earliest(Done(records, CareTaskName.DamLook, born), SeenWell(records, born)),
            LapsesAt = born + Duration.FromDays(1),
        };
        yield return Steps.FromBirth(table, farm, new TaskKey(CareTaskName.Placenta, dam.Id, Which(lastBirth)), dam.Id, born, lastBirth.SaidAt,
            table.Time(CareKeys.PlacentaAsked), table.Time(CareKeys.PlacentaLate), table.Time(CareKeys.PlacentaVet)) with
        {
            DoneAt = records.Where(record => record is { Certain: true, Fact.Kind: FactKind.Placenta } && record.At >= born - Duration.FromMinutes(5)).Select(record => (Instant?)record.At).FirstOrDefault(),
            LapsesAt = born + NewbornPlan.FirstDays,
        };
    }

    /// <summary>Down, pale, colicky: the vet at once, with or without a birth.</summary>
    public static IEnumerable<CareTask> Ill(CareTable table, Farm farm, Animal dam, IReadOnlyList<HerdRecord> records)
    {
        if (records.LastOrDefault(record => record is { Withdrawn: false, Fact: { Neg: false, Field: NoteTopics.DamIll } }) is { } ill)
        {
            yield return Steps.From(table, farm, new TaskKey(CareTaskName.DamLook, dam.Id, $"ill {ill.Id.Number}"), dam.Id, ill.At, null, null) with
            {
                Steps = [Steps.VetStep(ill.SaidAt, "ill") with { News = true }],
                DoneAt = Done(records, CareTaskName.DamLook, ill.At),
                LapsesAt = ill.At + NewbornPlan.FirstDays,
                Prompt = true,
            };
        }
    }

    /// <summary>The clocks of a birth under way; none once it is over.</summary>
    /// <param name="table">The species' numbers.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="dam">The dam.</param>
    /// <param name="records">Her records since the last birth, oldest first.</param>
    /// <param name="born">When the birth under way ended; null while it lasts.</param>
    public static IEnumerable<CareTask> Labour(CareTable table, Farm farm, Animal dam, IReadOnlyList<HerdRecord> records, Instant? born)
    {
        var signs = records.Where(record => record is { Certain: true, Fact.Kind: FactKind.LabourSign } && record.Fact.Field is not (NoteTopics.CloseUp or NoteTopics.Bagging)).ToList();
        if (signs.Count > 0)
        {
            var first = signs.Find(sign => !(Done(records, CareTaskName.Labour, sign.At) < signs[^1].At))!;
            yield return FirstStage(table, farm, dam, first, NewbornPlan.Earliest(born, Done(records, CareTaskName.Labour, first.At)));
        }
        var inView = records.Where(record => record is { Withdrawn: false, Fact.Neg: false } && (record.Fact.Kind is FactKind.WaterBroke or FactKind.Presentation
            || (record.Fact.Kind == FactKind.LabourSign && record.Fact.Field == NoteTopics.InView))).ToList();
        if (inView.Count > 0)
        {
            yield return SecondStage(table, farm, dam, inView, NewbornPlan.Earliest(born, Done(records, CareTaskName.Presentation, inView[^1].At)));
        }
    }

    private static CareTask FirstStage(CareTable table, Farm farm, Animal dam, HerdRecord sign, Instant? doneAt)
    {
        var late = farm.Clock.Local(sign.At).Hour >= table.Count(CareKeys.LabourLateHour);
        var task = Steps.From(table, farm, new TaskKey(CareTaskName.Labour, dam.Id, $"{sign.Id.Number}"), dam.Id, sign.At, table.Time(CareKeys.LabourLate), table.Time(CareKeys.LabourVet));
        return task with
        {
            Steps = task.Steps.SetItem(0, task.Steps[0] with { At = sign.SaidAt, Level = late ? Level.Heed : Level.Fine }),
            DoneAt = doneAt,
            LapsesAt = sign.At + Duration.FromDays(1),
            Prompt = true,
            Wording = late ? "late in the day" : "",
        };
    }

    private static CareTask SecondStage(CareTable table, Farm farm, Animal dam, List<HerdRecord> inView, Instant? doneAt)
    {
        var (first, newest) = (inView[0], inView[^1]);
        var wrong = inView.Find(record => record.Fact.Field == NoteTopics.Abnormal);
        var late = Instant.Max(newest.At + table.Time(CareKeys.PresentationLate), newest.SaidAt);
        var vet = Instant.Max(Instant.Min(newest.At + table.Time(CareKeys.PresentationVet), first.At + table.Time(CareKeys.PresentationBirth)) - farm.VetDrive, newest.SaidAt);
        TaskStep[] steps = wrong is not null ? [Steps.VetStep(wrong.SaidAt, "wrong way") with { News = true }]
            : [new(newest.SaidAt, "asked", TaskState.Asked, Level.Act), .. late < vet ? [new TaskStep(late, "late", TaskState.Late, Level.Act)] : Array.Empty<TaskStep>(), Steps.VetStep(vet, "vet")];
        return Steps.Urgent(table, new CareTask(new TaskKey(CareTaskName.Presentation, dam.Id, $"{first.Id.Number} {newest.Id.Number}"), dam.Id, newest.At, [.. steps])
        {
            DoneAt = doneAt,
            Since = first.At,
            Wording = wrong is not null ? "wrong way" : inView.Exists(record => record.Fact.Field == NoteTopics.Normal) ? "normal" : "",
        });
    }

    private static Instant? SeenWell(IEnumerable<HerdRecord> records, Instant born) => records
        .Where(record => record is { Certain: true, Fact: { Kind: FactKind.Note, Field: NoteTopics.Well } } && record.At >= born).Select(record => (Instant?)record.At).FirstOrDefault();

    private static string Which(HerdRecord birth) => $"birth {birth.Id.Number}";

    private static Instant? Done(IEnumerable<HerdRecord> records, CareTaskName task, Instant from) => records
        .Where(record => record is { Certain: true, Fact.Kind: FactKind.Done } && record.Fact.Task == CareTaskWords.Word(task) && record.At >= from)
        .Select(record => (Instant?)record.At).FirstOrDefault();
}

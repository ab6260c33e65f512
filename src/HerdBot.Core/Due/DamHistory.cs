using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Due;

/// <summary>A dam's records gone through once, from birth to birth.</summary>
internal sealed class DamHistory(Animal dam, Farm farm, CareTable table, Gestation gestation)
{
    /// <summary>A time in the pen without an end is taken to end after so many days.</summary>
    private const int OpenPen = 60;

    private readonly List<(Mating, HerdRecord)> matings = [];
    private readonly List<PregnancyCheck> checks = [];
    private readonly List<Length> past = [];
    private Instant? born;
    private int? days;

    /// <summary>How long the newborns on record were carried, in days.</summary>
    public Dictionary<AnimalId, int?> Carried { get; } = [];

    /// <summary>Births that no mating on record can have led to, though there is one, with the days since the newest.</summary>
    public Dictionary<AnimalId, int> Unexplained { get; } = [];

    /// <summary>Where she stands after all her records.</summary>
    public Pregnancy Pregnancy => new(dam, [.. matings], [.. checks], [.. past]);

    public void Take(HerdRecord record)
    {
        var day = farm.Clock.Day(record.At);
        switch (record.Fact)
        {
            case { Kind: FactKind.Birth, Neg: false } when record.Newborn is { } newborn:
                Born(record, newborn, day);
                break;
            case { Kind: FactKind.Death, Neg: false, Unsure: false }:
                (born, days) = (null, null);
                matings.Clear();
                checks.Clear();
                break;
            case { Kind: FactKind.Breeding, Neg: false, Unsure: false } mating when !mating.Says(NoteTopics.Grafted):
                matings.Add((new Mating(day, EndOf(record.Fact, day)), record));
                break;
            case { Unsure: true }:
                break;
            case { Kind: FactKind.PregnancyCheck } check:
                checks.Add(new PregnancyCheck(day, check.Neg ? CheckResult.Open : CheckResult.Pregnant) { Expected = check.Neg ? null : check.Expected });
                break;
            case { Kind: FactKind.SpitOff, Neg: false } or { Kind: FactKind.Breeding, Neg: true }:
                checks.Add(new PregnancyCheck(day, CheckResult.SpitOff));
                break;
            case { Kind: FactKind.SpitOff, Neg: true } when !checks.Contains(new PregnancyCheck(day, CheckResult.SpitOff)):
                checks.Add(new PregnancyCheck(day, CheckResult.Receptive));
                break;
        }
    }

    private static LocalDate EndOf(Fact mating, LocalDate from) =>
        mating.Until is { } until ? LocalDate.Max(until, from) : mating.Says(MatingTopics.Pen) ? from.PlusDays(OpenPen - 1) : from;

    private void Born(HerdRecord birth, AnimalId newborn, LocalDate day)
    {
        if (!(birth.At - born < HerdState.Twins))
        {
            var asked = new DueCase(dam.Species, [.. matings.Select(mating => mating.Item1)], day) { Checks = [.. checks], Hemisphere = farm.Hemisphere };
            var length = DueForecast.LengthAt(table, gestation, asked);
            if (length is { Sure: true } sure)
            {
                past.Add(gestation.LengthOf(sure.Days, day.PlusDays(-sure.Days), farm.Hemisphere));
            }
            if (length is null && matings.Count > 0)
            {
                Unexplained[newborn] = Period.DaysBetween(matings[^1].Item1.To, day);
            }
            (born, days) = (birth.At, length?.Days);
            matings.RemoveAll(mating => mating.Item1.From <= day);
            checks.RemoveAll(check => check.On <= day);
        }
        Carried[newborn] = days;
    }
}

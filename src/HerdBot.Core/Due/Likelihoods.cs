using HerdBot.Core.Care;

namespace HerdBot.Core.Due;

/// <summary>How likely matings, losses and looks make what they show: the chances of the care table, as shares.</summary>
/// <param name="table">A species' care table.</param>
internal sealed class Likelihoods(CareTable table)
{
    private readonly double median = (double)table.Number(DueKeys.Median);
    private readonly double aDay = -Math.Log(1 - Share(table, DueKeys.Lost)) / (double)table.Number(DueKeys.Median);
    private readonly double penDay = Share(table, DueKeys.PenDay);
    private readonly double rejectsPregnant = Share(table, DueKeys.RejectsPregnant);
    private readonly double rejectsFrom = (double)table.Number(DueKeys.RejectsFrom);
    private readonly double checkFrom = (double)table.Number(DueKeys.CheckFrom);
    private readonly double checkSure = (double)table.Number(DueKeys.CheckSure);
    private readonly double checkSees = Share(table, DueKeys.CheckSees);
    private readonly double vetSpread = (double)table.Number(DueKeys.VetDateSpread);

    /// <summary>That a mating takes.</summary>
    public double Takes { get; } = Share(table, DueKeys.Takes);

    /// <summary>That a dam that carries nothing rejects the male.</summary>
    public double RejectsOpen { get; } = Share(table, DueKeys.RejectsOpen);

    /// <summary>That a check calls a dam that carries nothing pregnant.</summary>
    public double CheckFalse { get; } = Share(table, DueKeys.CheckFalse);

    /// <summary>That a time in the pen takes, on whichever day.</summary>
    /// <param name="days">How many days, both ends counted.</param>
    public double PenTakes(int days) => 1 - (1 - Takes) * Math.Pow(1 - penDay, days - 1);

    /// <summary>That a pregnancy is not lost in some days.</summary>
    public double Kept(int days) => Math.Exp(-aDay * days);

    /// <summary>That a dam pregnant for some days rejects the male: as an open one at first, growing evenly.</summary>
    public double Rejects(int age) => RejectsOpen + (rejectsPregnant - RejectsOpen) * Math.Clamp(age / rejectsFrom, 0, 1);

    /// <summary>That a check sees a pregnancy of some days: as one that is not there at first, growing evenly.</summary>
    public double CheckSees(int age) => CheckFalse + (checkSees - CheckFalse) * Math.Clamp((age - checkFrom) / (checkSure - checkFrom), 0, 1);

    /// <summary>How well a vet's due date fits a pregnancy, as a density of no scale.</summary>
    /// <param name="length">Days from the conception to the date that the vet named.</param>
    public double VetDate(int length) => Math.Exp(-Math.Pow((length - median) / vetSpread, 2) / 2);

    private static double Share(CareTable table, CareKey key) => (double)table.Number(key) / 100;
}

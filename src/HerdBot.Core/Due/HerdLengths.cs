using HerdBot.Core.Care;

namespace HerdBot.Core.Due;

/// <summary>All lengths of a herd, and the variances that are in force: the farm's own once it has enough of them.</summary>
public sealed class HerdLengths
{
    private readonly MixedModel model;

    private HerdLengths(MixedModel model, double residual, bool own) => (this.model, Residual, Own) = (model, residual, own);

    /// <summary>The residual variance in force, in days squared.</summary>
    public double Residual { get; }
    /// <summary>The variances are estimated from the farm's own records.</summary>
    public bool Own { get; }

    /// <summary>What a herd's lengths come to.</summary>
    /// <param name="table">The species' numbers.</param>
    /// <param name="gestation">Their meaning.</param>
    /// <param name="dams">The lengths, a list a dam.</param>
    public static HerdLengths Of(CareTable table, Gestation gestation, IEnumerable<IReadOnlyList<Length>> dams)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(gestation);
        var all = dams.Where(dam => dam.Count > 0).ToList();
        var variances = gestation.Variances;
        var own = all.Count(dam => dam.Count > 1) >= table.Count(DueKeys.OwnDams) && all.Sum(dam => dam.Count) >= table.Count(DueKeys.OwnLengths);
        if (own)
        {
            var fit = Reml.Fit(all.Select(dam => dam.Select(length => length.Deviation).ToList()));
            // Lengths without their season bear its variance in the residual.
            var seasonless = all.Sum(dam => dam.Count(length => !length.SeasonKnown)) / (double)all.Sum(dam => dam.Count);
            variances = variances with { Dam = fit.Dam, Residual = Math.Max(fit.Residual - seasonless * gestation.SeasonVariance, 1) };
        }
        return new HerdLengths(MixedModel.Of(variances, gestation.SeasonVariance, all), variances.Residual, own);
    }

    /// <summary>How a dam of the herd carries, and the residual variance that goes with it.</summary>
    /// <param name="lengths">Hers, which belong among the herd's; none for a dam without a record.</param>
    public (Lean Lean, double Residual) OfDam(IReadOnlyList<Length> lengths) => (model.OfDam(lengths), Residual);
}

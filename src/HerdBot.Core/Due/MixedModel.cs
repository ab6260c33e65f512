namespace HerdBot.Core.Due;

/// <summary>
/// The mixed model length = species (and season) + herd + dam + residual: best linear unbiased predictions of herd and
/// dam, shrunk towards the species by the variances.
/// </summary>
/// <remarks>Source: Henderson's mixed model; checked against lme4 in the tests. Closed form, since dams are independent given the herd.</remarks>
public sealed class MixedModel
{
    private readonly Variances variances;
    private readonly double season;
    private readonly Lean herd;

    private MixedModel(Variances variances, double season, Lean herd) => (this.variances, this.season, this.herd) = (variances, season, herd);

    /// <summary>What the lengths on record say of a herd.</summary>
    /// <param name="variances">What lengths vary by.</param>
    /// <param name="season">The season's variance, for lengths whose season is not known; days squared.</param>
    /// <param name="dams">The herd's lengths, a list a dam.</param>
    public static MixedModel Of(Variances variances, double season, IEnumerable<IReadOnlyList<Length>> dams)
    {
        ArgumentNullException.ThrowIfNull(variances);
        ArgumentNullException.ThrowIfNull(dams);
        var (precision, sum) = (1 / Math.Max(variances.Herd, 1e-9), 0.0);
        foreach (var dam in dams.Where(dam => dam.Count > 0))
        {
            var (mean, variance) = Mean(dam, variances, season);
            var weight = 1 / (variances.Dam + variance);
            precision += weight;
            sum += weight * mean;
        }
        return new MixedModel(variances, season, new Lean(sum / precision, 1 / precision));
    }

    /// <summary>How a dam of the herd carries. Her own lengths belong among those the herd was made of.</summary>
    /// <param name="lengths">Hers; none for a dam without a record.</param>
    public Lean OfDam(IReadOnlyList<Length> lengths)
    {
        ArgumentNullException.ThrowIfNull(lengths);
        if (lengths.Count == 0)
        {
            return new Lean(herd.Mean, variances.Dam + herd.Variance);
        }
        var (mean, variance) = Mean(lengths, variances, season);
        var share = variances.Dam / (variances.Dam + variance);
        return new Lean(share * mean + (1 - share) * herd.Mean, variances.Dam * (1 - share) + (1 - share) * (1 - share) * herd.Variance);
    }

    private static Lean Mean(IReadOnlyList<Length> lengths, Variances variances, double season)
    {
        var (precision, sum) = (0.0, 0.0);
        foreach (var length in lengths)
        {
            var weight = 1 / (variances.Residual + (length.SeasonKnown ? 0 : season));
            precision += weight;
            sum += weight * length.Deviation;
        }
        return new Lean(sum / precision, 1 / precision);
    }
}

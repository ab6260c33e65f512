namespace HerdBot.Core.Due;

/// <summary>What restricted maximum likelihood finds in a herd's lengths.</summary>
/// <param name="Mean">The herd's mean.</param>
/// <param name="Dam">The variance between dams.</param>
/// <param name="Residual">The variance between the pregnancies of a dam.</param>
public sealed record RemlFit(double Mean, double Dam, double Residual);

/// <summary>Estimates the variances of one herd's lengths by restricted maximum likelihood, for dams with unequal numbers of births.</summary>
/// <remarks>Checked against lme4's lmer(length ~ 1 + (1 | dam)) in the tests.</remarks>
public static class Reml
{
    private const int Steps = 80;
    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    /// <summary>Fits.</summary>
    /// <param name="dams">Lengths, a list a dam; at least two dams, and more lengths than dams.</param>
    public static RemlFit Fit(IEnumerable<IReadOnlyList<double>> dams)
    {
        ArgumentNullException.ThrowIfNull(dams);
        var groups = dams.Where(dam => dam.Count > 0).Select(dam => (Count: dam.Count, Mean: dam.Average(), Within: Within(dam))).ToList();
        if (groups.Count < 2 || groups.Sum(group => group.Count) <= groups.Count)
        {
            throw new ArgumentException("Two dams at least, and one with two lengths.", nameof(dams));
        }
        // Searched over the dam's share of the variance, from 0 to nearly 1: golden section.
        var (low, high) = (0.0, 0.999);
        for (var step = 0; step < Steps; step++)
        {
            var (left, right) = (high - Golden * (high - low), low + Golden * (high - low));
            (low, high) = At(groups, left).Deviance < At(groups, right).Deviance ? (low, right) : (left, high);
        }
        var best = new[] { At(groups, 0), At(groups, (low + high) / 2) }.MinBy(fit => fit.Deviance);
        return new RemlFit(best.Mean, best.Residual * best.Ratio, best.Residual);
    }

    private static (double Deviance, double Mean, double Residual, double Ratio) At(List<(int Count, double Mean, double Within)> groups, double share)
    {
        var ratio = share / (1 - share);
        var (weights, sum, logs, total) = (0.0, 0.0, 0.0, 0);
        foreach (var (count, mean, _) in groups)
        {
            var weight = count / (1 + count * ratio);
            weights += weight;
            sum += weight * mean;
            logs += Math.Log(1 + count * ratio);
            total += count;
        }
        var centre = sum / weights;
        var squares = groups.Sum(group => group.Within + group.Count / (1 + group.Count * ratio) * (group.Mean - centre) * (group.Mean - centre));
        var residual = squares / (total - 1);
        return ((total - 1) * Math.Log(residual) + logs + Math.Log(weights), centre, residual, ratio);
    }

    private static double Within(IReadOnlyList<double> lengths)
    {
        var mean = lengths.Average();
        return lengths.Sum(length => (length - mean) * (length - mean));
    }
}

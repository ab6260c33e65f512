namespace HerdBot.Core.Care;

/// <summary>The trend of a few points that one wrong weighing does not bend: the median of the slopes of all pairs.</summary>
/// <remarks>Source: P. K. Sen, Journal of the American Statistical Association 63:1379, 1968; H. Theil 1950.</remarks>
public static class TheilSen
{
    /// <summary>The slope; null where no two points lie apart.</summary>
    /// <param name="points">Places and values, in any order; a handful, since all pairs are compared.</param>
    public static decimal? Slope(IReadOnlyList<(decimal X, decimal Y)> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var slopes = points.SelectMany((one, n) => points.Skip(n + 1).Where(other => other.X != one.X).Select(other => (other.Y - one.Y) / (other.X - one.X))).Order().ToList();
        var middle = slopes.Count / 2;
        return slopes.Count == 0 ? null : slopes.Count % 2 == 1 ? slopes[middle] : (slopes[middle - 1] + slopes[middle]) / 2;
    }
}

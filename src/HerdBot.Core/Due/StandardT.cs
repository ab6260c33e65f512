using System.Collections.Concurrent;
using MathNet.Numerics.Distributions;

namespace HerdBot.Core.Due;

/// <summary>Student's t, tabulated: a herd's forecasts ask it some hundred thousand times.</summary>
/// <remarks>The table's step of 1/64 keeps the distribution function right to 0.00001; checked against MathNet in the tests.</remarks>
public sealed class StandardT
{
    private const int StepsInOne = 64;
    private const int Reach = 24;
    private const double Fineness = 20;
    private static readonly ConcurrentDictionary<int, StandardT> Known = [];

    private readonly double[] upper = new double[Reach * StepsInOne + 2];

    private StandardT(double degrees)
    {
        for (var n = 0; n < upper.Length; n++)
        {
            upper[n] = StudentT.CDF(0, 1, degrees, (double)n / StepsInOne);
        }
    }

    /// <summary>The table for some degrees of freedom, taken to a twentieth.</summary>
    /// <param name="degrees">2 or more; above 200 it counts as 200.</param>
    public static StandardT Of(double degrees) =>
        Known.GetOrAdd((int)Math.Round(Math.Min(degrees, 200) * Fineness), key => new StandardT(key / Fineness));

    /// <summary>The chance of a value up to this.</summary>
    /// <param name="x">In units of the scale.</param>
    public double Below(double x)
    {
        var at = Math.Min(Math.Abs(x), Reach) * StepsInOne;
        var step = (int)at;
        var value = upper[step] + (at - step) * (upper[step + 1] - upper[step]);
        return x < 0 ? 1 - value : value;
    }
}

using HerdBot.Core.Facts;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Which figures can be what, by their size.</summary>
/// <remarks>The limits are wide: they tell scales apart and catch lost points, they do not judge health. Common practice, no source.</remarks>
internal static class Readings
{
    /// <summary>The scale a body temperature must be on; null where it fits neither.</summary>
    public static FactUnit? TemperatureScale(decimal value) =>
        value is >= 86m and <= 110m ? FactUnit.F : value is >= 30m and <= 43.5m ? FactUnit.C : null;

    /// <summary>Whether a figure with its degree can be a body's: 80 to 110 °F, and the same in °C.</summary>
    public static bool IsPossible(decimal value, FactUnit? unit) =>
        unit == FactUnit.F ? value is >= 80m and <= 110m : unit == FactUnit.C && value is >= 26.6m and <= 43.4m;

    /// <summary>A newborn's or growing one's weight without its unit.</summary>
    public static bool IsYoungWeight(decimal value, bool metric) => metric ? value is >= 2m and <= 60m : value is >= 5m and <= 130m;

    public static bool IsMass(FactUnit? unit) => unit is FactUnit.Lb or FactUnit.Kg or FactUnit.G;

    public static bool IsVolume(FactUnit? unit) => unit is FactUnit.Ml or FactUnit.Cc or FactUnit.Oz;

    public static bool IsDegree(FactUnit? unit) => unit is FactUnit.F or FactUnit.C;
}

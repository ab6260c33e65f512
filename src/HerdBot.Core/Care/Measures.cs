using HerdBot.Core.Facts;

namespace HerdBot.Core.Care;

/// <summary>Conversions between the units people use.</summary>
public static class Measures
{
    /// <summary>Grams in a pound, by its definition (international avoirdupois pound, 1959).</summary>
    public const decimal GramsInPound = 453.59237m;

    /// <summary>Millilitres in a US fluid ounce, by its definition (231 cubic inches in a US gallon).</summary>
    public const decimal MillilitresInFluidOunce = 29.5735295625m;

    /// <summary>A body temperature in °F, rounded to 0.1 first and judged after; null for any other unit.</summary>
    public static decimal? Fahrenheit(Fact fact) => Checked(fact) switch
    {
        { Value: { } value, Unit: FactUnit.F } => Tenth(value),
        { Value: { } value, Unit: FactUnit.C } => Tenth(value * 9 / 5 + 32),
        _ => null,
    };

    /// <summary>A body weight in grams; null for any other unit.</summary>
    public static decimal? Grams(Fact fact) => Checked(fact) switch
    {
        { Value: { } value, Unit: FactUnit.Lb } => value * GramsInPound,
        { Value: { } value, Unit: FactUnit.Oz } => value * GramsInPound / 16,
        { Value: { } value, Unit: FactUnit.Kg } => value * 1000,
        { Value: { } value, Unit: FactUnit.G } => value,
        _ => null,
    };

    /// <summary>An amount of milk in millilitres; an ounce in a bottle is a US fluid ounce; null for any other unit.</summary>
    public static decimal? Millilitres(Fact fact) => Checked(fact) switch
    {
        { Value: { } value, Unit: FactUnit.Ml or FactUnit.Cc } => value,
        { Value: { } value, Unit: FactUnit.Oz } => value * MillilitresInFluidOunce,
        _ => null,
    };

    private static decimal Tenth(decimal value) => decimal.Round(value, 1, MidpointRounding.AwayFromZero);

    private static Fact Checked(Fact fact)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return fact;
    }
}

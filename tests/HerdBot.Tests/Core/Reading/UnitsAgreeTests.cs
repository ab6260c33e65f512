using CsCheck;
using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Tests.Support;
using UnitsNet;
using Xunit;

namespace HerdBot.Tests.Core.Reading;

/// <summary>The same measure in another unit is the same measure. UnitsNet is the witness for every conversion.</summary>
public sealed class UnitsAgreeTests
{
    [Fact]
    public void Pounds_and_kilograms_give_the_same_grams() =>
        Gen.Int[500, 4_000].Each(hundredths =>
        {
            var pounds = hundredths / 100m;
            var kilograms = Math.Round((decimal)Mass.FromPounds((double)pounds).Kilograms, 3);

            var (told, same) = (Grams($"weighs {pounds} lb"), Grams($"weighs {kilograms} kg"));

            ((double)told).Should().BeApproximately(Mass.FromPounds((double)pounds).Grams, 1e-6);
            same.Should().Be(kilograms * 1000m);
            told.Should().BeApproximately(same, 0.5m, "a gram is the last place that was said");
        }, times: 300);

    [Fact]
    public void Pounds_and_ounces_give_the_grams_of_both() =>
        // "10-4" is what radio operators say for yes.
        Gen.Select(Gen.Int[5, 40], Gen.Int[0, 15], Gen.OneOf("weighs {0} lb {1} oz", "weighs {0} lb {1}", "weighs {0}-{1}", "weighs {0} pounds and {1} ounces", "weighs {0} lbs, {1} oz"))
            .Where(told => told is not (10, 4, "weighs {0}-{1}")).Each((pounds, ounces, form) =>
            ((double)Grams(string.Format(null, form, pounds, ounces))).Should().BeApproximately((Mass.FromPounds(pounds) + Mass.FromOunces(ounces)).Grams, 1e-6),
            times: 300);

    [Fact]
    public void Kilograms_and_grams_give_the_grams_of_both() =>
        Gen.Select(Gen.Int[2, 18], Gen.Int[50, 999], Gen.OneOf("weighs {0} kg {1} g", "weighs {0} kilos {1}", "pesa {0} kilos {1} gramos")).Each((kilograms, grams, form) =>
            ((double)Grams(string.Format(null, form, kilograms, grams))).Should().BeApproximately((Mass.FromKilograms(kilograms) + Mass.FromGrams(grams)).Grams, 1e-6),
            times: 300);

    [Fact]
    public void Fahrenheit_and_Celsius_give_the_same_temperature() =>
        Gen.Select(Gen.Int[870, 1_090], Gen.OneOf("temp {0}", "temp {0}{1}", "temp {0} °{1}", "her temp is {0} {1}")).Each((tenths, form) =>
        {
            var fahrenheit = tenths / 10m;
            var celsius = Math.Round((decimal)Temperature.FromDegreesFahrenheit((double)fahrenheit).DegreesCelsius, 2);

            var (told, same) = (Fahrenheit(string.Format(null, form, fahrenheit, "F")), Fahrenheit(string.Format(null, form, celsius, "C")));

            told.Should().Be(fahrenheit);
            same.Should().Be(told);
            ((double)same).Should().BeApproximately(Temperature.FromDegreesCelsius((double)celsius).DegreesFahrenheit, 0.05 + 1e-9, "it is kept to a tenth");
        }, times: 300);

    [Fact]
    public void Ounces_in_a_bottle_give_the_millilitres_of_the_US_fluid_ounce() =>
        Gen.Select(Gen.Int[1, 40], Gen.OneOf("Kestrel's baby had a {0} oz bottle", "gave Kestrel's baby {0} oz colostrum")).Each((ounces, form) =>
            ((double)Measures.Millilitres(SomeReading.Only(string.Format(null, form, ounces)))!.Value).Should().BeApproximately(Volume.FromUsOunces(ounces).Milliliters, 1e-3),
            times: 100);

    private static decimal Grams(string text) => Measures.Grams(SomeReading.Only(text))!.Value;

    private static decimal Fahrenheit(string text)
    {
        var fact = SomeReading.Only(text);
        fact.Kind.Should().Be(FactKind.Temperature);
        return Measures.Fahrenheit(fact)!.Value;
    }
}

using FluentAssertions;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading;
using UnitsNet;
using Xunit;

namespace HerdBot.Tests.Core.Reading;

public sealed class FiguresTests
{
    [Theory]
    [InlineData("weight 24 lb 6 oz", 24, 6)]
    [InlineData("weight 24 lb 6", 24, 6)]
    [InlineData("weight 24-6", 24, 6)]
    [InlineData("weight 24#6", 24, 6)]
    [InlineData("weight 24 lbs, 6 oz", 24, 6)]
    [InlineData("weight 18 pounds and 15 ounces", 18, 15)]
    public void Pounds_and_ounces_fold_into_pounds(string text, int pounds, int ounces)
    {
        var fact = SomeReading.Only(text);

        fact.Unit.Should().Be(FactUnit.Lb);
        // UnitsNet is the witness for the ounce.
        ((double)fact.Value!.Value).Should().BeApproximately((Mass.FromPounds(pounds) + Mass.FromOunces(ounces)).Pounds, 1e-9);
    }

    [Theory]
    [InlineData("weight 8 kilo 250", 8, 250)]
    [InlineData("weight 8 kg 250 g", 8, 250)]
    [InlineData("weight 7 kilos 800", 7, 800)]
    public void Kilograms_and_grams_fold_into_kilograms(string text, int kilograms, int grams)
    {
        var fact = SomeReading.Only(text);

        fact.Unit.Should().Be(FactUnit.Kg);
        ((double)fact.Value!.Value).Should().BeApproximately((Mass.FromKilograms(kilograms) + Mass.FromGrams(grams)).Kilograms, 1e-9);
    }

    [Theory]
    [InlineData("temp 98.4", 98.4, FactUnit.F)]
    [InlineData("temp 98,4", 98.4, FactUnit.F)]
    [InlineData("temp 98 point 4", 98.4, FactUnit.F)]
    [InlineData("temp ninety eight point four", 98.4, FactUnit.F)]
    [InlineData("temp ninety eight four", 98.4, FactUnit.F)]
    [InlineData("temp one oh one point two", 101.2, FactUnit.F)]
    [InlineData("temp a hundred", 100, FactUnit.F)]
    [InlineData("temp 101 1/2", 101.5, FactUnit.F)]
    [InlineData("temp 101½", 101.5, FactUnit.F)]
    [InlineData("temp 99 and a half", 99.5, FactUnit.F)]
    [InlineData("temp 101.5*F", 101.5, FactUnit.F)]
    [InlineData("temp 38.1", 38.1, FactUnit.C)]
    [InlineData("temp 38.1°C", 38.1, FactUnit.C)]
    [InlineData("weight 19 1/2 lb", 19.5, FactUnit.Lb)]
    [InlineData("weight 11,2 kg", 11.2, FactUnit.Kg)]
    [InlineData("weight twenty five and a half pounds", 25.5, FactUnit.Lb)]
    [InlineData("weight 4 .2 kg", 4.2, FactUnit.Kg)]
    [InlineData("weight 8440 g", 8440, FactUnit.G)]
    [InlineData("bottle 120 ml", 120, FactUnit.Ml)]
    [InlineData("bottle half a cc", 0.5, FactUnit.Cc)]
    [InlineData("bottle two ounces", 2, FactUnit.Oz)]
    [InlineData("igg 1,150", 1150, FactUnit.MgPerDl)]
    public void Figures_are_read_however_they_are_written(string text, double value, FactUnit unit)
    {
        var fact = SomeReading.Only(text);

        fact.Value.Should().Be((decimal)value);
        fact.Unit.Should().Be(unit);
    }

    [Theory]
    [InlineData("temp 984")]
    [InlineData("temp 9.84")]
    [InlineData("temp 378")]
    public void A_temperature_that_fits_no_scale_lost_its_point_and_is_asked_for(string text)
    {
        var reading = Reader.Read(text, SomeReading.Context());

        reading.Ask.Should().Be(Ask.Value);
        reading.Facts.Should().ContainSingle().Which.Value.Should().BeNull();
    }

    // The two scales share no figure in these ranges, so that the size gives the unit: UnitsNet is the witness.
    [Fact]
    public void A_figure_of_one_scale_is_read_on_that_scale_alone()
    {
        for (var tenths = 900; tenths <= 1080; tenths += 7)
        {
            var fahrenheit = tenths / 10m;
            var celsius = Math.Round((decimal)Temperature.FromDegreesFahrenheit((double)fahrenheit).DegreesCelsius, 1);

            SomeReading.Only(FormattableString.Invariant($"temp {fahrenheit}")).Unit.Should().Be(FactUnit.F);
            SomeReading.Only(FormattableString.Invariant($"temp {celsius}")).Unit.Should().Be(FactUnit.C);
        }
    }
}

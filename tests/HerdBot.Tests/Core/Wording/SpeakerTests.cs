using System.Globalization;
using FluentAssertions;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading;
using HerdBot.Core.Wording;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Wording;

/// <summary>Times, ages and figures as the farm has them.</summary>
public sealed class SpeakerTests
{
    [Theory]
    [InlineData("06:40", "6:40", "06:40")]
    [InlineData("12:05", "12:05 pm", "12:05")]
    [InlineData("18:40", "6:40 pm", "18:40")]
    [InlineData("17 18:40", "yesterday 6:40 pm", "yesterday 18:40")]
    [InlineData("16 06:40", "Apr 16 6:40", "16 Apr 06:40")]
    public void A_time_is_told_as_the_farm_tells_it(string at, string us, string metric)
    {
        Speak(UnitSystem.Us).Clock(At(at)).Should().Be(us);
        Speak(UnitSystem.Metric).Clock(At(at)).Should().Be(metric);
    }

    [Theory]
    [InlineData(0, "0 min")]
    [InlineData(89, "89 min")]
    [InlineData(90, "1 h 30 min")]
    [InlineData(120, "2 h")]
    [InlineData(719, "11 h 59 min")]
    [InlineData(725, "12 h")]
    [InlineData(2879, "47 h")]
    [InlineData(2880, "2 days")]
    public void An_age_is_told_no_finer_than_it_matters(int minutes, string age) => Speak(UnitSystem.Us).Age(Duration.FromMinutes(minutes)).Should().Be(age);

    [Theory]
    [InlineData(99.0, "99.0 °F", "37.2 °C")]
    [InlineData(94.6, "94.6 °F", "34.8 °C")]
    public void A_temperature_is_told_in_the_farms_scale(double fahrenheit, string us, string metric)
    {
        Speak(UnitSystem.Us).Temperature((decimal)fahrenheit).Should().Be(us);
        Speak(UnitSystem.Metric).Temperature((decimal)fahrenheit).Should().Be(metric);
    }

    [Fact]
    public void Milk_is_told_in_both_units_on_a_US_farm()
    {
        // 29.5735 ml in a US fluid ounce (231 cubic inches in a gallon, by definition).
        Speak(UnitSystem.Us).Amount(900).Should().Be("30 fl oz (900 ml)");
        Speak(UnitSystem.Metric).Amount(900).Should().Be("900 ml");
        Speak(UnitSystem.Us).Amount(0).Should().Be("nothing");
    }

    [Theory]
    [InlineData(FactKind.Weight, 24.0, FactUnit.Lb, "24 lb")]
    [InlineData(FactKind.Weight, 24.25, FactUnit.Lb, "24.25 lb")]
    [InlineData(FactKind.Weight, 10.4, FactUnit.Kg, "10.4 kg")]
    [InlineData(FactKind.Temperature, 99.0, FactUnit.F, "99.0 °F")]
    [InlineData(FactKind.Temperature, 37.2, FactUnit.C, "37.2 °C")]
    [InlineData(FactKind.Igg, 1450.0, FactUnit.MgPerDl, "1450 mg/dL")]
    [InlineData(FactKind.Feed, 4.0, FactUnit.Oz, "4 oz")]
    public void A_figure_is_said_back_as_it_was_said(FactKind kind, double value, FactUnit unit, string said) =>
        Speak(UnitSystem.Us).Said(new Fact(kind) { Value = (decimal)value, Unit = unit }).Should().Be(said);

    [Fact]
    public void A_list_reads_like_one() => new[] { "a", "a and b", "a, b and c" }.Should().Equal(
        Speak(UnitSystem.Us).List(["a"]), Speak(UnitSystem.Us).List(["a", "b"]), Speak(UnitSystem.Us).List(["a", "b", "c"]));

    [Theory]
    [InlineData(UnitSystem.Metric, "37,2 °C", "10,4 kg")]
    [InlineData(UnitSystem.Us, "99.0 °F", "10.4 kg")]
    public void A_metric_farm_that_speaks_Spanish_has_a_decimal_comma(UnitSystem units, string temperature, string weight)
    {
        var speaker = Spanish(units);

        speaker.Temperature(99).Should().Be(temperature);
        speaker.Said(new Fact(FactKind.Weight) { Value = 10.4m, Unit = FactUnit.Kg }).Should().Be(weight);
    }

    [Theory]
    [InlineData("18:40", "18:40")]
    [InlineData("17 18:40", "ayer 18:40")]
    [InlineData("16 06:40", "16 abr 06:40")]
    public void A_time_is_told_in_Spanish(string at, string told) => Spanish(UnitSystem.Metric).Clock(At(at)).Should().Be(told);

    [Fact]
    public void Months_and_weekdays_have_the_farms_names()
    {
        // NodaTime's invariant names are the witness for English; for Spanish the names are common knowledge, no source.
        for (var day = new LocalDate(2027, 1, 18); day < new LocalDate(2028, 1, 18); day = day.PlusMonths(1))
        {
            Speak(UnitSystem.Us).Date(day).Should().Be(day.ToString("MMM d", CultureInfo.InvariantCulture));
            Speak(UnitSystem.Us).Weekday(day).Should().Be(day.ToString("dddd", CultureInfo.InvariantCulture));
        }
        Spanish(UnitSystem.Metric).Date(new LocalDate(2027, 1, 18)).Should().Be("18 ene");
        Spanish(UnitSystem.Metric).Weekday(new LocalDate(2027, 1, 18)).Should().Be("lunes");
    }

    [Theory]
    [InlineData("Sage's baby", "la cría de Sage")]
    [InlineData("Sage's baby 2", "la cría 2 de Sage")]
    [InlineData("Biscuit", "Biscuit")]
    public void A_newborn_without_a_name_is_called_by_its_dam(string name, string called)
    {
        Spanish(UnitSystem.Metric).Name(name).Should().Be(called);
        Speak(UnitSystem.Us).Name(name).Should().Be(name);
    }

    [Theory]
    [InlineData("Luna", "Pirca y Luna")]
    [InlineData("Inti", "Pirca e Inti")]
    [InlineData("Hilda", "Pirca e Hilda")]
    [InlineData("Ícaro", "Pirca e Ícaro")]
    [InlineData("Hierba", "Pirca y Hierba")]
    [InlineData("Iara", "Pirca y Iara")]
    public void And_is_e_before_the_sound_of_i(string last, string list) => Spanish(UnitSystem.Metric).List(["Pirca", last]).Should().Be(list);

    [Fact]
    public void Each_line_of_a_post_begins_with_a_capital_letter() =>
        Speaker.Lines("la cría de Luna: 37,9 °C.\n¿ya mamó?\n\n👍").Should().Be("La cría de Luna: 37,9 °C.\n¿ya mamó?\n\n👍");

    private static Speaker Spanish(UnitSystem units) => new(Speak(units).Farm with { Language = Language.Spanish }, At("20:00"));

    private static Instant At(string time) => Some.Farm().Clock.At(Some.Local(time));

    private static Speaker Speak(UnitSystem units) =>
        new(Some.Farm() with { Units = units, Dates = units == UnitSystem.Us ? DateOrder.MonthFirst : DateOrder.DayFirst }, At("20:00"));
}

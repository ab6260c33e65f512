using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Care;

/// <summary>
/// The rows of "Warmth", one reading each. Sources: International Llama Association, brochure 4 (babies up to 102.2 °F);
/// WVC clinic (98.2 to 101.5 °F at birth); D. Anderson, Ohio State (a core under 90 °F); Eales et al., Vet Record
/// 114:469, 1984 (lambs over 5 h: glucose before warming). The other edges are judgement, to be confirmed by a vet.
/// </summary>
public sealed class WarmthBandsTests
{
    private static readonly Instant Born = Instant.FromUtc(2027, 4, 18, 12, 40);

    /// <summary>°F, minutes of age, said to be up, fed; then level, band, minutes until it is read again, hold.</summary>
    public static TheoryData<double, int, bool, bool, Level, string, int, bool> Rows => new()
    {
        { 100.0, 30, false, false, Level.Fine, "normal", 0, false },
        { 102.2, 30, false, false, Level.Fine, "normal", 0, false },
        { 99.9, 30, false, false, Level.Fine, "watch", 30, false },
        { 99.0, 30, false, false, Level.Fine, "watch", 30, false },
        { 98.9, 30, true, false, Level.Heed, "soft", 15, false },
        { 98.2, 60, true, false, Level.Heed, "soft", 15, false },
        { 98.9, 61, true, false, Level.Act, "cold", 15, true },
        { 98.9, 30, false, false, Level.Act, "cold", 15, true },
        { 98.1, 30, true, false, Level.Act, "cold", 15, true },
        { 95.0, 30, true, false, Level.Act, "cold", 15, true },
        { 94.9, 30, true, false, Level.Vet, "emergency", 15, true },
        { 90.0, 30, true, false, Level.Vet, "emergency", 15, true },
        { 89.9, 30, true, false, Level.Vet, "critical", 15, true },
        { 98.9, 300, true, false, Level.Act, "cold", 15, true },
        { 98.9, 301, true, false, Level.Vet, "unfed", 15, true },
        { 94.9, 301, true, false, Level.Vet, "unfed", 15, true },
        { 89.9, 301, true, false, Level.Vet, "critical", 15, true },
        { 98.9, 301, true, true, Level.Act, "cold", 15, true },
        { 99.0, 301, true, false, Level.Fine, "watch", 30, false },
        { 102.3, 30, false, false, Level.Heed, "warm", 30, false },
        { 102.9, 30, false, false, Level.Heed, "warm", 30, false },
        { 103.0, 30, false, false, Level.Vet, "hot", 15, false },
    };

    [Theory]
    [MemberData(nameof(Rows))]
    public void A_reading_is_judged_by_its_row(double fahrenheit, int minutes, bool up, bool fed, Level level, string band, int again, bool holds)
    {
        var at = Born + Duration.FromMinutes(minutes);

        var reading = Warmth.At(Some.Llama, [(Some.Temperature(fahrenheit), at)], Born, up ? at : null, fed ? at : null, at).Last!;

        reading.Should().Be(new WarmthReading(at, (decimal)fahrenheit, level, band, again == 0 ? null : Duration.FromMinutes(again), holds));
    }

    [Theory]
    [InlineData(37.2, 99.0, "watch")] // 98.96, rounded before it is judged
    [InlineData(37.1, 98.8, "cold")]
    [InlineData(35.0, 95.0, "cold")]
    [InlineData(34.9, 94.8, "emergency")]
    [InlineData(39.0, 102.2, "normal")]
    [InlineData(39.1, 102.4, "warm")]
    [InlineData(39.4, 102.9, "warm")] // 102.92
    [InlineData(39.5, 103.1, "hot")]
    public void Celsius_is_turned_into_Fahrenheit_and_rounded_first(double celsius, double fahrenheit, string band)
    {
        var reading = Warmth.At(Some.Llama, [(Some.Temperature(celsius, unit: FactUnit.C), Born)], Born, null, null, Born).Last!;

        reading.Fahrenheit.Should().Be((decimal)fahrenheit);
        reading.Band.Should().Be(band);
    }

    [Fact]
    public void A_thermometer_that_will_not_register_is_critical()
    {
        var low = new Fact(FactKind.Temperature) { Animal = Some.Baby, Text = "Lo" };

        Warmth.At(Some.Llama, [(low, Born)], Born, null, null, Born).Last.Should().Be(
            new WarmthReading(Born, null, Level.Vet, "critical", Duration.FromMinutes(15), true));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_temperature_without_its_figure_judges_nothing(bool unsure)
    {
        var taken = new Fact(FactKind.Temperature) { Animal = Some.Baby, Unsure = unsure };

        Warmth.At(Some.Llama, [(taken, Born)], Born, null, null, Born).Readings.Should().BeEmpty();
    }

    [Theory]
    [InlineData(100.5, 0)]
    [InlineData(99.2, 0)]
    [InlineData(94.0, 1)]
    [InlineData(98.0, 1)]
    [InlineData(103.5, 1)]
    public void A_hedged_reading_may_raise_the_level_and_never_eases_it(double fahrenheit, int counted)
    {
        var hedged = Some.Temperature(fahrenheit) with { Unsure = true };

        Warmth.At(Some.Llama, [(hedged, Born)], Born, null, null, Born).Readings.Should().HaveCount(counted);
    }

    [Fact]
    public void Once_up_later_is_not_up_yet()
    {
        var at = Born + Duration.FromMinutes(20);

        Warmth.At(Some.Llama, [(Some.Temperature(98.5), at)], Born, at + Duration.FromMinutes(1), null, at).Last!.Band.Should().Be("cold");
    }
}

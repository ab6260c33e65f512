using System.Text;
using System.Text.Json;
using FluentAssertions;
using HerdBot.App.Records;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Reading;

public sealed class FactJsonTests
{
    private static readonly Fact Full = new(FactKind.Correction)
    {
        Animal = "Sage's baby 2",
        Value = 99.25m,
        Unit = FactUnit.F,
        At = FactTime.Of(new LocalDateTime(2027, 4, 18, 6, 25)),
        Neg = true,
        Unsure = true,
        Sex = Sex.Male,
        N = 2,
        Sire = "Flint",
        Route = FeedRoute.Tube,
        Task = "cord_dip",
        Field = "time",
        Was = "21:15",
        Name = "Biscuit",
        Traits = new AnimalTraits(HerdRole.Young, Species.Llama, "brown", "31", "Fern"),
        Text = "a few \"words\"",
        Target = new FactId(7),
    };

    [Fact]
    public void A_stored_fact_comes_back_whole() => Parse(Write(Full, stored: true)).Should().Be(Full);

    [Fact]
    public void The_written_form_leaves_the_target_out() => Parse(Write(Full, stored: false)).Should().Be(Full with { Target = null });

    [Fact]
    public void A_day_comes_back_as_a_day()
    {
        var fact = new Fact(FactKind.Breeding) { Animal = "Olive", At = new FactTime(new LocalDate(2027, 5, 14), null) };

        Parse(Write(fact, stored: true)).Should().Be(fact);
    }

    [Fact]
    public void Absent_things_are_left_out_and_the_animal_is_not() =>
        Write(new Fact(FactKind.Undo), stored: true).Should().Be("""{"kind":"undo","animal":null}""");

    [Theory]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("""{"kind":"guess"}""")]
    public void What_is_no_fact_is_none(string json) => Parse(json).Should().BeNull();

    private static string Write(Fact fact, bool stored)
    {
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer))
        {
            FactJson.Write(writer, fact, stored);
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    private static Fact? Parse(string json)
    {
        using var document = JsonDocument.Parse(json);
        return FactJson.Read(document.RootElement);
    }
}

using System.Text;
using System.Text.Json;
using FluentAssertions;
using HerdBot.App.Records;
using HerdBot.Core.Facts;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.App.Records;

public sealed class FactJsonTests
{
    [Fact]
    public void A_fact_is_written_in_the_words_of_the_corpus_and_without_what_was_not_said()
    {
        var fact = new Fact(FactKind.Weight) { Animal = "Sage's baby", Value = 10.4m, Unit = FactUnit.Kg, At = FactTime.Of(new LocalDateTime(2027, 4, 18, 6, 25)) };

        Write(fact).Should().Be("""{"kind":"weight","animal":"Sage's baby","value":10.4,"unit":"kg","at":"2027-04-18T06:25"}""");
        Write(new Fact(FactKind.QuestionTasks)).Should().Be("""{"kind":"question_tasks","animal":null}""");
    }

    [Theory]
    [InlineData("2027-04-18T06:25", "2027-04-18T06:25")]
    [InlineData("2027-04-18T06:25:30-06:00", "2027-04-18T06:25")]
    [InlineData("2027-04-18", "2027-04-18")]
    [InlineData("yesterday", null)]
    [InlineData("", null)]
    public void A_time_is_a_minute_or_a_day(string text, string? read) =>
        (FactJson.ParseTime(text) is { } at ? FactJson.Format(at) : null).Should().Be(read);

    [Theory]
    [InlineData("""{"kind":"no_such_kind"}""")]
    [InlineData("""{"animal":"Sage"}""")]
    [InlineData("[]")]
    [InlineData("7")]
    public void What_is_no_fact_is_none(string json) => FactJson.Read(JsonElement.Parse(json)).Should().BeNull();

    [Fact]
    public void Odd_values_are_passed_over() =>
        FactJson.Read(JsonElement.Parse("""{"kind":"weight","value":"heavy","unit":"stone","neg":"yes","sex":"x","n":1.5,"more":{}}""")).Should().Be(new Fact(FactKind.Weight));

    private static string Write(Fact fact)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            FactJson.Write(json, fact);
        }
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}

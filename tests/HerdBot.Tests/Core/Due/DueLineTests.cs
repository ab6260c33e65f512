using System.Text;
using System.Text.Json;
using FluentAssertions;
using HerdBot.Host.Commands;
using Xunit;

namespace HerdBot.Tests.Core.Due;

/// <summary>The verb "due": a line in, a line out.</summary>
public sealed class DueLineTests
{
    private const string Plain = """{"id":"a","species":"alpaca","matings":[{"on":"2026-05-03"}],"today":"2026-06-01"}""";

    [Fact]
    public void A_line_is_answered_with_windows_chances_and_reasons()
    {
        var answer = Answer("""{"id":"e","species":"llama","matings":[{"from":"2026-05-03","to":"2026-06-20"}],"past":[353,350],"herd_past":[[351,349],[344]],"checks":[{"on":"2026-06-01","result":"spit_off"},{"on":"2026-07-01","result":"pregnant"}],"hemisphere":"north","today":"2027-04-18"}""");

        answer.EnumerateObject().Select(entry => entry.Name).Should().Equal("id", "median", "window50", "window80", "window95", "next7", "overdue", "open", "look_from", "days", "why");
        answer.GetProperty("id").GetString().Should().Be("e");
        answer.GetProperty("why").EnumerateArray().Select(reason => reason.GetString()).Should().Equal(
            "llamas carry 348 days as a rule", "mated in spring: 5 days longer", "carried 353 and 350 before: a day longer",
            "in the pen 2026-05-03 to 2026-06-20: counted from about 2026-05-15", "rejected the male 2026-06-01", "pregnant by the check of 2026-07-01");
    }

    [Fact]
    public void Days_and_chances_belong_together()
    {
        var answer = Answer("""{"id":1,"species":"alpaca","matings":[{"on":"2026-05-03"}],"checks":[{"on":"2026-06-20","result":"pregnant"}],"today":"2027-04-14"}""");

        answer.GetProperty("days").GetInt32().Should().Be(346);
        answer.GetProperty("look_from").GetString().Should().Be("2027-03-25");
        answer.GetProperty("overdue").GetDouble().Should().BeApproximately(0.52, 0.03);
        answer.GetProperty("next7").GetDouble().Should().BeInRange(0.3, 0.5);
    }

    [Fact]
    public void A_year_without_a_cria_is_said_in_plain_words() =>
        Answer("""{"id":1,"species":"alpaca","matings":[{"on":"2026-03-01"}],"checks":[{"on":"2026-04-20","result":"pregnant"}],"today":"2027-03-01"}""")
            .GetProperty("why").EnumerateArray().Last().GetString().Should().Be("it is about an even chance that she carries nothing");

    [Theory]
    [InlineData("nonsense", "not whole JSON")]
    [InlineData("[]", "must be an object")]
    [InlineData("""{"id":"x"}""", "species")]
    [InlineData("""{"id":"x","species":"sheep","matings":[],"today":"2026-06-01"}""", "llama or alpaca")]
    [InlineData("""{"id":"x","species":"0","matings":[{"on":"2026-05-03"}],"today":"2026-06-01"}""", "llama or alpaca")]
    [InlineData("""{"id":"x","species":"llama","matings":[{"on":"2026-05-03"}]}""", "today")]
    [InlineData("""{"id":"x","species":"llama","matings":[{"on":"9999-12-31"}],"today":"2026-06-01"}""", "matings")]
    [InlineData("""{"id":"x","species":"llama","matings":[],"today":"2026-06-01"}""", "no mating")]
    [InlineData("""{"id":"x","species":"llama","matings":[{"on":"2026-02-30"}],"today":"2026-06-01"}""", "matings")]
    [InlineData("""{"id":"x","species":"llama","matings":["2026-02-20"],"today":"2026-06-01"}""", "matings")]
    [InlineData("""{"id":"x","species":"llama","matings":[{"from":"2026-05-03","to":"2026-04-03"}],"today":"2026-06-01"}""", "before it begins")]
    [InlineData("""{"id":"x","species":"llama","matings":[{"on":"2026-07-03"}],"today":"2026-06-01"}""", "No mating before today")]
    [InlineData("""{"id":"x","species":"llama","matings":[{"on":"2024-05-03"}],"today":"2026-06-01"}""", "could still carry")]
    [InlineData("""{"id":"x","species":"llama","matings":[{"on":"2026-05-03"}],"past":[35],"today":"2026-06-01"}""", "past")]
    [InlineData("""{"id":"x","species":"llama","matings":[{"on":"2026-05-03"}],"checks":[{"on":"2026-05-30","result":"maybe"}],"today":"2026-06-01"}""", "checks")]
    [InlineData("""{"id":"x","species":"llama","matings":[{"on":"2026-05-03"}],"hemisphere":"west","today":"2026-06-01"}""", "hemisphere")]
    public void A_bad_line_says_what_is_wrong_and_the_rest_goes_on(string line, string what)
    {
        var answers = Answers(line, Plain);

        answers[0].GetProperty("error").GetString().Should().Contain(what);
        answers[0].EnumerateObject().Select(entry => entry.Name).Should().Equal("id", "error");
        answers[1].GetProperty("median").GetString().Should().Be("2027-04-14");
    }

    private static JsonElement Answer(string line) => Answers(line).Single();

    private static List<JsonElement> Answers(params string[] lines)
    {
        using var output = new MemoryStream();
        DueCommand.Answer(lines, output);
        return [.. Encoding.UTF8.GetString(output.ToArray()).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonDocument.Parse(line).RootElement)];
    }
}

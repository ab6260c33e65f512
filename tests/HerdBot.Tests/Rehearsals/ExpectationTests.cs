using System.Text.Json;
using FluentAssertions;
using Xunit;

namespace HerdBot.Tests.Rehearsals;

/// <summary>The checker itself: what it lets through and what it does not.</summary>
public sealed class ExpectationTests
{
    private const string Post = """
        {"at":"2027-04-18T07:40:00-06:00","post":"reminder","to":"group","id":4,"text":"Is it up?\nLook now.","buttons":[],
         "tasks":[{"task":"standing","animal":"Sage's baby","due":"2027-04-18T07:10","state":"late","level":"act"},
                  {"task":"nursing","animal":"Sage's baby","due":"2027-04-18T07:40","state":"asked","level":"fine"}]}
        """;

    private const string Fact = """{"at":"2027-04-18T07:05:00-06:00","record":{"kind":"temperature","animal":"Sage's baby","value":98.4,"unit":"F","by":"Ben"}}""";

    [Theory]
    [InlineData("""{"post":"reminder"}""", true)]
    [InlineData("""{"post":["alarm","reminder"],"task":"standing","state":"late"}""", true)]
    [InlineData("""{"post":"alarm"}""", false)]
    [InlineData("""{"task":"nursing","state":"late"}""", false)] // not in one and the same task
    [InlineData("""{"task":["nursing","weight"],"state":["asked"]}""", true)]
    [InlineData("""{"animal":"sage’s BABY"}""", true)]
    [InlineData("""{"text":"up.*look"}""", true)] // letter case aside, over the end of a line
    [InlineData("""{"text":"down"}""", false)]
    [InlineData("""{"to":"Group"}""", true)]
    [InlineData("""{"between":["2027-04-18T07:40","2027-04-18T07:50"]}""", true)]
    [InlineData("""{"between":["2027-04-18T07:30","2027-04-18T07:40"]}""", true)]
    [InlineData("""{"between":["2027-04-18T07:41","2027-04-18T07:50"]}""", false)]
    [InlineData("""{"record":"temperature"}""", false)]
    public void A_post_is_matched_so(string want, bool matches) => Matches(want, Post).Should().Be(matches);

    [Theory]
    [InlineData("""{"record":"temperature","animal":"Sage's baby","value":98.4}""", true)]
    [InlineData("""{"record":["weight","temperature"]}""", true)]
    [InlineData("""{"record":"temperature","value":98.5}""", false)]
    [InlineData("""{"record":"temperature","animal":"Fern's baby"}""", false)]
    [InlineData("""{"record":"weight"}""", false)]
    [InlineData("""{"post":"reminder"}""", false)]
    public void A_record_is_matched_so(string want, bool matches) => Matches(want, Fact).Should().Be(matches);

    [Theory]
    [InlineData("""{"some":{"post":"reminder"}}""", true)]
    [InlineData("""{"some":{"post":"alarm"}}""", false)]
    [InlineData("""{"none":{"post":"reminder"}}""", false)]
    [InlineData("""{"none":{"post":"alarm"}}""", true)]
    [InlineData("""{"count":{"post":"reminder"},"min":2}""", false)]
    [InlineData("""{"count":{"post":"reminder"},"min":1,"max":1}""", true)]
    [InlineData("""{"count":{"post":"reminder"},"max":0}""", false)]
    public void What_does_not_hold_is_told(string line, bool holds) =>
        (new Expectation(line).Broken([JsonElement.Parse(Post), JsonElement.Parse(Fact)]) is null).Should().Be(holds);

    private static bool Matches(string want, string row) => new Expectation($$"""{"some":{{want}}}""").Matches(JsonElement.Parse(row));
}

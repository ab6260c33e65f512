using FluentAssertions;
using HerdBot.App.Records;
using HerdBot.Core.Reading;
using Xunit;

namespace HerdBot.Tests.Core.Reading;

public sealed class CorpusScoreTests
{
    private static IEnumerable<string> Lines(string file) => File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Samples", "reading", file));

    [Theory]
    [InlineData("open.jsonl", 98.0, 0)]
    [InlineData("own.jsonl", 98.0, 0)]
    [InlineData("rehearsed.jsonl", 100.0, 0)]
    [InlineData("strangers.jsonl", 98.0, 0)]
    public void Labelled_messages_are_read_as_labelled(string file, double atLeastPercent, int atMostFalse)
    {
        var score = CorpusScore.Of(Lines(file));

        score.Percent.Should().BeGreaterThanOrEqualTo(atLeastPercent, string.Join("; ", score.Wrong));
        score.FalseRecords.Should().BeLessThanOrEqualTo(atMostFalse);
    }

    // What people wrote who had not seen the reader and is still misread: nothing false in it, a name, a turn of speech or a sum too many.
    private static readonly string[] Misread = ["b035", "b038", "b050", "b062", "b071", "b082", "c079", "d101", "a097"];

    [Fact]
    public void What_strangers_wrote_and_is_still_misread_is_known_by_name()
    {
        var score = CorpusScore.Of(Lines("strangers.jsonl"));

        score.Wrong.Select(wrong => wrong[..4]).Should().BeSubsetOf(Misread, string.Join("; ", score.Wrong));
    }

    [Fact]
    public void Spanish_messages_are_read_as_labelled()
    {
        var score = CorpusScore.Of(Lines("open.jsonl").Concat(Lines("own.jsonl")).Concat(Lines("strangers.jsonl")));

        score.Spanish.Should().BeGreaterThan(50);
        score.SpanishExact.Should().BeGreaterThanOrEqualTo(score.Spanish * 95 / 100);
    }

    [Fact]
    public void The_scorer_counts_a_reader_that_invents_a_weight()
    {
        var line = Lines("open.jsonl").First(one => one.Contains("\"o002\"", StringComparison.Ordinal)).Replace("98.6\", \"given", "98.6, 24 lb\", \"given", StringComparison.Ordinal);

        var score = CorpusScore.Of([line]);

        score.Exact.Should().Be(0);
        score.FalseRecords.Should().Be(1);
    }

    [Fact]
    public void The_same_message_is_read_the_same_way_twice()
    {
        foreach (var line in Lines("own.jsonl"))
        {
            var message = CorpusLine.Parse(line, out _, out _)!;

            Reader.Read(message.Text, message.Context).Facts.Should().Equal(Reader.Read(message.Text, message.Context).Facts);
        }
    }
}

using CsCheck;
using FluentAssertions;
using HerdBot.App.Records;
using HerdBot.Core.Reading;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Reading;

public sealed class TotalityTests
{
    private static readonly string[] Lines = [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Samples", "reading", "open.jsonl"))];
    private static readonly CorpusLine[] Messages = [.. Lines.Select(line => CorpusLine.Parse(line, out _, out _)!)];

    private static readonly string[] Scraps = [
        "'s", "\"", "💩", "½", "1/2", "24-6", ":", "99.", ".4", "\u200D", "\uD83D", "#14", "del 3 al", "Two Stones", "not", "½½", "999999999999999999", "0/0/0", "12:99",
        "-", "\n", "¿", "ñ", "both", "her baby", "at", "half", "and", "February 30", "y media", "hace", "%", "\0", "ago", "'", "’", "0", "a.m"];

    private static readonly Gen<string> Scrap = Gen.OneOf(Array.ConvertAll(Scraps, one => Gen.Const(one)));


    [Fact]
    public void No_mutated_message_throws() =>
        Gen.Select(Gen.Int[0, Messages.Length - 1], Gen.Int[0, Messages.Length - 1], Gen.Select(Gen.Int[0, 200], Gen.Int[0, 20], Scrap).Array[0, 6])
            .Each(
                (a, b, edits) =>
                {
                    var text = edits.Aggregate(Messages[a].Text, (one, edit) => Edit(one, edit.Item1, edit.Item2, edit.Item3));
                    Reader.Read(text, Messages[b].Context);
                },
                times: 4_000);

    // The same messages as those of the benchmarks' million, by another seed.
    [Fact]
    public void No_garbled_message_throws()
    {
        var garble = new Garble(Messages, 11);
        for (var n = 0; n < 14_000; n++)
        {
            var (text, around) = garble.Next();
            Read(text, around.Context);
        }
    }

    [Fact]
    public void No_random_text_throws() =>
        Gen.String[0, 300].Each(text => { Reader.Read(text, Messages[0].Context); }, times: 2_000);

    [Theory]
    [InlineData("a")]
    [InlineData("1")]
    [InlineData("1 ")]
    [InlineData("½")]
    [InlineData("' ")]
    [InlineData("Sage's baby ")]
    [InlineData("not ")]
    [InlineData("twenty ")]
    [InlineData("1/2/")]
    [InlineData("at 5 and ")]
    [InlineData("and, ")]
    [InlineData("qwrtz ")]
    [InlineData("temp 99 no 98 ")]
    [InlineData("had a girl ")]
    [InlineData("del 3 al ")]
    public void Long_odd_texts_are_read_to_the_end_of_what_is_read(string piece)
    {
        var text = string.Concat(Enumerable.Repeat(piece, 8192 / piece.Length));

        var reading = () => Reader.Read(text, Messages[1].Context);

        reading.Should().NotThrow();
    }

    [Theory]
    [InlineData("", "The line is no JSON object.")]
    [InlineData("[1", "The line is no JSON object.")]
    [InlineData("[]", "The line has no text.")]
    [InlineData("{\"id\":\"x\",\"text\":\"hi\"}", "given.now is no instant with an offset.")]
    [InlineData("{\"id\":\"x\",\"text\":\"hi\",\"given\":{\"now\":\"yesterday\"}}", "given.now is no instant with an offset.")]
    public void A_line_that_is_no_message_says_what_is_wrong(string line, string error)
    {
        var message = CorpusLine.Parse(line, out _, out var told);

        message.Should().BeNull();
        told.Should().Be(error);
    }

    private static void Read(string text, ReadingContext context)
    {
        try
        {
            Reader.Read(text, context);
        }
        catch (Exception fault)
        {
            throw new InvalidOperationException($"'{text}' cannot be read.", fault);
        }
    }

    private static string Edit(string text, int at, int cut, string scrap)
    {
        var start = Math.Min(at, text.Length);
        return text[..start] + scrap + text[Math.Min(start + cut, text.Length)..];
    }
}

using FluentAssertions;
using HerdBot.Host.Terminal;
using Spectre.Console;
using Xunit;

namespace HerdBot.Tests.Host.Terminal;

public sealed class PaperTests
{
    [Theory]
    [InlineData("[red]Bo[/] says [[so]] {0} :cat: \\e[31m")]
    [InlineData("[/]")]
    [InlineData("https://example.test/a?b=[c]")]
    public void Words_are_never_taken_for_markup(string words)
    {
        var paper = TestPaper.Plain();

        paper.Paper.Write([new Ink(words + " ", Style.Plain)], words, Style.Plain);

        paper.Lines.Should().Equal($"{words} {words}");
    }

    [Fact]
    public void Words_do_not_steer_the_terminal()
    {
        var paper = TestPaper.Plain();

        paper.Paper.Write([], "a\u001b[2Jb\rc\u0007d\te", Style.Plain);

        paper.Lines.Should().Equal("a [2Jb c d e");
    }

    [Fact]
    public void In_a_file_a_line_stays_one_line_without_colour()
    {
        var paper = TestPaper.Plain();
        var line = string.Join(' ', Enumerable.Repeat("long", 100));

        paper.Paper.Write([new Ink("Ines  ", new Style(Color.Red))], line, new Style(decoration: Decoration.Bold));

        paper.Lines.Should().Equal($"Ines  {line}");
    }

    [Fact]
    public void On_a_terminal_lines_are_folded_between_words_and_indented()
    {
        var paper = TestPaper.Terminal(width: 40);

        paper.Paper.Write([new Ink("Ines  ", Style.Plain)], "one two three four five six seven eight nine\nten", Style.Plain);

        paper.Lines.Should().Equal(
            "Ines  one two three four five six seven",
            "      eight nine",
            "      ten");
    }

    [Fact]
    public void A_word_wider_than_the_terminal_is_cut()
    {
        var paper = TestPaper.Terminal(width: 31);

        paper.Paper.Write([], new string('x', 70), Style.Plain);

        paper.Lines.Should().Equal(new string('x', 30), new string('x', 30), new string('x', 10));
    }

    [Fact]
    public void What_is_being_typed_stays_below_what_is_written_meanwhile()
    {
        var paper = TestPaper.Terminal(width: 40);

        paper.Paper.Type(new Ink("Ines › te", Style.Plain));
        paper.Paper.Write([], "a post", Style.Plain);

        paper.Text.Should().Be("Ines › te\r\u001b[2Ka post\nInes › te");
    }
}

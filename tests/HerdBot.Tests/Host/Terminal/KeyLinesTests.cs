using System.Threading.Channels;
using FluentAssertions;
using HerdBot.Host.Terminal;
using Xunit;

namespace HerdBot.Tests.Host.Terminal;

public sealed class KeyLinesTests
{
    private readonly Channel<ConsoleKeyInfo> _keys = Channel.CreateUnbounded<ConsoleKeyInfo>();
    private readonly TestPaper _paper = TestPaper.Terminal(width: 20);
    private readonly KeyLines _lines;

    public KeyLinesTests() => _lines = new KeyLines(_paper.Paper, TryFarm.Setup.Farm, _keys.Reader);

    [Fact]
    public async Task Letters_make_a_line()
    {
        Press("temp [100].4 ü");
        Press(ConsoleKey.Enter);

        (await NextAsync()).Should().Be("temp [100].4 ü");
    }

    [Fact]
    public async Task The_last_letter_can_be_taken_back_a_pair_of_halves_at_once()
    {
        Press("up🦙x");
        Press(ConsoleKey.Backspace, ConsoleKey.Backspace, ConsoleKey.Enter);

        (await NextAsync()).Should().Be("up");
    }

    [Fact]
    public async Task Escape_clears_the_line()
    {
        Press("nonsense");
        Press(ConsoleKey.Escape);
        Press("up");
        Press(ConsoleKey.Enter);

        (await NextAsync()).Should().Be("up");
    }

    [Fact]
    public async Task The_arrow_brings_earlier_lines_back()
    {
        Press("one");
        Press(ConsoleKey.Enter);
        Press("two");
        Press(ConsoleKey.Enter, ConsoleKey.UpArrow, ConsoleKey.UpArrow, ConsoleKey.UpArrow, ConsoleKey.DownArrow, ConsoleKey.Enter);
        await NextAsync();
        await NextAsync();

        (await NextAsync()).Should().Be("two");
    }

    [Fact]
    public async Task Control_D_on_an_empty_line_is_the_end()
    {
        _keys.Writer.TryWrite(new ConsoleKeyInfo('\u0004', ConsoleKey.D, shift: false, alt: false, control: true));

        (await NextAsync()).Should().BeNull();
    }

    [Fact]
    public async Task A_line_longer_than_the_terminal_shows_its_end()
    {
        Press("0123456789abcdefghij");
        Press(ConsoleKey.Enter);

        await NextAsync();

        _paper.Text.Should().Contain("89abcdefghij").And.NotContain("789abcdefghij", "the line must not run over the edge");
    }

    [Fact]
    public async Task A_stop_ends_the_waiting()
    {
        using var stop = new CancellationTokenSource();
        var next = _lines.NextAsync("Ines", stop.Token);

        await stop.CancelAsync();

        await FluentActions.Awaiting(() => next).Should().ThrowAsync<OperationCanceledException>();
    }

    private Task<string?> NextAsync() => _lines.NextAsync("Ines", CancellationToken.None);

    private void Press(string letters)
    {
        foreach (var letter in letters)
        {
            _keys.Writer.TryWrite(new ConsoleKeyInfo(letter, ConsoleKey.None, shift: false, alt: false, control: false));
        }
    }

    private void Press(params ConsoleKey[] keys)
    {
        foreach (var key in keys)
        {
            _keys.Writer.TryWrite(new ConsoleKeyInfo('\0', key, shift: false, alt: false, control: false));
        }
    }
}

using FluentAssertions;
using HerdBot.Host.LiteDb;
using HerdBot.Host.Terminal;
using HerdBot.Tests.Support.StoreContract;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Host.Terminal;

/// <summary>Whole sessions: real reader, real data file, real Quartz, a wall clock that the test moves.</summary>
public sealed class TryRunTests : IDisposable
{
    private static readonly Instant Start = Instant.FromUtc(2027, 5, 9, 14, 0);
    private readonly StoreFolder _folder = new();
    private readonly FakeTimeProvider _wall = new(Start.ToDateTimeOffset());
    private readonly TestPaper _paper = TestPaper.Plain();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task What_is_said_is_answered_before_the_end()
    {
        (await RunAsync("Wade: Juniper had a girl 7:50, 24 lb")).Should().BeTrue();

        _paper.Lines.Should().Contain(" 8:00     Wade     Juniper had a girl 7:50, 24 lb")
            .And.Contain(line => line.Contains("HerdBot", StringComparison.Ordinal) && line.Contains("girl, born 7:50, 24 lb", StringComparison.Ordinal))
            .And.Contain(line => line.TrimStart().StartsWith("1 ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_owner_speaks_first_and_a_name_holds_until_the_next()
    {
        await RunAsync("one", "Wade: two", "three", "Lupe:", "four");

        Said().Should().Equal("Ines one", "Wade two", "Wade three", "Lupe four");
    }

    [Fact]
    public async Task A_tap_presses_the_newest_buttons()
    {
        await RunAsync("Juniper had a girl 7:50, 24 lb", "/tap 2 as Lupe", "/tap 9", "/tap", "two");

        _paper.Text.Should().Contain("Lupe     [On it]").And.Contain("Lupe is on it, 8:00.")
            .And.Contain("(There is no button 9. There are: 1 ")
            .And.Contain("(Write /tap and the number of a button, like /tap 1.)");
        Said().Should().EndWith("Ines two", "whoever taps for somebody does not become them");
    }

    [Fact]
    public async Task Without_buttons_a_tap_says_so()
    {
        await RunAsync("/tap 1");

        _paper.Text.Should().Contain("(No post shows buttons now.)");
    }

    [Fact]
    public async Task Nothing_is_read_after_quit()
    {
        await RunAsync("one", "/quit", "two");

        Said().Should().Equal("Ines one");
    }

    [Fact]
    public async Task The_farms_clock_runs_fast_and_what_falls_due_is_posted()
    {
        await RunAsync(60, new Steps("Juniper had a girl 7:50, 24 lb", () => _wall.Advance(TimeSpan.FromSeconds(25)), "/time", "Wade: hello"));

        _paper.Text.Should().Contain("(On the farm it is Sunday, May 9, 8:25.)").And.Contain("8:25     Wade     hello");
        _paper.Lines.Should().Contain(line => line.StartsWith(" 8:25     HerdBot", StringComparison.Ordinal), "the temperature was due at 8:05");
    }

    [Fact]
    public async Task The_same_data_go_on_next_time_and_the_clock_never_goes_back()
    {
        await RunAsync(60, new Steps("Juniper had a girl 7:50, 24 lb", () => _wall.Advance(TimeSpan.FromMinutes(2)), "Wade: her temp is 100.2"));
        var again = TestPaper.Plain();

        await TryRun.RunAsync(From(1), _wall, new ChatScreen(again.Paper, TryFarm.Setup.Farm), new Steps("how is Juniper's baby?"), CancellationToken.None);

        again.Text.Should().Contain("10:00     Wade     her temp is 100.2", "the end of the earlier chat is shown")
            .And.Contain("10:00     Ines     how is Juniper's baby?", "the wall's clock says 8:02")
            .And.Contain("100.2 °F");
    }

    [Fact]
    public async Task The_same_words_in_two_sessions_at_one_instant_are_two_messages()
    {
        await RunAsync("hello");
        await RunAsync("hello");

        Said().Should().Equal(["Ines hello", "Ines hello", "Ines hello"], "the second session shows the first one's line, and takes its own");
    }

    [Fact]
    public async Task Told_to_stop_it_ends_in_good_order()
    {
        using var stop = new CancellationTokenSource();
        var run = TryRun.RunAsync(From(1), _wall, new ChatScreen(_paper.Paper, TryFarm.Setup.Farm), new Steps("one", (Action)stop.Cancel, Steps.Silence), stop.Token);

        (await run).Should().BeTrue();
        await using var opened = LiteDbHerdStore.Open(_folder.DataFile);
        (await opened.ReadWaitingAsync()).Should().BeEmpty();
    }

    [Fact]
    public async Task Names_and_words_made_of_markup_are_shown_as_they_are()
    {
        await RunAsync("[red]Bo[/]: [link=x]Juniper[/] is [[up]]");

        Said().Should().Equal("[red]Bo[/] [link=x]Juniper[/] is [[up]]");
    }

    [Fact]
    public async Task However_many_lines_are_answered_at_once()
    {
        await RunAsync([.. Enumerable.Range(1, 25).Select(_ => "what is open?")]);

        _paper.Lines.Count(line => line.EndsWith("Nothing is open.", StringComparison.Ordinal)).Should().Be(25);
    }

    private IEnumerable<string> Said() => _paper.Lines.Where(line => line.Length > 19 && line[..10].Trim().Length > 0 && char.IsDigit(line.Trim()[0]) && !line.Contains("HerdBot", StringComparison.Ordinal))
        .Select(line => System.Text.RegularExpressions.Regex.Replace(line[10..], " {2,}", " "));

    private TryStart From(int speed) => new(TryFarm.Setup, _folder.DataFile, speed, Instant.FromDateTimeOffset(_wall.GetUtcNow()), "Welcome");

    private Task<bool> RunAsync(params object[] lines) => RunAsync(1, new Steps(lines));

    private Task<bool> RunAsync(int speed, ITypedLines lines) =>
        TryRun.RunAsync(From(speed), _wall, new ChatScreen(_paper.Paper, TryFarm.Setup.Farm), lines, CancellationToken.None);

    /// <summary>Lines, with things to do between them.</summary>
    private sealed class Steps(params object[] steps) : ITypedLines
    {
        private int _next;

        public static object Silence { get; } = new();

        public async Task<string?> NextAsync(string speaker, CancellationToken cancellation)
        {
            while (_next < steps.Length)
            {
                switch (steps[_next++])
                {
                    case string line:
                        return line;
                    case Action act:
                        act();
                        break;
                    default:
                        await Task.Delay(Timeout.InfiniteTimeSpan, new FakeTimeProvider(), cancellation);
                        break;
                }
            }
            return null;
        }
    }
}

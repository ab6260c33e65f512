using FluentAssertions;
using HerdBot.Demo;
using HerdBot.Host.Rehearsal;
using HerdBot.Host.Terminal;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Demo;

public sealed class DemoScriptTests
{
    private static readonly Instant Evening = Instant.FromUtc(2027, 5, 10, 4, 50);

    [Fact]
    public void A_transcript_is_a_day_and_lines_in_the_order_of_the_clock()
    {
        var script = Read("""
            # For the reader.
            2027-05-09
            22:50 Wade: Juniper: up and down
            0:10  Ines: [tap 3 labour, Juniper's baby]
            6:00  [restart]
            6:30  [end]
            """);

        script.Start.Should().Be(Evening - Duration.FromMinutes(1));
        script.Steps.Should().Equal(
            new ScriptStep.Say(Evening, "Wade", "Juniper: up and down", null),
            new ScriptStep.Tap(Evening + Duration.FromMinutes(80), "Ines", 3, new ScriptTask("labour", "Juniper's baby")),
            new ScriptStep.Restart(Evening + Duration.FromMinutes(430)));
        script.Until.Should().Be(Evening + Duration.FromMinutes(460));
    }

    [Theory]
    [InlineData("22:50 nobody says this")]
    [InlineData("22:50 [dance]")]
    public void A_line_that_nobody_says_is_refused(string line)
    {
        FluentActions.Invoking(() => Read($"2027-05-09\n{line}\n23:00 [end]")).Should().Throw<FormatException>();
    }

    private static RehearsalScript Read(string text) => DemoScript.Read(text, TryFarm.Setup);
}

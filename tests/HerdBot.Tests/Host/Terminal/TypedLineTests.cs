using FluentAssertions;
using HerdBot.Host.Terminal;
using Xunit;

namespace HerdBot.Tests.Host.Terminal;

public sealed class TypedLineTests
{
    private static readonly string[] People = ["Ines", "Wade"];
    private static readonly string[] Animals = ["Juniper", "Juniper's baby"];

    [Theory]
    [InlineData("temp 100.4", "Ines", "temp 100.4")]
    [InlineData("Wade: temp 100.4", "Wade", "temp 100.4")]
    [InlineData("wade:temp 100.4", "Wade", "temp 100.4")]
    [InlineData("  WADE :  temp 100.4  ", "Wade", "temp 100.4")]
    [InlineData("Zoë van Dam: temp 100.4", "Zoë van Dam", "temp 100.4")]
    [InlineData("[red]Bo[/]: hello", "[red]Bo[/]", "hello")]
    [InlineData("Juniper: labour since 4", "Ines", "Juniper: labour since 4")] // the animal does not speak
    [InlineData("juniper's baby: up", "Ines", "juniper's baby: up")]
    [InlineData("temp: 100.4", "Ines", "temp: 100.4")] // a new name starts with a capital letter
    [InlineData("up at 6:40, nursed 7:10", "Ines", "up at 6:40, nursed 7:10")]
    [InlineData("Up at 6:40", "Ines", "Up at 6:40")]
    [InlineData("Born 6: a girl", "Ines", "Born 6: a girl")] // no name has a figure in it
    [InlineData("6:40 up", "Ines", "6:40 up")]
    [InlineData(": hello", "Ines", ": hello")]
    [InlineData("Wade: Juniper: up", "Wade", "Juniper: up")]
    [InlineData("/open", "Ines", "/open")] // the bot's own
    [InlineData("/help me", "Ines", "/help me")]
    public void What_is_said_has_somebody_who_says_it(string line, string by, string text)
    {
        Read(line).Should().Be(new TypedLine.Said(by, text));
    }

    [Theory]
    [InlineData("/tap 2", "Ines", "Ines", 2)]
    [InlineData("/TAP  2", "Ines", "Ines", 2)]
    [InlineData("/tap 1 as Wade", "Ines", "Wade", 1)]
    [InlineData("/tap 1 AS wade", "Ines", "Wade", 1)]
    [InlineData("/tap 1 as Zoë van Dam", "Ines", "Zoë van Dam", 1)]
    [InlineData("Wade: /tap 3", "Wade", "Wade", 3)]
    public void A_tap_has_a_number_and_somebody_who_presses(string line, string by, string presser, int number)
    {
        Read(line).Should().Be(new TypedLine.Tapped(by, presser, number));
    }

    [Theory]
    [InlineData("/tap")]
    [InlineData("/tap one")]
    [InlineData("/tap -1")]
    [InlineData("/tap 99999999999")]
    [InlineData("/tap 1 as")]
    [InlineData("/tap 1 Wade")]
    public void A_tap_that_does_not_say_which_is_unclear(string line)
    {
        Read(line).Should().Be(new TypedLine.Unclear("Ines"));
    }

    [Fact]
    public void Commands_of_the_terminal_are_not_passed_on()
    {
        Read("/time").Should().Be(new TypedLine.Time("Ines"));
        Read("/Help ").Should().Be(new TypedLine.Help("Ines"));
        Read("/quit").Should().Be(new TypedLine.Quit("Ines"));
    }

    [Fact]
    public void A_name_alone_hands_the_word_over()
    {
        Read("wade:").Should().Be(new TypedLine.Named("Wade"));
        Read("Zoë:").Should().Be(new TypedLine.Named("Zoë"));
        Read("   ").Should().Be(new TypedLine.Nothing("Ines"));
    }

    private static TypedLine Read(string line) => TypedLine.Read(line, "Ines", People, Animals);
}

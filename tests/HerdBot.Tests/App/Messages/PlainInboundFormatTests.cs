using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using Xunit;

namespace HerdBot.Tests.App.Messages;

public sealed class PlainInboundFormatTests
{
    public static TheoryData<Inbound> Ways =>
    [
        Desk.Line("k1", "línea \"eins\"\n🦙", "post 3"),
        new Inbound.Edit("k2", Desk.Group, Desk.Ana, Desk.Dawn, "m1", "new words"),
        new Inbound.Tap("k3", Desk.Group, Desk.Ana, Desk.Dawn, "1|0|3|1"),
    ];

    [Theory]
    [MemberData(nameof(Ways))]
    public void What_was_written_is_read_back(Inbound way) => new PlainInboundFormat().Read(PlainInboundFormat.Write(way)).Should().Be(way);

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("""{"type":"line","group":null,"from":null,"message":null,"text":null}""")]
    [InlineData("""{"type":"dance","group":"g","from":"Ana","message":"m","text":"t"}""")]
    public void What_cannot_be_read_says_so_and_is_nothing_else(string raw)
    {
        var reading = () => new PlainInboundFormat().Read(new InboxEntry("k", Desk.Dawn, raw));

        reading.Should().Throw<FormatException>();
    }
}

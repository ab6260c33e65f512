using FluentAssertions;
using HerdBot.App.Access;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.App.Access;

public sealed class AccessEventFormatTests
{
    public static TheoryData<AccessEvent, string, string> Cases => new()
    {
        {
            new AccessEvent.OwnerKnown(new Person("tg:4711", "Ana 'M.'"), new GroupId("tg:4711"), Instant.FromUnixTimeMilliseconds(1777696200123)),
            "owner_known", """{"person":"tg:4711","name":"Ana \u0027M.\u0027","chat":"tg:4711","at":1777696200123}"""
        },
        { new AccessEvent.GroupWaiting(new GroupId("tg:-5"), "Willow Bend", "Tom"), "group_waiting", """{"group":"tg:-5","title":"Willow Bend","by":"Tom"}""" },
        { new AccessEvent.GroupApproved(new GroupId("tg:-5"), ""), "group_approved", """{"group":"tg:-5","title":""}""" },
        { new AccessEvent.GroupRefused(new GroupId("tg:-5")), "group_refused", """{"group":"tg:-5"}""" },
        { new AccessEvent.GroupMoved(new GroupId("tg:-5"), new GroupId("tg:-6")), "group_moved", """{"from":"tg:-5","to":"tg:-6"}""" },
        { new AccessEvent.OutsiderTold(new GroupId("tg:7")), "outsider_told", """{"group":"tg:7"}""" },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void An_event_is_written_so_and_read_back_the_same(AccessEvent accessEvent, string type, string data)
    {
        var record = AccessEventFormat.Write(accessEvent);

        record.Should().Be(new EventRecord(type, 1, data));
        AccessEventFormat.Read(record).Should().Be(accessEvent);
    }

    [Fact]
    public void Every_kind_of_event_has_a_case_here() =>
        Cases.Select(row => row.Data.Item1.GetType()).Should().BeEquivalentTo(
            typeof(AccessEvent).GetNestedTypes().Where(type => type.IsSubclassOf(typeof(AccessEvent))));

    [Theory]
    [InlineData("group_refused", 2, """{"group":"tg:-5"}""")]
    [InlineData("group_refused", 1, "{}")]
    [InlineData("group_refused", 1, """{"group":null}""")]
    [InlineData("group_refused", 1, "null")]
    [InlineData("group_refused", 1, "nonsense")]
    public void An_event_of_another_shape_is_not_guessed_at(string type, int version, string data)
    {
        var reading = () => AccessEventFormat.Read(new EventRecord(type, version, data));

        reading.Should().Throw<FormatException>();
    }

    [Fact]
    public void Events_of_others_in_the_same_history_are_passed_over() =>
        AccessEventFormat.Read(new EventRecord("post_sent", 9, "{}")).Should().BeNull();
}

using FluentAssertions;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Support.FakeBotApi;
using Telegram.Bot.Exceptions;
using Telegram.Bot.Types;
using Xunit;

namespace HerdBot.Tests.Host.Telegram;

public sealed class TelegramReceiverTroubleTests
{
    public static TheoryData<string> Troubles => ["html 200", "html 502", "json 500", "half", "dropped", "no result"];

    [Theory]
    [MemberData(nameof(Troubles))]
    public async Task Whatever_the_line_does_twenty_times_over_the_receiver_goes_on(string trouble)
    {
        var time = new HastyTime();
        await using var rig = await TelegramRig.StartAsync(time);
        rig.Fake.Break("getUpdates", FaultOf(trouble), times: 20);
        rig.Fake.Say(rig.Fake.Group(), TelegramRig.Ana, "Juniper is up");

        await rig.ReceiveAsync(untilPolled: false);
        await rig.TakenAsync(1);
        await rig.Fake.WaitForAsync(fake => fake.Polled && fake.Unconfirmed == 0);

        time.Pauses.Select(pause => pause.TotalSeconds).Should()
            .StartWith([1, 2, 4, 8, 16, 32, 60, 60, 60, 60]).And.HaveCount(20, because: "every failure is followed by one pause");
        rig.Presence.Failures.Should().Be(0);
    }

    [Fact]
    public async Task Nobody_at_the_other_end_is_waited_for_and_not_hammered()
    {
        var time = new HastyTime();
        await using var rig = await TelegramRig.StartAsync(time);
        rig.Fake.Break(null, new Fault.Dropped(), times: 7);
        rig.Fake.Say(rig.Fake.Group(), TelegramRig.Ana, "Juniper is up");

        await rig.ReceiveAsync(untilPolled: false);
        await rig.TakenAsync(1);

        time.Pauses.Select(pause => pause.TotalSeconds).Should().Equal(1, 2, 4, 8, 16, 32, 60);
    }

    [Theory]
    [InlineData(401, "Unauthorized", "does not know this token")]
    [InlineData(404, "Not Found", "does not know this token")]
    [InlineData(409, "Conflict: terminated by other getUpdates request", "Another program receives")]
    public async Task What_a_person_must_mend_is_said_and_tried_again_once_a_minute(int code, string words, string advice)
    {
        var time = new HastyTime();
        await using var rig = await TelegramRig.StartAsync(time);
        rig.Fake.Break("getUpdates", new Fault.Error(code, words), times: 3);
        rig.Fake.Say(rig.Fake.Group(), TelegramRig.Ana, "Juniper is up");

        await rig.ReceiveAsync(untilPolled: false);
        await rig.TakenAsync(1);

        time.Pauses.Select(pause => pause.TotalSeconds).Should().Equal(60, 60, 60);
        rig.Log.Warnings.Should().HaveCount(3).And.OnlyContain(line => line.Contains(advice));
    }

    [Fact]
    public async Task A_second_poller_is_met_with_a_slow_retry()
    {
        var time = new HastyTime();
        await using var rig = await TelegramRig.StartAsync(time, receive: true);

        using var other = new FakeProbe(rig.Fake);
        var stolen = other.CallAsync("getUpdates", """{"timeout":50}""");
        await rig.Fake.WaitForAsync(_ => rig.Presence.Failures > 0 || time.Pauses.Count > 0);
        await stolen;

        time.Pauses[0].Should().Be(TimeSpan.FromMinutes(1));
        rig.Log.Warnings.First().Should().Contain("Another program receives");
    }

    [Fact]
    public async Task A_pause_that_Telegram_asks_for_is_kept()
    {
        var time = new HastyTime();
        await using var rig = await TelegramRig.StartAsync(time);
        rig.Fake.Break("getUpdates", new Fault.Error(429, "", RetryAfter: 37));
        rig.Fake.Say(rig.Fake.Group(), TelegramRig.Ana, "Juniper is up");

        await rig.ReceiveAsync(untilPolled: false);
        await rig.TakenAsync(1);

        time.Pauses.Should().Equal(TimeSpan.FromSeconds(37));
    }

    [Fact]
    public async Task A_start_without_a_net_is_made_good_when_the_net_comes()
    {
        var time = new HastyTime();
        await using var rig = await TelegramRig.StartAsync(time);
        rig.Fake.Break("getMe", new Fault.Html(502), times: 3);
        rig.Fake.Break("setMyCommands", new Fault.Html(502));
        rig.Fake.Say(rig.Fake.Group(), TelegramRig.Ana, "Juniper is up");

        await rig.ReceiveAsync(untilPolled: false);
        await rig.TakenAsync(1);

        time.Pauses.Select(pause => pause.TotalSeconds).Should().Equal(1, 2, 4);
    }

    [Fact]
    public async Task A_server_that_brings_the_same_batch_for_ever_is_not_asked_for_ever()
    {
        var time = new HastyTime();
        await using var rig = await TelegramRig.StartAsync(time);
        rig.Fake.Deliver("message", new System.Text.Json.Nodes.JsonObject { ["text"] = "no number that counts" }, id: long.MaxValue - 1);

        await rig.ReceiveAsync(untilPolled: false);
        await rig.Intake.WaitForCallsAsync(5);
        await rig.StopAsync();

        time.Pauses.Should().HaveCountGreaterThanOrEqualTo(4).And.OnlyContain(pause => pause == TimeSpan.FromSeconds(1) || pause == TimeSpan.FromSeconds(5));
        rig.Intake.Entries.Should().ContainSingle();
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 2)]
    [InlineData(6, 32)]
    [InlineData(7, 60)]
    [InlineData(5000, 60)]
    public void The_pause_doubles_up_to_a_minute(int failures, int seconds) =>
        PollPause.After(new RequestException("down"), failures).Should().Be(TimeSpan.FromSeconds(seconds));

    [Fact]
    public void A_429_without_a_figure_is_any_other_failure() =>
        PollPause.After(new ApiRequestException("Too Many Requests", 429, new ResponseParameters()), 3).Should().Be(TimeSpan.FromSeconds(4));

    private static Fault FaultOf(string trouble) => trouble switch
    {
        "html 200" => new Fault.Html(200),
        "html 502" => new Fault.Html(502),
        "json 500" => new Fault.Error(500, "Internal Server Error"),
        "half" => new Fault.HalfAnswer(),
        "dropped" => new Fault.Dropped(),
        _ => new Fault.NoResult(),
    };
}

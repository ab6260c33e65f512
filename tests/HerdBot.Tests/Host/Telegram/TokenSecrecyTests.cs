using FluentAssertions;
using HerdBot.App.Ports;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Support.FakeBotApi;
using Xunit;

namespace HerdBot.Tests.Host.Telegram;

public sealed class TokenSecrecyTests
{
    private const string Secret = "canary";

    [Fact]
    public async Task No_line_of_the_log_and_no_result_holds_the_token_whatever_goes_wrong()
    {
        await using var rig = await TelegramRig.StartAsync(new HastyTime(), sendTime: TimeSpan.FromMilliseconds(400));
        rig.Fake.Token.Should().Contain(Secret);
        var group = rig.Fake.Group();
        var results = new List<SendResult>();
        Fault[] faults =
        [
            new Fault.Html(502), new Fault.Dropped(), new Fault.HalfAnswer(), new Fault.Silence(), new Fault.NoResult(),
            new Fault.Error(401, "Unauthorized"), new Fault.Error(400, $"Bad Request: no such url /bot{rig.Fake.Token}/sendMessage"),
        ];
        foreach (var fault in faults)
        {
            rig.Fake.Break("sendMessage", fault);
            results.Add(await rig.Chat.SendAsync(TelegramReceiverTests.Post(group)));
        }
        rig.Fake.Break("getMe", new Fault.Error(404, $"Not Found: /bot{rig.Fake.Token}/getMe"));
        Array.ForEach(faults[..3], fault => rig.Fake.Break("getUpdates", fault));
        rig.Fake.Say(group, TelegramRig.Ana, "Juniper is up");

        await rig.ReceiveAsync(untilPolled: false);
        await rig.TakenAsync(1);
        await rig.StopAsync();

        rig.Log.Text.Should().NotContain(Secret).And.Contain("getMe").And.Contain("***");
        results.Should().HaveCount(7).And.OnlyContain(result => !result.ToString().Contains(Secret));
    }

    [Fact]
    public async Task A_connection_that_is_refused_gives_nothing_away()
    {
        await using var rig = await TelegramRig.StartAsync(new HastyTime());
        await rig.Fake.DisposeAsync();

        var result = await rig.Chat.SendAsync(new Outgoing(new GroupId("tg:-1"), 1, OutgoingKind.Send, "x"));

        result.Should().BeOfType<SendResult.NotSent>();
        (rig.Log.Text + result).Should().NotContain(Secret);
    }

    [Fact]
    public void Options_do_not_print_their_token() =>
        new TelegramOptions { Token = $"1:{Secret}" }.ToString().Should().NotContain(Secret);

    [Fact]
    public void An_exception_is_told_with_all_behind_it_and_without_the_token()
    {
        var veil = new TokenVeil($"700:{Secret}");
        var failure = new InvalidOperationException($"GET /bot700:{Secret}/getMe", new IOException($"at {Secret.ToUpperInvariant()}"));

        veil.Tell(failure).Should().Be("InvalidOperationException: GET /bot700:***/getMe <- IOException: at ***");
    }

    [Theory]
    [InlineData("7:set", "7:env", "7:set")]
    [InlineData(" 7:set\n", null, "7:set")]
    [InlineData("", "7:env", "7:env")]
    [InlineData(null, " ", null)]
    public void The_token_comes_from_the_settings_else_from_the_environment(string? setting, string? variable, string? token) =>
        TelegramOptions.TokenFrom(setting, name => name == "HERDBOT_TOKEN" ? variable : null).Should().Be(token);

    [Theory]
    [InlineData("700100200:AAF-canary_secret", true)]
    [InlineData("700100200", false)]
    [InlineData(":AAF-canary_secret", false)]
    [InlineData("bot:AAF-canary_secret", false)]
    [InlineData("700100200:short", false)]
    [InlineData("700100200:AAF canary secret", false)]
    public void The_shape_of_a_token_can_be_checked_before_the_start(string token, bool good) =>
        TelegramOptions.IsToken(token).Should().Be(good);
}

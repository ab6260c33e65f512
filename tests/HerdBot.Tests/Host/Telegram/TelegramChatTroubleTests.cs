using System.Net;
using System.Net.Sockets;
using FluentAssertions;
using HerdBot.App.Ports;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Support.FakeBotApi;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;
using Telegram.Bot.Exceptions;
using Telegram.Bot.Types;
using Xunit;

namespace HerdBot.Tests.Host.Telegram;

public sealed class TelegramChatTroubleTests : IAsyncLifetime
{
    private TelegramRig _rig = null!;
    private FakeChat _group = null!;

    public async ValueTask InitializeAsync()
    {
        _rig = await TelegramRig.StartAsync();
        _group = _rig.Fake.Group();
    }

    public ValueTask DisposeAsync() => _rig.DisposeAsync();

    [Fact]
    public async Task Too_many_posts_in_a_minute_mean_a_pause_and_one_call()
    {
        for (var i = 0; i < 20; i++)
            await SendAsync(i + 1);

        var result = await SendAsync(21);

        result.Should().Be(new SendResult.Wait(Duration.FromMinutes(1)));
        _rig.Fake.Requests.Should().HaveCount(21, because: "the library must not sleep and try again by itself");
    }

    [Fact]
    public async Task A_pause_of_hours_is_passed_on_as_it_is()
    {
        _rig.Fake.Break("sendMessage", new Fault.Error(429, "", RetryAfter: 10_072));

        (await SendAsync(1)).Should().Be(new SendResult.Wait(Duration.FromSeconds(10_072)));
    }

    [Theory]
    [InlineData("Muted", "not enough rights")]
    [InlineData("Kicked", "bot was kicked")]
    [InlineData("NotMember", "not a member")]
    [InlineData("Deleted", "was deleted")]
    public async Task A_chat_that_does_not_let_us_write_refuses_in_its_own_words(string standing, string words)
    {
        _group.Standing = Enum.Parse<BotStanding>(standing);

        (await SendAsync(1)).Should().BeOfType<SendResult.Refused>().Which.Why.Should().Contain(words);
    }

    [Theory]
    [InlineData(OutgoingKind.Send)]
    [InlineData(OutgoingKind.Edit)]
    [InlineData(OutgoingKind.Mark)]
    public async Task A_chat_that_moved_says_where(OutgoingKind kind)
    {
        var message = _rig.Fake.Say(_group, TelegramRig.Ana, "Juniper is up");
        var next = _rig.Fake.Migrate(_group, TelegramRig.Ana, tell: false);
        var post = TelegramReceiverTests.Post(_group, kind == OutgoingKind.Mark ? "👍" : "x");

        var result = await _rig.Chat.SendAsync(post with { Kind = kind, Target = $"{_group.Id}/{message}" });

        result.Should().Be(new SendResult.Moved(new GroupId($"tg:{next.Id}")));
    }

    public static TheoryData<string, bool> UnclearFaults => new()
    {
        { "html 200", false }, { "html 502", false }, { "json 500", false }, { "dropped", false }, { "no result", false },
        { "half", true }, { "answer lost", true },
    };

    [Theory]
    [MemberData(nameof(UnclearFaults))]
    public async Task Where_it_is_not_clear_whether_it_was_sent_that_is_what_is_said(string trouble, bool wasSent)
    {
        _rig.Fake.Break("sendMessage", FaultOf(trouble));

        var result = await SendAsync(1);

        result.Should().BeOfType<SendResult.Unknown>();
        _rig.Fake.Sent.Should().HaveCount(wasSent ? 1 : 0);
        _rig.Fake.Requests.Should().ContainSingle(because: "nothing is sent twice by itself");
    }

    [Fact]
    public async Task An_answer_that_never_comes_leaves_it_unclear()
    {
        await using var rig = await TelegramRig.StartAsync(sendTime: TimeSpan.FromMilliseconds(400));
        rig.Fake.Break("sendMessage", new Fault.Silence());

        (await rig.Chat.SendAsync(TelegramReceiverTests.Post(rig.Fake.Group()))).Should().BeOfType<SendResult.Unknown>();
    }

    [Theory]
    [InlineData(401, "Unauthorized")]
    [InlineData(404, "Not Found")]
    public async Task A_token_that_is_not_known_parks_no_chat(int code, string words)
    {
        _rig.Fake.Break("sendMessage", new Fault.Error(code, words));

        (await SendAsync(1)).Should().BeOfType<SendResult.NotSent>();
    }

    [Fact]
    public async Task A_refused_connection_means_that_nothing_was_sent()
    {
        var gone = await FakeBotApi.StartAsync();
        var url = gone.Url;
        await gone.DisposeAsync();

        (await SendToAsync(url)).Should().BeOfType<SendResult.NotSent>();
    }

    [Fact]
    public async Task A_connection_that_never_comes_about_means_that_nothing_was_sent()
    {
        // A listener that accepts nobody and whose waiting room is full lets further callers ring for ever.
        using var listener = new Socket(SocketType.Stream, ProtocolType.Tcp);
        listener.Bind(new IPEndPoint(IPAddress.Loopback, 0));
        listener.Listen(0);
        var port = ((IPEndPoint)listener.LocalEndPoint!).Port;
        using var first = new Socket(SocketType.Stream, ProtocolType.Tcp);
        await first.ConnectAsync(IPAddress.Loopback, port);

        var result = await SendToAsync($"http://127.0.0.1:{port}");

        result.Should().BeOfType<SendResult.NotSent>().Which.Why.Should().Contain("No connection within");
    }

    [Theory]
    [InlineData(HttpRequestError.NameResolutionError, true)]
    [InlineData(HttpRequestError.ConnectionError, true)]
    [InlineData(HttpRequestError.SecureConnectionError, true)]
    [InlineData(HttpRequestError.ResponseEnded, false)]
    [InlineData(HttpRequestError.Unknown, false)]
    public void Only_what_fails_before_anything_can_leave_is_certainly_not_sent(HttpRequestError error, bool notSent)
    {
        var failure = new RequestException("Bot API Service Failure", new HttpRequestException(error));

        var result = SendFailure.Of(failure, "why");

        result.Should().Be(notSent ? new SendResult.NotSent("why") : new SendResult.Unknown("why"));
    }

    [Fact]
    public void A_429_that_does_not_say_how_long_means_half_a_minute() =>
        SendFailure.Of(new ApiRequestException("Too Many Requests", 429, new ResponseParameters()), "why")
            .Should().Be(new SendResult.Wait(Duration.FromSeconds(30)));

    [Fact]
    public async Task A_host_that_stops_is_not_told_a_result()
    {
        _rig.Fake.Break("sendMessage", new Fault.Silence());
        using var stopping = new CancellationTokenSource();
        var sending = _rig.Chat.SendAsync(TelegramReceiverTests.Post(_group), stopping.Token);
        await _rig.Fake.WaitForAsync(fake => fake.Sent.Count == 1);

        await stopping.CancelAsync();
        var outcome = async () => await sending;

        await outcome.Should().ThrowAsync<OperationCanceledException>();
    }

    private Task<SendResult> SendAsync(int number) => _rig.Chat.SendAsync(TelegramReceiverTests.Post(_group, number: number));

    private async Task<SendResult> SendToAsync(string url)
    {
        using var line = new TelegramLine(new TelegramOptions
        {
            Token = _rig.Fake.Token,
            BaseUrl = url,
            ConnectTime = TimeSpan.FromMilliseconds(150),
            SendTime = TimeSpan.FromSeconds(5),
        });
        return await new TelegramChat(line, _ => null, NullLogger<TelegramChat>.Instance).SendAsync(TelegramReceiverTests.Post(_group));
    }

    private static Fault FaultOf(string trouble) => trouble switch
    {
        "html 200" => new Fault.Html(200),
        "html 502" => new Fault.Html(502),
        "json 500" => new Fault.Error(500, "Internal Server Error"),
        "dropped" => new Fault.Dropped(),
        "no result" => new Fault.NoResult(),
        "half" => new Fault.HalfAnswer(),
        _ => new Fault.AnswerLost(),
    };
}

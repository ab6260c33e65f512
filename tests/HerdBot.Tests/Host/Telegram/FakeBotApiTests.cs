using System.Text.Json.Nodes;
using FluentAssertions;
using HerdBot.Tests.Support.FakeBotApi;
using Xunit;

namespace HerdBot.Tests.Host.Telegram;

/// <summary>
/// That the stand-in is as strict as the real server.
/// Source: Bot API 10.3 documentation; tdlib/telegram-bot-api source, as summed up beside each behaviour of the fake.
/// </summary>
public sealed class FakeBotApiTests : IAsyncLifetime
{
    private static readonly FakePerson Ana = new(4711, "Ana");
    private FakeBotApi _fake = null!;
    private FakeProbe _probe = null!;
    private FakeChat _group = null!;

    public async ValueTask InitializeAsync()
    {
        _fake = await FakeBotApi.StartAsync();
        _probe = new FakeProbe(_fake);
        _group = _fake.Group();
    }

    public async ValueTask DisposeAsync()
    {
        _probe.Dispose();
        await _fake.DisposeAsync();
    }

    [Fact]
    public async Task An_update_comes_again_until_a_later_one_is_asked_for()
    {
        Say("one", "two");

        (await _probe.PollAsync()).Should().Equal(7001, 7002);
        (await _probe.PollAsync("""{"offset":7001}""")).Should().Equal(7001, 7002);
        (await _probe.PollAsync("""{"offset":7002}""")).Should().Equal(7002);
        (await _probe.PollAsync("""{"offset":7003}""")).Should().BeEmpty();
        (await _probe.PollAsync()).Should().BeEmpty();
    }

    [Fact]
    public async Task A_limit_cuts_the_batch_and_leaves_the_rest()
    {
        Say("one", "two", "three");

        (await _probe.PollAsync("""{"limit":2}""")).Should().Equal(7001, 7002);
        (await _probe.PollAsync("""{"offset":7003,"limit":2}""")).Should().Equal(7003);
    }

    [Fact]
    public async Task An_offset_far_ahead_is_not_believed()
    {
        Say("one", "two");

        (await _probe.PollAsync("""{"offset":7014}""")).Should().Equal(7001, 7002);
    }

    [Fact]
    public async Task An_offset_a_little_ahead_eats_what_comes_next()
    {
        Say("one");

        (await _probe.PollAsync("""{"offset":7004}""")).Should().BeEmpty();
        Say("eaten", "eaten too", "delivered");
        (await _probe.PollAsync()).Should().Equal(7004);
    }

    [Fact]
    public async Task A_negative_offset_throws_away_all_but_the_last()
    {
        Say("one", "two", "three");

        (await _probe.PollAsync("""{"offset":-1}""")).Should().Equal(7003);
        (await _probe.PollAsync()).Should().Equal(7003);
    }

    [Fact]
    public async Task A_press_is_forgotten_after_150_seconds_and_a_message_after_a_day()
    {
        await SendAsync("""{"chat_id":CHAT,"text":"Up?","reply_markup":{"inline_keyboard":[[{"text":"Yes","callback_data":"y"}]]}}""");
        Say("a line");
        _fake.Press(_group, _fake.Sent[0].MessageId, "y", Ana);

        _fake.Clock.Advance(TimeSpan.FromSeconds(149));
        _fake.Unconfirmed.Should().Be(2);
        _fake.Clock.Advance(TimeSpan.FromSeconds(1));
        _fake.Unconfirmed.Should().Be(1);
        _fake.Clock.Advance(TimeSpan.FromHours(24));
        _fake.Unconfirmed.Should().Be(0);
    }

    [Fact]
    public void A_message_dated_a_day_ago_is_never_delivered()
    {
        _fake.Say(_group, Ana, message => message["text"] = "typed in a dead spot", age: TimeSpan.FromHours(24));

        _fake.Unconfirmed.Should().Be(0);
    }

    [Fact]
    public async Task A_poll_waits_until_something_comes()
    {
        var poll = _probe.PollAsync("""{"timeout":50}""");
        await _fake.WaitForAsync(fake => fake.Polled);
        Say("one");

        (await poll).Should().Equal(7001);
    }

    [Fact]
    public async Task A_poll_is_cut_at_fifty_seconds_whatever_is_asked()
    {
        var poll = _probe.PollAsync("""{"timeout":100}""");
        await _fake.WaitForAsync(fake => fake.Polled);
        _fake.Clock.Advance(TimeSpan.FromSeconds(50));

        (await poll).Should().BeEmpty();
    }

    [Fact]
    public async Task A_second_poll_ends_the_first_with_a_conflict()
    {
        var first = _probe.CallAsync("getUpdates", """{"timeout":50}""");
        await _fake.WaitForAsync(fake => fake.Polled);
        var second = _probe.PollAsync("""{"timeout":50}""");

        var refusal = await first;
        Say("one");

        ((int)refusal["error_code"]!).Should().Be(409);
        (await second).Should().Equal(7001);
    }

    [Fact]
    public async Task A_webhook_and_a_poll_exclude_each_other()
    {
        var poll = _probe.RefusalAsync("getUpdates", """{"timeout":50}""");
        await _fake.WaitForAsync(fake => fake.Polled);
        await _probe.CallAsync("setWebhook", """{"url":"https://example.org/x"}""");

        (await poll).Should().StartWith("Conflict: terminated by setWebhook");
        (await _probe.RefusalAsync("getUpdates")).Should().StartWith("Conflict: can't use getUpdates method while webhook is active");
        await _probe.CallAsync("deleteWebhook");
        (await _probe.RefusalAsync("getUpdates")).Should().BeEmpty();
    }

    [Fact]
    public async Task Kinds_are_filtered_when_an_update_is_made_and_remembered_until_changed()
    {
        await _probe.PollAsync("""{"allowed_updates":["message"]}""");
        _fake.Add(_group, Ana);
        Say("one");
        await _probe.PollAsync("""{"offset":7002}""");
        _fake.Add(_group, Ana);
        (await _probe.PollAsync("""{"allowed_updates":["message","my_chat_member"]}""")).Should().BeEmpty();
        _fake.Add(_group, Ana);

        (await _probe.PollAsync()).Should().Equal(7002);
    }

    [Theory]
    [InlineData("""{"allowed_updates":[]}""")]
    [InlineData("""{"allowed_updates":["nonsense"]}""")]
    public async Task An_empty_or_senseless_list_of_kinds_means_the_usual_ones(string body)
    {
        await _probe.PollAsync(body);

        _fake.Allowed.Should().Contain("callback_query").And.NotContain(["message_reaction", "chat_member"]);
    }

    [Fact]
    public async Task The_twenty_first_post_within_a_minute_must_wait_out_the_minute()
    {
        for (var i = 0; i < 20; i++)
        {
            _fake.Clock.Advance(TimeSpan.FromSeconds(1));
            (await SendAsync("""{"chat_id":CHAT,"text":"post"}""")).Should().BeEmpty();
        }

        var refused = await _probe.CallAsync("sendMessage", Body("""{"chat_id":CHAT,"text":"post"}"""));
        var pause = (int)refused["parameters"]!["retry_after"]!;
        _fake.Clock.Advance(TimeSpan.FromSeconds(pause - 1));
        var tooSoon = await SendAsync("""{"chat_id":CHAT,"text":"post"}""");
        _fake.Clock.Advance(TimeSpan.FromSeconds(1));
        var inTime = await SendAsync("""{"chat_id":CHAT,"text":"post"}""");

        pause.Should().Be(41);
        tooSoon.Should().Be("Too Many Requests: retry after 1");
        inTime.Should().BeEmpty();
    }

    [Theory]
    [InlineData("""{"chat_id":CHAT}""", "message text is empty")]
    [InlineData("""{"chat_id":CHAT,"text":"  "}""", "message text is empty")]
    [InlineData("""{"chat_id":5,"text":"x"}""", "chat not found")]
    [InlineData("""{"chat_id":CHAT,"txt":"x"}""", "sendMessage has no parameter 'txt'")]
    [InlineData("""{"chat_id":CHAT,"text":"x","parse_mode":"HTML"}""", "sendMessage has no parameter 'parse_mode'")]
    [InlineData("""{"chat_id":CHAT,"text":"x","entities":[{"type":"bold","offset":0,"length":2}]}""", "an entity lies outside of the text")]
    [InlineData("""{"chat_id":CHAT,"text":"x","reply_parameters":{"message_id":99}}""", "message to be replied not found")]
    [InlineData("""{"chat_id":CHAT,"text":"x","reply_parameters":{"message_id":99,"allow_sending_without_reply":true}}""", "")]
    [InlineData("""{"chat_id":CHAT,"text":"x","message_thread_id":1}""", "message thread not found")]
    [InlineData("""{"chat_id":CHAT,"text":"x","message_thread_id":7}""", "")]
    [InlineData("""{"chat_id":CHAT,"text":"x","message_thread_id":8}""", "TOPIC_CLOSED")]
    [InlineData("""{"chat_id":CHAT,"text":"x","reply_markup":{"inline_keyboard":[[{"text":"y","callback_data":""}]]}}""", "BUTTON_DATA_INVALID")]
    public async Task A_post_with_something_wrong_is_refused(string body, string refusal)
    {
        _group.Topics[7] = true;
        _group.Topics[8] = false;

        (await SendAsync(body)).Should().Be(refusal.Length == 0 ? "" : $"Bad Request: {refusal}");
    }

    [Theory]
    [InlineData(64, "")]
    [InlineData(65, "Bad Request: BUTTON_DATA_INVALID")]
    public async Task A_button_carries_64_bytes(int bytes, string refusal)
    {
        // Two bytes each in UTF-8, and one byte more where the number is odd.
        var data = new string('ñ', bytes / 2) + new string('x', bytes % 2);

        (await SendAsync("""{"chat_id":CHAT,"text":"x","reply_markup":{"inline_keyboard":[[{"text":"y","callback_data":"DATA"}]]}}""".Replace("DATA", data, StringComparison.Ordinal)))
            .Should().Be(refusal);
    }

    [Theory]
    [InlineData("sendMessage", "text", 4096, "")]
    [InlineData("sendMessage", "text", 4097, "Bad Request: message is too long")]
    [InlineData("sendPhoto", "caption", 1024, "")]
    [InlineData("sendPhoto", "caption", 1025, "Bad Request: message caption is too long")]
    public async Task Words_have_a_limit(string method, string field, int length, string refusal)
    {
        var text = string.Concat(Enumerable.Repeat("🦙", length));

        (await _probe.RefusalAsync(method, Body($$"""{"chat_id":CHAT,"{{field}}":"{{text}}"}"""))).Should().Be(refusal);
    }

    [Theory]
    [InlineData("open", "What is open", "")]
    [InlineData("Open", "What is open", "Bad Request: BOT_COMMAND_INVALID")]
    [InlineData("qué", "What is open", "Bad Request: BOT_COMMAND_INVALID")]
    [InlineData("open", "", "Bad Request: BOT_COMMAND_DESCRIPTION_INVALID")]
    public async Task A_command_is_of_plain_letters_and_described(string name, string description, string refusal) =>
        (await _probe.RefusalAsync("setMyCommands", $$"""{"commands":[{"command":"{{name}}","description":"{{description}}"}]}""")).Should().Be(refusal);

    [Theory]
    [InlineData("Muted", "Bad Request: not enough rights to send text messages to the chat")]
    [InlineData("Kicked", "Forbidden: bot was kicked from the supergroup chat")]
    [InlineData("NotMember", "Forbidden: bot is not a member of the supergroup chat")]
    [InlineData("Deleted", "Forbidden: the group chat was deleted")]
    [InlineData("NeverStarted", "Forbidden: bot can't initiate conversation with a user")]
    [InlineData("Blocked", "Forbidden: bot was blocked by the user")]
    public async Task A_bot_without_the_right_to_write_is_told_why(string standing, string refusal)
    {
        _group.Standing = Enum.Parse<BotStanding>(standing);

        (await SendAsync("""{"chat_id":CHAT,"text":"x"}""")).Should().Be(refusal);
    }

    [Fact]
    public async Task A_chat_that_moved_says_where_and_both_chats_are_told()
    {
        var next = _fake.Migrate(_group, Ana);

        var refused = await _probe.CallAsync("sendMessage", Body("""{"chat_id":CHAT,"text":"x"}"""));
        var told = (await _probe.CallAsync("getUpdates"))["result"]!.AsArray();

        ((int)refused["error_code"]!).Should().Be(400);
        ((long)refused["parameters"]!["migrate_to_chat_id"]!).Should().Be(next.Id);
        ((long)told[0]!["message"]!["migrate_to_chat_id"]!).Should().Be(next.Id);
        ((long)told[1]!["message"]!["migrate_from_chat_id"]!).Should().Be(_group.Id);
    }

    [Fact]
    public async Task An_edit_must_change_something_and_have_something_to_change()
    {
        await SendAsync("""{"chat_id":CHAT,"text":"x"}""");
        var theirs = _fake.Say(_group, Ana, "hers");

        (await EditAsync("""{"chat_id":CHAT,"message_id":1,"text":"x"}""")).Should().StartWith("Bad Request: message is not modified");
        (await EditAsync("""{"chat_id":CHAT,"message_id":1,"text":"y"}""")).Should().BeEmpty();
        (await EditAsync("""{"chat_id":CHAT,"message_id":44,"text":"y"}""")).Should().Be("Bad Request: message to edit not found");
        (await EditAsync($$"""{"chat_id":CHAT,"message_id":{{theirs}},"text":"y"}""")).Should().Be("Bad Request: message can't be edited");
    }

    [Fact]
    public async Task A_press_can_be_answered_for_fifteen_seconds()
    {
        await SendAsync("""{"chat_id":CHAT,"text":"Up?","reply_markup":{"inline_keyboard":[[{"text":"Yes","callback_data":"y"}]]}}""");
        var press = _fake.Press(_group, 1, "y", Ana);
        var late = _fake.Press(_group, 1, "y", Ana);

        _fake.Clock.Advance(TimeSpan.FromSeconds(15));
        var inTime = await _probe.RefusalAsync("answerCallbackQuery", $$"""{"callback_query_id":"{{press}}"}""");
        _fake.Clock.Advance(TimeSpan.FromSeconds(1));
        var tooLate = await _probe.RefusalAsync("answerCallbackQuery", $$"""{"callback_query_id":"{{late}}"}""");

        inTime.Should().BeEmpty();
        tooLate.Should().StartWith("Bad Request: query is too old");
        _fake.Answered.Should().Equal(press);
    }

    [Fact]
    public async Task A_button_that_is_not_there_cannot_be_pressed()
    {
        await SendAsync("""{"chat_id":CHAT,"text":"x"}""");

        var pressing = () => _fake.Press(_group, 1, "y", Ana);

        pressing.Should().Throw<InvalidOperationException>();
    }

    [Fact]
    public async Task A_mark_must_be_one_of_Telegrams()
    {
        var message = _fake.Say(_group, Ana, "noted?");

        (await ReactAsync("👍", message)).Should().BeEmpty();
        (await ReactAsync("✅", message)).Should().Be("Bad Request: REACTION_INVALID");
        (await ReactAsync("👍", 99)).Should().Be("Bad Request: message to react not found");
        _fake.ReactionsOn(_group, message).Should().Equal("👍");
    }

    [Fact]
    public async Task A_wrong_token_and_an_unknown_method_are_turned_away()
    {
        var token = await _probe.CallAsync("getMe", token: "700100200:another");
        var method = await _probe.CallAsync("brewTea");

        ((int)token["error_code"]!, (string)token["description"]!).Should().Be((401, "Unauthorized"));
        ((int)method["error_code"]!, (string)method["description"]!).Should().Be((404, "Not Found"));
    }

    [Fact]
    public async Task A_poison_update_of_any_shape_can_be_delivered()
    {
        _fake.Deliver("message", new JsonObject { ["forward_origin"] = new JsonObject { ["type"] = "martian" } });

        (await _probe.CallAsync("getUpdates"))["result"]![0]!.ToJsonString().Should().Be("""{"update_id":7001,"message":{"forward_origin":{"type":"martian"}}}""");
    }

    private void Say(params string[] lines) => Array.ForEach(lines, line => _fake.Say(_group, Ana, line));

    private string Body(string body) => body.Replace("CHAT", _group.Id.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal);

    private Task<string> SendAsync(string body) => _probe.RefusalAsync("sendMessage", Body(body));

    private Task<string> EditAsync(string body) => _probe.RefusalAsync("editMessageText", Body(body));

    private Task<string> ReactAsync(string emoji, int message) => _probe.RefusalAsync("setMessageReaction",
        Body($$"""{"chat_id":CHAT,"message_id":{{message}},"reaction":[{"type":"emoji","emoji":"{{emoji}}"}]}"""));
}

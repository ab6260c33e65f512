using System.Text.Json.Nodes;
using FluentAssertions;
using HerdBot.App.Ports;
using HerdBot.Tests.Support.FakeBotApi;
using Xunit;

namespace HerdBot.Tests.Host.Telegram;

public sealed class TelegramChatTests : IAsyncLifetime
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
    public async Task Every_character_arrives_as_it_was_written()
    {
        const string text = "Sage <b>_*[](~`>#+-=|{}.!& \\ 'ñ' 🦙\n@ana https://example.org";

        var result = await SendAsync(Post(text));

        result.Should().Be(new SendResult.Sent(_rig.Fake.Sent[0].Id));
        _rig.Fake.Sent.Should().ContainSingle().Which.Text.Should().Be(text);
        _rig.Fake.CallsOf("sendMessage")[0].ContainsKey("parse_mode").Should().BeFalse();
        _rig.Fake.CallsOf("sendMessage")[0]["link_preview_options"]!.ToJsonString().Should().Be("""{"is_disabled":true}""");
    }

    // Telegram counts UTF-16 units: the animal's picture is two.
    [Theory]
    [InlineData("🦙 Vet now: Sage\nNo milk since 2:10.", 16)]
    [InlineData("Vet now: Sage", 13)]
    public async Task An_alarm_has_its_first_line_in_bold(string text, int length)
    {
        await SendAsync(Post(text) with { Loud = true });

        Body()["entities"]!.ToJsonString().Should().Be($$"""[{"type":"bold","offset":0,"length":{{length}}}]""");
    }

    [Fact]
    public async Task What_is_no_alarm_is_plain()
    {
        await SendAsync(Post("Noted."));

        Body().ContainsKey("entities").Should().BeFalse();
    }

    [Fact]
    public async Task A_picture_goes_out_as_a_photo_with_the_words_as_its_caption()
    {
        var result = await SendAsync(Post("Next: Sage Apr 20.") with { Picture = new byte[2000] });

        result.Should().Be(new SendResult.Sent(_rig.Fake.Sent[0].Id));
        _rig.Fake.Sent.Should().ContainSingle().Which.Text.Should().Be("Next: Sage Apr 20.");
        var call = _rig.Fake.CallsOf("sendPhoto").Should().ContainSingle().Subject;
        ((string?)call["photo"]).Should().Be("season.png: 2000 bytes");
        _rig.Fake.CallsOf("sendMessage").Should().BeEmpty();
    }

    [Fact]
    public async Task A_picture_with_more_words_than_a_caption_holds_is_left_out_and_the_words_go()
    {
        await SendAsync(Post(new string('n', 1025)) with { Picture = new byte[2000] });

        _rig.Fake.CallsOf("sendMessage").Should().ContainSingle();
        _rig.Fake.CallsOf("sendPhoto").Should().BeEmpty();
    }

    [Fact]
    public async Task Buttons_stand_in_one_row_with_what_they_carry()
    {
        await SendAsync(Post("Up?") with { Buttons = [new("Standing", "v1:up:7"), new("Not yet", "v1:no:7")] });

        Body()["reply_markup"]!.ToJsonString().Should().Be(
            """{"inline_keyboard":[[{"text":"Standing","callback_data":"v1:up:7"},{"text":"Not yet","callback_data":"v1:no:7"}]]}""");
    }

    [Fact]
    public async Task A_reply_hangs_on_its_message_and_is_sent_without_it_where_it_is_gone()
    {
        var message = _rig.Fake.Say(_group, TelegramRig.Ana, "Juniper is up");

        await SendAsync(Post("Noted.") with { Target = Id(message) });
        await SendAsync(Post("Noted.", 2) with { Target = Id(99) });

        _rig.Fake.Sent.Select(post => post.ReplyTo).Should().Equal(message, null);
    }

    [Fact]
    public async Task A_reply_that_Telegram_refuses_all_the_same_is_sent_without()
    {
        var message = _rig.Fake.Say(_group, TelegramRig.Ana, "Juniper is up");
        _rig.Fake.Break("sendMessage", new Fault.Error(400, "Bad Request: message to be replied not found"));

        var result = await SendAsync(Post("Noted.") with { Target = Id(message) });

        result.Should().BeOfType<SendResult.Sent>();
        _rig.Fake.Sent.Should().ContainSingle().Which.ReplyTo.Should().BeNull();
    }

    [Fact]
    public async Task A_reply_to_a_message_of_another_chat_is_an_ordinary_post()
    {
        await SendAsync(Post("Noted.") with { Target = "-4100001/7" });

        Body().ContainsKey("reply_parameters").Should().BeFalse();
    }

    [Fact]
    public async Task A_long_text_comes_in_parts_with_the_reply_first_and_the_buttons_last()
    {
        var message = _rig.Fake.Say(_group, TelegramRig.Ana, "/open");
        var text = string.Join('\n', Enumerable.Range(1, 500).Select(n => $"{n}. Juniper's baby: second weight"));

        var result = await SendAsync(Post(text) with { Target = Id(message), Loud = true, Buttons = [new("All done", "v1:all")] });

        var sent = _rig.Fake.Sent;
        sent.Should().HaveCountGreaterThan(2).And.OnlyContain(post => post.Text.Length <= 4096);
        string.Join('\n', sent.Select(post => post.Text)).Should().Be(text);
        sent.Select(post => post.ReplyTo is not null).Should().Equal(sent.Select(post => post == sent[0]));
        sent.Select(post => post.ButtonData.Count).Should().Equal(sent.Select(post => post == sent[^1] ? 1 : 0));
        sent.Select(post => post.Body.ContainsKey("entities")).Should().Equal(sent.Select(post => post == sent[0]));
        result.Should().Be(new SendResult.Sent(sent[^1].Id));
    }

    [Fact]
    public async Task A_pause_in_the_middle_of_a_long_text_repeats_none_of_it()
    {
        var text = string.Join('\n', Enumerable.Range(1, 500).Select(n => $"{n}. Juniper's baby: second weight"));
        for (var i = 0; i < 18; i++)
            await SendAsync(Post("earlier", i + 1));

        var first = await SendAsync(Post(text, 100));
        _rig.Fake.Clock.Advance(TimeSpan.FromMinutes(1));
        var second = await SendAsync(Post(text, 100));

        first.Should().BeOfType<SendResult.Wait>();
        second.Should().BeOfType<SendResult.Sent>();
        string.Join('\n', _rig.Fake.Sent.Skip(18).Select(post => post.Text)).Should().Be(text);
    }

    [Fact]
    public async Task Nothing_to_say_is_not_sent()
    {
        (await SendAsync(Post(" \n"))).Should().BeOfType<SendResult.Refused>();
        _rig.Fake.Requests.Should().BeEmpty();
    }

    [Fact]
    public async Task A_group_that_is_not_Telegrams_is_refused()
    {
        (await _rig.Chat.SendAsync(new Outgoing(new GroupId("barn"), 1, OutgoingKind.Send, "x"))).Should().BeOfType<SendResult.Refused>();
    }

    [Fact]
    public async Task An_edit_puts_new_words_and_buttons_in_place_of_the_old()
    {
        await SendAsync(Post("Up?") with { Buttons = [new("Standing", "v1:up:7")] });
        var id = _rig.Fake.Sent[0].Id;

        var result = await SendAsync(Post("Up at 5:50, says Tom.", 2) with { Kind = OutgoingKind.Edit, Target = id });

        result.Should().Be(new SendResult.Sent(id));
        _rig.Fake.TextOf(_rig.Fake.Sent[0]).Should().Be("Up at 5:50, says Tom.");
        _group.Messages[_rig.Fake.Sent[0].MessageId].ButtonData().Should().BeEmpty();
    }

    [Fact]
    public async Task An_edit_that_changes_nothing_is_done()
    {
        await SendAsync(Post("Up?"));
        var id = _rig.Fake.Sent[0].Id;

        var result = await SendAsync(Post("Up?", 2) with { Kind = OutgoingKind.Edit, Target = id });

        result.Should().Be(new SendResult.Sent(id));
        _rig.Fake.Sent.Should().ContainSingle();
    }

    [Theory]
    [InlineData("GROUP/99")]
    [InlineData("-4100001/1")]
    [InlineData("nonsense")]
    [InlineData(null)]
    public async Task An_edit_of_what_is_not_there_is_sent_anew(string? target)
    {
        var result = await SendAsync(Post("Up at 5:50.") with { Kind = OutgoingKind.Edit, Target = target?.Replace("GROUP", $"{_group.Id}") });

        _rig.Fake.Sent.Should().ContainSingle().Which.Text.Should().Be("Up at 5:50.");
        result.Should().Be(new SendResult.Sent(_rig.Fake.Sent[0].Id));
    }

    [Theory]
    [InlineData("👍", "👍")]
    [InlineData("👌", "👌")]
    [InlineData("✍️", "✍")]
    public async Task A_mark_is_set_on_the_message(string mark, string seen)
    {
        var message = _rig.Fake.Say(_group, TelegramRig.Ana, "Juniper is up");

        var result = await SendAsync(Post(mark) with { Kind = OutgoingKind.Mark, Target = Id(message) });

        result.Should().Be(new SendResult.Sent(Id(message)));
        _rig.Fake.ReactionsOn(_group, message).Should().Equal(seen);
    }

    [Theory]
    [InlineData("✅", "GROUP/1")]
    [InlineData("👍", "GROUP/99")]
    [InlineData("👍", "-4100001/1")]
    [InlineData("👍", null)]
    public async Task A_mark_that_cannot_be_set_is_refused_and_nothing_sent_in_its_place(string mark, string? target)
    {
        _rig.Fake.Say(_group, TelegramRig.Ana, "Juniper is up");

        var result = await SendAsync(Post(mark) with { Kind = OutgoingKind.Mark, Target = target?.Replace("GROUP", $"{_group.Id}") });

        result.Should().BeOfType<SendResult.Refused>();
        _rig.Fake.Sent.Should().BeEmpty();
    }

    [Fact]
    public async Task What_is_meant_for_a_person_goes_to_them_privately()
    {
        _rig.Fake.Private(TelegramRig.Tom);
        _rig.Numbers["Tom"] = TelegramRig.Tom.Id;

        var result = await SendAsync(Post("You have Sage at 3:00.") with { ToPerson = "Tom", Target = Id(1) });

        _rig.Fake.Sent.Should().ContainSingle().Which.Chat.Should().Be(TelegramRig.Tom.Id);
        result.Should().Be(new SendResult.Sent($"{TelegramRig.Tom.Id}/1"));
    }

    [Fact]
    public async Task A_private_post_is_edited_where_it_stands()
    {
        _rig.Fake.Private(TelegramRig.Tom);
        _rig.Numbers["Tom"] = TelegramRig.Tom.Id;
        await SendAsync(Post("You have Sage at 3:00.") with { ToPerson = "Tom" });

        await SendAsync(Post("Ana has Sage at 3:00.", 2) with { Kind = OutgoingKind.Edit, Target = _rig.Fake.Sent[0].Id });

        _rig.Fake.TextOf(_rig.Fake.Sent[0]).Should().Be("Ana has Sage at 3:00.");
    }

    [Theory]
    [InlineData("NeverStarted")]
    [InlineData("Blocked")]
    [InlineData(null)]
    public async Task A_person_who_cannot_be_written_to_is_told_in_the_group(string? standing)
    {
        if (standing is not null)
        {
            _rig.Fake.Private(TelegramRig.Tom, Enum.Parse<BotStanding>(standing));
            _rig.Numbers["Tom"] = TelegramRig.Tom.Id;
        }

        var result = await SendAsync(Post("Tom, you have Sage at 3:00.") with { ToPerson = "Tom" });

        result.Should().BeOfType<SendResult.Sent>();
        _rig.Fake.Sent.Should().ContainSingle().Which.Chat.Should().Be(_group.Id);
    }

    private Task<SendResult> SendAsync(Outgoing outgoing) => _rig.Chat.SendAsync(outgoing);

    private Outgoing Post(string text, int number = 1) => TelegramReceiverTests.Post(_group, text, number);

    private string Id(int message) => $"{_group.Id}/{message}";

    private JsonObject Body() => _rig.Fake.Requests[^1].Body;
}

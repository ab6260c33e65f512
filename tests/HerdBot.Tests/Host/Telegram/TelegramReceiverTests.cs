using System.Text.Json.Nodes;
using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Support.FakeBotApi;
using Xunit;

namespace HerdBot.Tests.Host.Telegram;

public sealed class TelegramReceiverTests
{
    [Fact]
    public async Task What_is_said_is_taken_in_word_for_word()
    {
        await using var rig = await TelegramRig.StartAsync(receive: true);
        var group = rig.Fake.Group();

        rig.Fake.Say(group, TelegramRig.Ana, "Juniper had a boy 5:20, 17 lb <b>&amp;");
        var taken = await rig.TakenAsync(1);

        taken.Should().ContainSingle().Which.Should().BeOfType<Inbound.Line>().Which.Text.Should().Be("Juniper had a boy 5:20, 17 lb <b>&amp;");
        JsonNode.Parse(rig.Intake.Entries[0].Raw)!["message"]!["text"]!.GetValue<string>().Should().Be("Juniper had a boy 5:20, 17 lb <b>&amp;");
    }

    [Fact]
    public async Task Nothing_is_confirmed_before_it_is_stored()
    {
        await using var rig = await TelegramRig.StartAsync(receive: true);
        var stored = new TaskCompletionSource();
        rig.Intake.Hold = stored.Task;

        rig.Fake.Say(rig.Fake.Group(), TelegramRig.Ana, "Juniper is up");
        await rig.Intake.WaitForCallsAsync(1);
        var beforeStored = rig.Fake.Unconfirmed;
        stored.SetResult();
        await rig.Fake.WaitForAsync(fake => fake.Unconfirmed == 0);

        beforeStored.Should().Be(1);
        rig.Intake.Entries.Should().ContainSingle();
    }

    [Fact]
    public async Task A_process_that_dies_before_storing_gets_the_update_again()
    {
        await using var rig = await TelegramRig.StartAsync(receive: true);
        rig.Intake.Hold = new TaskCompletionSource().Task;
        rig.Fake.Say(rig.Fake.Group(), TelegramRig.Ana, "Juniper is up");
        await rig.Intake.WaitForCallsAsync(1);

        await rig.StopAsync();
        rig.Intake.Hold = Task.CompletedTask;
        await rig.ReceiveAsync(untilPolled: false);
        var taken = await rig.TakenAsync(1);

        taken.Should().ContainSingle().Which.Should().BeOfType<Inbound.Line>();
    }

    [Fact]
    public async Task A_disk_that_fails_costs_no_update()
    {
        var time = new HastyTime();
        await using var rig = await TelegramRig.StartAsync(time, receive: true);
        rig.Intake.Failing = 3;

        rig.Fake.Say(rig.Fake.Group(), TelegramRig.Ana, "Juniper is up");
        await rig.TakenAsync(1);
        await rig.Fake.WaitForAsync(fake => fake.Unconfirmed == 0);

        time.Pauses.Select(pause => pause.TotalSeconds).Should().Equal(1, 2, 4);
        rig.Log.Warnings.Should().HaveCount(3).And.OnlyContain(line => line.Contains("The disk is full"));
    }

    [Fact]
    public async Task Every_call_names_every_kind_so_that_a_stray_program_cannot_silence_the_buttons()
    {
        await using var rig = await TelegramRig.StartAsync(receive: true);
        var group = rig.Fake.Group();
        rig.Fake.Say(group, TelegramRig.Ana, "one");
        await rig.TakenAsync(1);

        var polls = rig.Fake.CallsOf("getUpdates");

        polls.Should().OnlyContain(poll => poll["allowed_updates"]!.AsArray().Select(kind => (string)kind!)
            .SequenceEqual(new[] { "message", "edited_message", "callback_query", "my_chat_member" }));
        polls.Should().OnlyContain(poll => (int)poll["timeout"]! == 50);
        rig.Fake.Allowed.Should().BeEquivalentTo(GetRawUpdates.Wanted);
    }

    [Fact]
    public async Task A_webhook_left_behind_is_taken_down_and_nothing_dropped()
    {
        await using var rig = await TelegramRig.StartAsync();
        rig.Fake.Webhook = "https://example.org/left";
        rig.Fake.Say(rig.Fake.Group(), TelegramRig.Ana, "said before the start");

        await rig.ReceiveAsync(untilPolled: false);
        await rig.TakenAsync(1);

        rig.Fake.Webhook.Should().BeNull();
        rig.Fake.CallsOf("deleteWebhook").Should().ContainSingle().Which["drop_pending_updates"].Should().BeNull();
    }

    [Fact]
    public async Task Numbers_that_jump_down_after_a_quiet_week_lose_nothing()
    {
        await using var rig = await TelegramRig.StartAsync(receive: true);
        var group = rig.Fake.Group();
        rig.Fake.Say(group, TelegramRig.Ana, "before");
        await rig.TakenAsync(1);
        await rig.Fake.WaitForAsync(fake => fake.Unconfirmed == 0 && fake.Polled);

        rig.Fake.CountUpdatesFrom(312);
        rig.Fake.Say(group, TelegramRig.Ana, "after");
        await rig.TakenAsync(2);
        await rig.Fake.WaitForAsync(fake => fake.Unconfirmed == 0 && fake.Polled);
        rig.Fake.Say(group, TelegramRig.Ana, "and on");
        var taken = await rig.TakenAsync(3);
        await rig.Fake.WaitForAsync(fake => fake.Unconfirmed == 0 && fake.Polled);

        taken.Cast<Inbound.Line>().Select(line => line.Text).Should().Equal("before", "after", "and on");
        rig.Fake.CallsOf("getUpdates").Select(poll => (long?)poll["offset"]).Should().Equal(null, 7002, 313, 314);
    }

    [Fact]
    public async Task A_message_that_comes_twice_under_two_numbers_is_kept_once()
    {
        await using var rig = await TelegramRig.StartAsync(receive: true);
        var group = rig.Fake.Group();

        var message = rig.Fake.Say(group, TelegramRig.Ana, "Juniper is up");
        rig.Fake.DeliverAgain(group, message);
        rig.Fake.Say(group, TelegramRig.Ana, "the end");
        await rig.TakenAsync(2);
        await rig.Fake.WaitForAsync(fake => fake.Unconfirmed == 0);

        rig.Intake.Entries.Should().HaveCount(2);
    }

    [Fact]
    public async Task An_update_nobody_understands_is_stored_and_holds_up_none_of_the_others()
    {
        await using var rig = await TelegramRig.StartAsync();
        var group = rig.Fake.Group();
        rig.Fake.Say(group, TelegramRig.Ana, "before");
        rig.Fake.Deliver("message", new JsonObject { ["message_id"] = "not a number", ["chat"] = 5 });
        rig.Fake.Deliver("comet_sighting", new JsonObject { ["tail"] = true });
        rig.Fake.Say(group, TelegramRig.Ana, "after");

        await rig.ReceiveAsync(untilPolled: false);
        await rig.Intake.WaitForAsync(4);
        await rig.Fake.WaitForAsync(fake => fake.Unconfirmed == 0);

        var poison = rig.Intake.Entries[1];
        var reading = () => rig.Inbound.Read(poison);
        reading.Should().Throw<FormatException>();
        rig.Inbound.Read(rig.Intake.Entries[2]).Should().BeNull();
        rig.Inbound.Read(rig.Intake.Entries[3]).Should().BeOfType<Inbound.Line>().Which.Text.Should().Be("after");
    }

    [Fact]
    public async Task A_press_is_stored_and_then_answered_at_once()
    {
        await using var rig = await TelegramRig.StartAsync(receive: true);
        var group = rig.Fake.Group();
        var sent = await rig.Chat.SendAsync(Post(group) with { Buttons = [new PostButton("Standing", "v1:up:7")] });
        var stored = new TaskCompletionSource();
        rig.Intake.Hold = stored.Task;

        var press = rig.Fake.Press(group, rig.Fake.Sent[0].MessageId, "v1:up:7", TelegramRig.Tom);
        await rig.Intake.WaitForCallsAsync(1);
        rig.Fake.Answered.Should().BeEmpty(because: "a press that is not stored yet may still be lost");
        stored.SetResult();
        await rig.Fake.WaitForAsync(fake => fake.Answered.Contains(press));
        var taken = await rig.TakenAsync(1);

        sent.Should().BeOfType<SendResult.Sent>();
        taken.Should().ContainSingle().Which.Should().BeOfType<Inbound.Tap>().Which.Data.Should().Be("v1:up:7");
    }

    [Fact]
    public async Task A_press_that_is_too_old_to_be_answered_counts_all_the_same()
    {
        await using var rig = await TelegramRig.StartAsync();
        var group = rig.Fake.Group();
        await rig.Chat.SendAsync(Post(group) with { Buttons = [new PostButton("Standing", "v1:up:7")] });
        rig.Fake.Press(group, rig.Fake.Sent[0].MessageId, "v1:up:7", TelegramRig.Tom);
        rig.Fake.Clock.Advance(TimeSpan.FromSeconds(100));

        await rig.ReceiveAsync(untilPolled: false);
        await rig.TakenAsync(1);
        await rig.Fake.WaitForAsync(fake => fake.Polled && fake.Unconfirmed == 0);

        rig.Fake.Answered.Should().BeEmpty();
        rig.Fake.CallsOf("answerCallbackQuery").Should().ContainSingle(because: "a refused answer is not tried again");
        rig.Log.Warnings.Should().BeEmpty();
    }

    [Fact]
    public async Task What_was_stored_is_confirmed_when_the_receiver_stops()
    {
        await using var rig = await TelegramRig.StartAsync(receive: true);
        var group = rig.Fake.Group();
        rig.Fake.Break("getUpdates", new Fault.Dropped());
        rig.Fake.Say(group, TelegramRig.Ana, "first");
        await rig.TakenAsync(1);
        // The poll that would confirm it never arrives.
        await rig.Fake.WaitForAsync(fake => fake.CallsOf("getUpdates").Count == 2);

        await rig.StopAsync();

        rig.Fake.CallsOf("getUpdates")[^1].ToJsonString().Should().Contain("\"offset\":7002").And.Contain("\"limit\":1");
        rig.Fake.Unconfirmed.Should().Be(0);
    }

    [Fact]
    public async Task The_command_menu_is_set_in_two_languages()
    {
        await using var rig = await TelegramRig.StartAsync(receive: true);

        rig.Fake.Commands.Should().HaveCount(2);
        rig.Fake.Commands[""].Should().Equal("open", "due", "help", "undo");
        rig.Fake.Commands["es"].Should().Equal("open", "due", "help", "undo");
    }

    [Fact]
    public async Task A_bot_that_cannot_read_the_group_says_so_at_the_start()
    {
        await using var rig = await TelegramRig.StartAsync();
        rig.Fake.ReadsAll = false;

        await rig.ReceiveAsync();

        rig.Log.Warnings.Should().ContainSingle().Which.Should().Contain("privacy mode is on");
    }

    [Fact]
    public async Task A_bot_that_reads_the_group_starts_without_a_warning()
    {
        await using var rig = await TelegramRig.StartAsync(receive: true);

        rig.Log.Warnings.Should().BeEmpty();
        rig.Presence.UserName.Should().Be("HerdTestBot");
        rig.Presence.HeardAt.Should().NotBeNull();
    }

    internal static Outgoing Post(FakeChat chat, string text = "Juniper's baby: up yet?", int number = 1) =>
        new(TelegramIds.GroupOf(chat.Id), number, OutgoingKind.Send, text);
}

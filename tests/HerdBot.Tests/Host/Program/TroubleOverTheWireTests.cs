using System.Text.Json.Nodes;
using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Tests.Support.FakeBotApi;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Host.Program;

/// <summary>What goes wrong between Telegram and the whole program.</summary>
public sealed class TroubleOverTheWireTests
{
    [Fact]
    public async Task What_falls_due_while_Telegram_wants_a_pause_is_posted_after_it_in_order_and_once()
    {
        await using var rig = await WithBirthAsync();
        var before = rig.Reminders.Count;
        rig.Fake.Break("sendMessage", new Fault.Error(429, "Too Many Requests", RetryAfter: 3000));

        await rig.RunForAsync(Duration.FromMinutes(45));
        var during = SentReminders(rig);
        var waiting = rig.Reminders.Skip(before).ToList();
        await rig.RunForAsync(Duration.FromMinutes(45));

        during.Should().HaveCount(before);
        waiting.Should().HaveCountGreaterThan(1);
        SentReminders(rig).Should().Equal(rig.Reminders.Select(post => post.Text));
        (await rig.HistoryAsync()).OfType<HerdEvent.PostSent>().Where(sent => waiting.Exists(post => post.Number == sent.Number)).Should()
            .HaveCount(waiting.Count).And.OnlyContain(sent => sent.At >= waiting[0].At + Duration.FromSeconds(3000));
    }

    [Fact]
    public async Task A_line_that_is_down_for_hours_delays_reminders_and_loses_none()
    {
        await using var rig = await WithBirthAsync();
        rig.Fake.Break("sendMessage", new Fault.Error(403, "Forbidden: bot was kicked from the supergroup chat"), times: 3);
        rig.Fake.Break("sendMessage", new Fault.Error(401, "Unauthorized"), times: 3);
        rig.Fake.Break("sendMessage", new Fault.Error(429, "Too Many Requests", RetryAfter: 7200));

        await rig.RunForAsync(Duration.FromHours(4));

        SentReminders(rig).Should().Equal(rig.Reminders.Select(post => post.Text)).And.HaveCountGreaterThan(3);
    }

    [Fact]
    public async Task A_post_whose_answer_was_lost_is_sent_once_more_and_says_so()
    {
        await using var rig = await WithBirthAsync();
        var before = rig.Reminders.Count;
        rig.Fake.Break("sendMessage", new Fault.AnswerLost());

        await rig.RunForAsync(Duration.FromMinutes(20));

        var first = rig.Reminders[before].Text;
        SentReminders(rig).Where(text => text.StartsWith(first, StringComparison.Ordinal)).Should().Equal(first, $"{first}\n(perhaps sent before)");
    }

    [Fact]
    public async Task Poison_in_the_middle_of_a_batch_is_set_aside_and_the_rest_is_worked_on()
    {
        await using var rig = await ProgramRig.StartAsync();
        await rig.CutAsync();
        var before = rig.Fake.Say(rig.Group, ProgramRig.Ana, "Juniper is pacing");
        rig.Fake.Deliver("message", JsonValue.Create("not even an object"));
        rig.Fake.Say(rig.Group, ProgramRig.Ana, message => message["text"] = new JsonArray(1, 2, 3));
        rig.Fake.SetMember(rig.Group, ProgramRig.Ana, BotStanding.Member);
        rig.Fake.Deliver("my_chat_member", JsonNode.Parse("""{"chat": {"id": -7, "type": "group"}, "from": {"id": 1, "first_name": "X"}, "date": 1, "new_chat_member": {"status": "halfmember"}}""")!);
        rig.Fake.Deliver("a_kind_of_tomorrow", new JsonObject { ["what"] = 1 });
        var after = rig.Fake.Say(rig.Group, ProgramRig.Ben, "Hazel is calm");

        await rig.BootAsync();
        var later = await rig.SayAsync("Hazel is still calm");

        (await rig.HistoryAsync()).OfType<HerdEvent.LineHeard>().Select(line => line.Message).Should()
            .Equal(new[] { before, after, later }.Select(message => $"{rig.Group.Id}/{message}"));
        rig.Fake.Unconfirmed.Should().Be(0);
        (await rig.Life.Store.ReadWaitingAsync()).Should().BeEmpty();
        (await rig.Life.Store.ReadGroupAsync(Pipeline.Aside)).Count(stored => (string?)JsonNode.Parse(stored.Commit.Events[0].Data)!["why"] is { Length: > 0 }).Should().Be(3);
        rig.Log.Warnings.Should().Contain(line => line.Contains("set aside", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_same_update_three_times_is_one_record_and_one_reply_also_across_a_power_cut()
    {
        await using var rig = await ProgramRig.StartAsync();
        var message = await rig.SayAsync("/help");
        rig.Fake.DeliverAgain(rig.Group, message);
        await rig.Life.SettleAsync();
        await rig.CutAsync();
        rig.Fake.DeliverAgain(rig.Group, message);
        await rig.BootAsync();

        (await rig.HistoryAsync()).OfType<HerdEvent.LineHeard>().Should().ContainSingle();
        rig.SentTo(rig.Group).Where(post => post.ReplyTo == message).Should().ContainSingle();
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Reminders_follow_a_group_that_becomes_a_supergroup(bool told)
    {
        await using var rig = await WithBirthAsync();
        await rig.RunForAsync(Duration.FromMinutes(20));
        var before = SentReminders(rig).Count;

        var next = rig.Fake.Migrate(rig.Group, ProgramRig.Ana, told);
        await rig.Life.SettleAsync();
        await rig.RunForAsync(Duration.FromHours(1));
        rig.Fake.Say(next, ProgramRig.Ana, "Juniper's baby is standing");
        await rig.Life.SettleAsync();

        before.Should().BePositive();
        SentReminders(rig).Should().HaveCount(before, "nothing more goes to where nobody is");
        rig.SentTo(next).Where(post => post.ReplyTo is null).Select(post => post.Text).Should()
            .Equal(rig.Reminders.Skip(before).Select(post => post.Text)).And.NotBeEmpty();
        (await rig.HistoryAsync()).OfType<HerdEvent.FactRecorded>().Should().Contain(recorded => recorded.Fact.Kind == FactKind.Standing, "it is the same history");
    }

    [Fact]
    public async Task Voice_notes_are_asked_to_be_dictated_once_an_hour_at_most()
    {
        await using var rig = await ProgramRig.StartAsync();
        foreach (var pause in new[] { 0, 10, 30, 25 })
        {
            await rig.RunForAsync(Duration.FromMinutes(pause));
            rig.Fake.Say(rig.Group, ProgramRig.Ben, message => message["voice"] = new JsonObject { ["file_id"] = "v", ["duration"] = 3 });
            await rig.Life.SettleAsync();
        }

        rig.SentTo(rig.Group).Where(post => post.Text.Contains("dictate", StringComparison.Ordinal)).Should().HaveCount(2);
        (await rig.HistoryAsync()).OfType<HerdEvent.WordlessHeard>().Should().HaveCount(4);
    }

    [Fact]
    public async Task A_button_pressed_twice_is_one_record_and_both_presses_are_answered()
    {
        await using var rig = await WithBirthAsync();
        FakePost Asked() => rig.SentTo(rig.Group).Last(post => post.ButtonData.Any(data => data.StartsWith("1|0|", StringComparison.Ordinal)));
        await rig.RunForAsync(Duration.FromMinutes(31));
        var done = Asked().ButtonData.First(data => data.StartsWith("1|0|", StringComparison.Ordinal));

        var presses = new[] { ProgramRig.Ana, ProgramRig.Ben }.Select(person => rig.Fake.Press(rig.Group, Asked().MessageId, done, person)).ToList();
        await rig.Life.SettleAsync();

        rig.Fake.Answered.Should().BeEquivalentTo(presses, "each press is answered once; the answers travel side by side, in no promised order");
        var history = await rig.HistoryAsync();
        history.OfType<HerdEvent.ButtonPressed>().Should().HaveCount(2);
        history.OfType<HerdEvent.FactRecorded>().Where(recorded => recorded.SaidAt > rig.Start).Should().ContainSingle().Which.By.Should().Be("Ana");
        rig.Fake.TextOf(Asked()).Should().Contain("Ana");
    }

    [Fact]
    public async Task No_log_line_of_a_troubled_day_holds_the_token()
    {
        await using var rig = await WithBirthAsync();
        rig.Fake.Break("sendMessage", new Fault.Html(502));
        rig.Fake.Break("sendMessage", new Fault.Error(401, "Unauthorized"));
        rig.Fake.Break("getUpdates", new Fault.Dropped(), times: 2);
        rig.Fake.Break("getUpdates", new Fault.HalfAnswer());

        rig.Fake.Say(rig.Group, ProgramRig.Ana, "/help");
        await rig.RunForAsync(Duration.FromHours(2));

        rig.Log.Warnings.Should().NotBeEmpty();
        rig.Log.Text.Should().NotContainEquivalentOf(rig.Fake.Token.Split(':')[1]);
    }

    private static async Task<ProgramRig> WithBirthAsync()
    {
        var rig = await ProgramRig.PrepareAsync();
        await rig.RecordBirthAsync("Juniper", rig.Start);
        await rig.BootAsync();
        await rig.MoveInAsync();
        return rig;
    }

    /// <summary>What the group got of its own accord: no replies, no words of the door.</summary>
    private static List<string> SentReminders(ProgramRig rig) =>
        [.. rig.SentTo(rig.Group).Where(post => post.ReplyTo is null).Select(post => post.Text).Where(text => !text.StartsWith("I keep the birth log", StringComparison.Ordinal))];
}

using FluentAssertions;
using HerdBot.Core.Events;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Support.FakeBotApi;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Host.Program;

/// <summary>Who is heard, by the whole program.</summary>
public sealed class AccessOverTheWireTests
{
    [Fact]
    public async Task The_owner_is_known_by_the_code_and_the_bot_starts_in_the_group_they_add_it_to()
    {
        await using var rig = await ProgramRig.StartAsync();

        await rig.SayAsync("Juniper is pacing");

        rig.SentTo(rig.Home).Select(post => post.Text).Should().Equal("You are the owner now. Add me to the farm's group and I start there.");
        rig.SentTo(rig.Group)[0].Text.Should().StartWith("I keep the birth log here.");
        (await rig.HistoryAsync()).OfType<HerdEvent.LineHeard>().Should().ContainSingle().Which.Text.Should().Be("Juniper is pacing");
    }

    [Fact]
    public async Task An_unapproved_group_gets_one_polite_line_and_nothing_else()
    {
        await using var rig = await ProgramRig.StartAsync();
        var stranger = new FakePerson(999, "Rolf");
        var other = rig.Fake.Group("Somewhere else");
        rig.Fake.Add(other, stranger);
        await rig.Life.SettleAsync();

        foreach (var text in new[] { "hello?", "/help", "Juniper had a girl 6:40, 24 lb" })
        {
            rig.Fake.Say(other, stranger, text);
            await rig.Life.SettleAsync();
        }
        rig.Fake.Say(other, stranger, message => message["voice"] = new System.Text.Json.Nodes.JsonObject { ["file_id"] = "v", ["duration"] = 3 });
        await rig.Life.SettleAsync();
        await rig.RunForAsync(Duration.FromHours(30));

        rig.SentTo(other).Select(post => post.Text).Should().Equal("Nothing is recorded here until the farm's owner agrees.");
        rig.SentTo(rig.Home)[^1].Text.Should().Be("May I work in 'Somewhere else'? Brought there by Rolf. Until you say so I record nothing.");
        (await rig.Life.Store.ReadGroupAsync(TelegramIds.GroupOf(other.Id))).Should().BeEmpty();
    }

    [Fact]
    public async Task A_group_the_owner_approves_by_button_is_worked_in_from_then_on_also_after_a_power_cut()
    {
        await using var rig = await ProgramRig.StartAsync();
        var other = rig.Fake.Group("North barn");
        rig.Fake.Add(other, ProgramRig.Ben);
        await rig.Life.SettleAsync();
        var question = rig.SentTo(rig.Home)[^1];

        rig.Fake.Press(rig.Home, question.MessageId, question.ButtonData[0], ProgramRig.Ana);
        await rig.Life.SettleAsync();
        await rig.CutAsync();
        await rig.BootAsync();
        rig.Fake.Say(other, ProgramRig.Ben, "/help");
        await rig.Life.SettleAsync();

        rig.SentTo(rig.Home)[^1].Text.Should().Be("I work in 'North barn' from now on.");
        rig.SentTo(other).Should().HaveCount(3, "it waits, it begins, it helps");
    }

    [Fact]
    public async Task A_group_is_watched_over_from_the_moment_it_is_approved_not_from_its_first_message()
    {
        await using var rig = await ProgramRig.PrepareAsync();
        await rig.RecordBirthAsync("Juniper", rig.Start);
        await rig.BootAsync();
        await rig.MoveInAsync();

        await rig.RunForAsync(Duration.FromHours(2));

        rig.Reminders.Should().NotBeEmpty();
    }
}

using FluentAssertions;
using HerdBot.Tests.Host.Program;
using HerdBot.Tests.Support.FakeBotApi;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Host.Health;

/// <summary>The watchman over the wire: what was lost in a long gap, and what does not get through.</summary>
public sealed class WatchmanTests
{
    [Theory]
    [InlineData(19, 0)]
    [InlineData(21, 1)]
    public async Task After_a_gap_longer_than_Telegram_remembers_the_group_is_asked_once_to_send_again(int hours, int asked)
    {
        await using var rig = await ProgramRig.StartAsync();
        await rig.Life.Watchman.LookAsync();
        await rig.CutAsync();
        rig.Clock.Advance(TimeSpan.FromHours(hours));

        await rig.BootAsync();
        await rig.Life.Watchman.LookAsync();
        await rig.Life.Watchman.LookAsync();
        await rig.Life.SettleAsync();

        rig.SentTo(rig.Group).Where(post => post.Text.Contains("please send it again", StringComparison.Ordinal)).Should().HaveCount(asked);
    }

    [Fact]
    public async Task The_owner_is_told_in_private_what_does_not_get_through_since_when_and_why_and_when_it_does_again()
    {
        await using var rig = await ProgramRig.PrepareAsync();
        await rig.RecordBirthAsync("Juniper", rig.Start);
        await rig.BootAsync();
        await rig.MoveInAsync();
        var (told, before) = (rig.SentTo(rig.Home).Count, rig.SentTo(rig.Group).Count);
        rig.Group.Standing = BotStanding.Muted;

        await rig.RunForAsync(Duration.FromMinutes(40));
        await LookAsync(rig);
        await LookAsync(rig);
        var during = rig.SentTo(rig.Home).Skip(told).Select(post => post.Text).ToList();
        rig.Group.Standing = BotStanding.Member;
        await rig.RunForAsync(Duration.FromMinutes(10));
        await LookAsync(rig);

        during.Should().ContainSingle().Which.Should().Match("Nothing of mine gets through to 'Juniper Hollow' since 6:*not enough rights*posts wait*");
        rig.SentTo(rig.Home)[^1].Text.Should().Be("My posts get through to 'Juniper Hollow' again.");
        rig.SentTo(rig.Group).Count.Should().BeGreaterThan(before, "what was due meanwhile has come");
        rig.State.Unsent.Should().BeEmpty();
    }

    private static async Task LookAsync(ProgramRig rig)
    {
        await rig.Life.Watchman.LookAsync();
        await rig.Life.SettleAsync();
    }
}

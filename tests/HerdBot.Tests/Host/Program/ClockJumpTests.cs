using FluentAssertions;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Host.Program;

/// <summary>A machine that sleeps.</summary>
public sealed class ClockJumpTests
{
    [Theory]
    [InlineData(2)]
    [InlineData(9)]
    public async Task A_clock_that_jumps_ahead_delivers_what_fell_due_once(int hours)
    {
        await using var rig = await ProgramRig.PrepareAsync();
        await rig.RecordBirthAsync("Juniper", rig.Start);
        await rig.BootAsync();
        await rig.MoveInAsync();

        rig.Clock.Advance(TimeSpan.FromHours(hours));
        await Task.WhenAll(rig.Life.Pipeline.LookAsync(), rig.Life.Pipeline.LookAsync());
        await rig.Life.SettleAsync();

        var told = rig.Reminders.Where(post => post.At > rig.Start + Duration.FromMinutes(30)).SelectMany(post => post.Tasks.Select(task => (task.Key, task.Step))).ToList();
        told.Should().NotBeEmpty().And.OnlyHaveUniqueItems();
        rig.State.Unsent.Should().BeEmpty();
        rig.SentTo(rig.Group).Select(post => post.Text).Should().OnlyHaveUniqueItems();
    }
}

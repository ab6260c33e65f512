using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.App.Messages;

/// <summary>Groups send side by side.</summary>
public sealed class SendLanesTests
{
    private readonly List<Instant?> goOn = [];
    private readonly TaskCompletionSource<Exception> failed = new();
    private readonly SendLanes lanes;

    public SendLanesTests() => lanes = new SendLanes(at =>
    {
        lock (goOn)
        {
            goOn.Add(at);
        }
        return Task.CompletedTask;
    }, fault => failed.TrySetResult(fault));

    [Fact]
    public async Task A_chat_that_does_not_answer_holds_up_no_other()
    {
        var (stuck, other) = (new TaskCompletionSource<Instant?>(), new TaskCompletionSource());
        lanes.Send(new GroupId("stuck"), () => stuck.Task);
        lanes.Send(new GroupId("other"), () =>
        {
            other.SetResult();
            return Task.FromResult<Instant?>(null);
        });

        await other.Task;
        stuck.SetResult(null);
        await lanes.QuietAsync();
    }

    [Fact]
    public async Task Asked_while_it_sends_a_group_goes_on_once_more_and_never_twice_at_once()
    {
        var (runs, atOnce, most) = (0, 0, 0);
        var first = new TaskCompletionSource();
        async Task<Instant?> SendAsync()
        {
            most = Math.Max(most, Interlocked.Increment(ref atOnce));
            runs++;
            await first.Task;
            Interlocked.Decrement(ref atOnce);
            return null;
        }

        for (var n = 0; n < 20; n++)
        {
            lanes.Send(new GroupId("farm"), SendAsync);
        }
        first.SetResult();
        await lanes.QuietAsync();

        most.Should().Be(1);
        runs.Should().BeInRange(1, 2, "what was asked while it ran is one more run");
    }

    [Fact]
    public async Task The_earliest_pause_of_all_groups_is_told()
    {
        var (soon, late) = (Desk.Dawn + Duration.FromSeconds(1), Desk.Dawn + Duration.FromHours(1));
        lanes.Send(new GroupId("late"), () => Task.FromResult<Instant?>(late));
        await lanes.QuietAsync();
        lanes.Send(new GroupId("soon"), () => Task.FromResult<Instant?>(soon));
        await lanes.QuietAsync();

        goOn.Should().Equal(late, soon);
    }

    [Fact]
    public async Task A_fault_is_told()
    {
        lanes.Send(new GroupId("farm"), () => Task.FromException<Instant?>(new InvalidDataException("odd")));

        (await failed.Task).Should().BeOfType<InvalidDataException>();
    }
}

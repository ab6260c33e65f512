using FluentAssertions;
using HerdBot.App.Ports;
using HerdBot.Host.LiteDb;
using HerdBot.Tests.Support.StoreContract;
using HerdBot.Tests.Support.StoreDisk;
using Xunit;

namespace HerdBot.Tests.Host.LiteDb;

/// <summary>A full disk, a torn-out cable: from some write on, every one throws.</summary>
public sealed class FailingDiskTests
{
    private static readonly Commit Earlier = SomeStored.Commit(0, "earlier");
    private static readonly Commit Hit = SomeStored.Commit(1, "hit", null, "{\"n\":1}", new string('d', 30_000), "{\"n\":3}");

    [Fact]
    public async Task A_commit_hit_by_a_failing_disk_is_of_unknown_outcome_and_then_there_whole_or_not_at_all()
    {
        var (there, missing) = (0, 0);
        for (var operations = 1; await DiskThatFailsAsync(operations) is { } disk; operations++)
        {
            await using var reopened = LiteDbHerdStore.Open(disk.Data, disk.Log);
            var stored = await reopened.ReadAllAsync();

            if (stored.Length == 1)
            {
                stored.ShouldBe(SomeStored.Stored(1, Earlier));
                (await reopened.AppendAsync(Hit)).Should().BePositive("asked again with the same key, it is written now");
                missing++;
            }
            else
            {
                stored.ShouldBe(SomeStored.Stored(1, Earlier), SomeStored.Stored(2, Hit));
                var again = () => reopened.AppendAsync(Hit);
                await again.Should().ThrowAsync<StoreDuplicateException>("asked again with the same key, it is found");
                there++;
            }
        }

        missing.Should().BePositive();
        there.Should().BePositive("the last sync may fail after the flag was written");
    }

    [Fact]
    public async Task A_store_that_has_failed_says_so_and_takes_nothing_more()
    {
        var disk = NewDisk();
        await using var store = LiteDbHerdStore.Open(disk.Data, disk.Log);
        store.Faulted.IsCompleted.Should().BeFalse();
        disk.WorkFor(1);

        await ShouldBeUnknownAsync(() => store.AppendAsync(Earlier));

        (await store.Faulted).InnerException.Should().BeOfType<IOException>();
        disk.WorkFor(int.MaxValue);
        await ShouldBeUnknownAsync(() => store.AppendAsync(Earlier));
        await ShouldBeUnknownAsync(() => store.TakeInAsync(SomeStored.Entry("u1")));
        await ShouldBeUnknownAsync(() => store.ReadAllAsync());
        await ShouldBeUnknownAsync(() => store.HeadPositionAsync());
    }

    [Fact]
    public async Task All_that_were_in_flight_together_share_the_outcome()
    {
        var disk = NewDisk();
        await using var store = LiteDbHerdStore.Open(disk.Data, disk.Log);
        disk.WorkFor(30);

        var outcomes = await AppendAtOnceAsync(store, 400);

        outcomes.Where(o => o is not null).Should().NotBeEmpty().And.AllBeOfType<StoreOutcomeUnknownException>();
        disk = disk.CutPower();
        await using var reopened = LiteDbHerdStore.Open(disk.Data, disk.Log);
        (await reopened.ReadAllAsync()).Length.Should().BeGreaterThanOrEqualTo(outcomes.Count(o => o is null));
    }

    // LiteDB 5.0.21 leaves transactions to the finalizer when a write throws inside its commit, and there it throws again.
    [Fact]
    public async Task The_process_outlives_what_a_failed_store_leaves_to_the_finalizer()
    {
        var operations = 0;
        Exception?[] outcomes;
        do
        {
            var disk = NewDisk();
            await using var store = LiteDbHerdStore.Open(disk.Data, disk.Log);
            disk.WorkFor(++operations);
            outcomes = await AppendAtOnceAsync(store, 64);
        }
        while (outcomes.Any(outcome => outcome is not null));

        operations.Should().BeGreaterThan(5, "each write and each sync of a transaction has failed once");
        for (var round = 0; round < 3; round++)
        {
            GC.Collect();
            GC.WaitForPendingFinalizers();
        }
    }

    private static Task<Exception?[]> AppendAtOnceAsync(LiteDbHerdStore store, int count) => Task.WhenAll(Enumerable.Range(0, count)
        .Select(n => Record.ExceptionAsync(() => store.AppendAsync(SomeStored.Commit(n, $"k{n}"))).AsTask()));

    // Null where the commit needed fewer operations than that.
    private static async Task<SimulatedDisk?> DiskThatFailsAsync(int operations)
    {
        var disk = NewDisk();
        await using var store = LiteDbHerdStore.Open(disk.Data, disk.Log);
        await store.AppendAsync(Earlier);
        disk.WorkFor(operations);
        var answer = await Record.ExceptionAsync(() => store.AppendAsync(Hit));
        await store.DisposeAsync();
        disk.WorkFor(int.MaxValue);
        answer?.Should().BeOfType<StoreOutcomeUnknownException>();
        return answer is null ? null : disk;
    }

    private static async Task ShouldBeUnknownAsync(Func<Task> call) =>
        await call.Should().ThrowAsync<StoreOutcomeUnknownException>();

    private static SimulatedDisk NewDisk() => new(Survival.Prefix, new Chance(1), HerdDatabase.Empty(), []);
}

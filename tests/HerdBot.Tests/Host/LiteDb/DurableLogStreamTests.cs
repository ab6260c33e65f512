using FluentAssertions;
using HerdBot.Host.LiteDb;
using HerdBot.Tests.Support.StoreContract;
using HerdBot.Tests.Support.StoreDisk;
using LiteDB;
using LiteDB.Engine;
using Xunit;

namespace HerdBot.Tests.Host.LiteDb;

public sealed class DurableLogStreamTests
{
    [Fact]
    public async Task A_single_commit_costs_two_syncs()
    {
        var disk = NewDisk();
        await using var store = LiteDbHerdStore.Open(disk.Data, disk.Log);
        for (var version = 0; version < 20; version++)
        {
            var before = disk.Syncs;

            await store.AppendAsync(SomeStored.Commit(version, $"k{version}"));

            (disk.Syncs - before).Should().Be(2);
        }
    }

    [Fact]
    public async Task An_entry_taken_in_costs_two_syncs_and_a_known_one_none()
    {
        var disk = NewDisk();
        await using var store = LiteDbHerdStore.Open(disk.Data, disk.Log);
        var before = disk.Syncs;

        await store.TakeInAsync(SomeStored.Entry("u1"));
        await store.TakeInAsync(SomeStored.Entry("u1"));

        (disk.Syncs - before).Should().Be(2);
    }

    [Fact]
    public async Task What_comes_while_the_disk_is_busy_shares_the_next_two_syncs()
    {
        var disk = NewDisk();
        await using var store = LiteDbHerdStore.Open(disk.Data, disk.Log);
        await store.AppendAsync(SomeStored.Commit(0, "first"));
        var before = disk.Syncs;
        disk.Gate.Reset();
        var busy = store.AppendAsync(SomeStored.Commit(1, "busy"));
        await disk.AtTheGate;
        var waiting = Enumerable.Range(2, 64).Select(n => store.AppendAsync(SomeStored.Commit(n, $"k{n}"))).ToList();
        waiting.Should().OnlyContain(call => !call.IsCompleted);
        disk.Gate.Set();
        await Task.WhenAll([busy, .. waiting]);

        (disk.Syncs - before).Should().Be(2 + 2);
    }

    [Fact]
    public void LiteDB_writes_whole_pages_and_flags_the_last_of_each_transaction_where_we_look()
    {
        using var log = new MemoryStream();
        using var engine = new LiteEngine(new EngineSettings { DataStream = new MemoryStream(), LogStream = log });
        for (var id = 1; id <= 50; id++)
        {
            var before = log.Length;

            engine.Insert("anything", [new BsonDocument { ["_id"] = id, ["text"] = new string('x', 300 * id) }], BsonAutoId.Int32);

            var pages = log.ToArray()[(int)before..].Chunk(DurableLogStream.PageBytes).ToList();
            pages.Should().OnlyContain(page => page.Length == DurableLogStream.PageBytes);
            pages.Select(page => page[DurableLogStream.ConfirmFlagAt]).Should().Equal([.. new byte[pages.Count - 1], 1]);
        }
    }

    [Fact]
    public void The_page_that_confirms_is_on_the_disk_without_its_flag_before_it_gets_it()
    {
        var disk = NewDisk();
        var guard = new WriteGuard();
        guard.Open();
        using var log = new DurableLogStream(disk.Log, guard);
        var page = Enumerable.Repeat((byte)7, DurableLogStream.PageBytes).ToArray();
        page[DurableLogStream.ConfirmFlagAt] = 1;
        disk.WorkFor(3); // the page, its sync, and the flag: that fails

        log.Write(page, 0, page.Length);

        page[DurableLogStream.ConfirmFlagAt] = 0;
        disk.Log.OnDisk.ToArray().Should().Equal(page);
        guard.Failure.Should().BeOfType<IOException>();
        log.Position.Should().Be(page.Length);
    }

    private static SimulatedDisk NewDisk() => new(Survival.Prefix, new Chance(1), HerdDatabase.Empty(), []);
}

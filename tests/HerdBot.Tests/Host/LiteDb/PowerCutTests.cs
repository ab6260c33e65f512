using FluentAssertions;
using HerdBot.Host.LiteDb;
using HerdBot.Tests.Support.StoreContract;
using HerdBot.Tests.Support.StoreDisk;
using LiteDB;
using LiteDB.Engine;
using Xunit;

namespace HerdBot.Tests.Host.LiteDb;

public sealed class PowerCutTests(ITestOutputHelper output)
{
    private const int Files = 12;
    private const int CutsPerFile = 3;
    private const int MostOperations = 500;

    // The log goes into the data file every 40 pages instead of 1,000, so that many cuts fall into that.
    private static readonly byte[] Empty = EmptyWithCheckpointEvery(pages: 40);

    [Theory]
    [InlineData(nameof(Survival.Prefix))]
    [InlineData(nameof(Survival.Subset))]
    [InlineData(nameof(Survival.Torn))]
    public async Task Nothing_acknowledged_is_lost_when_the_power_goes(string survival)
    {
        var acknowledged = 0;
        for (ulong seed = 1; seed <= Files; seed++)
        {
            var chance = new Chance(seed);
            var run = new PowerCutRun(chance);
            var disk = new SimulatedDisk(Enum.Parse<Survival>(survival), new Chance(~seed), Empty, []);
            for (var cut = 0; cut < CutsPerFile; cut++)
            {
                disk = await OneLifeAsync(run, disk, chance);
                disk = chance.OneIn(3) ? await OneLifeAsync(run, disk, chance, killed: true) : disk;
            }

            acknowledged += run.Acknowledged;
        }

        acknowledged.Should().BeGreaterThan(Files * CutsPerFile, "cuts that come before anything was written show nothing");
        output.WriteLine($"{survival}: {Files * CutsPerFile} cuts, {acknowledged} acknowledged, none lost");
    }

    [Fact]
    public async Task What_a_reopened_store_has_shown_once_is_still_there_after_a_power_cut()
    {
        var unsure = 0;
        for (ulong seed = 1; seed <= 60; seed++)
        {
            var disk = new SimulatedDisk(Survival.Subset, new Chance(seed), Empty, []);
            var killed = LiteDbHerdStore.Open(disk.Data, disk.Log);
            disk.WorkFor((int)seed % 12);
            var answer = await Xunit.Record.ExceptionAsync(() => killed.AppendAsync(SomeStored.Commit(0, "a")));
            await killed.DisposeAsync();
            disk.WorkFor(int.MaxValue);

            var shown = await HeadOfAsync(disk);
            var kept = await HeadOfAsync(disk.CutPower());

            kept.Should().Be(shown);
            unsure += answer is not null && shown == 1 ? 1 : 0;
        }

        unsure.Should().BePositive("the kill must fall between writing and syncing at times");
    }

    [Theory]
    [InlineData(nameof(Survival.Prefix))]
    [InlineData(nameof(Survival.Subset))]
    [InlineData(nameof(Survival.Torn))]
    public void The_same_disk_takes_acknowledged_documents_from_stock_LiteDB(string survival)
    {
        var (acknowledged, lost, unreadable) = (0, 0, 0);
        for (ulong seed = 1; seed <= Files; seed++)
        {
            var chance = new Chance(seed);
            var disk = new SimulatedDisk(Enum.Parse<Survival>(survival), chance, Empty, []);
            disk.WorkFor(1 + chance.Below(MostOperations));
            var written = InsertUntilDark(disk);
            var found = TryCount(disk.CutPower());
            acknowledged += written;
            lost += Math.Max(0, written - (found ?? 0));
            unreadable += found is null ? 1 : 0;
        }

        output.WriteLine($"{survival}: {Files} cuts, {acknowledged} acknowledged, {lost} lost, {unreadable} files unreadable altogether");
        lost.Should().BePositive("a simulator that can't take anything away proves nothing");
    }

    private static async Task<SimulatedDisk> OneLifeAsync(PowerCutRun run, SimulatedDisk disk, Chance chance, bool killed = false)
    {
        var store = LiteDbHerdStore.Open(disk.Data, disk.Log);
        disk.WorkFor(1 + chance.Below(MostOperations));
        await run.WriteUntilDarkAsync(store);
        await store.DisposeAsync();
        disk.WorkFor(int.MaxValue);
        disk = killed ? disk : disk.CutPower();
        var reopened = LiteDbHerdStore.Open(disk.Data, disk.Log);
        await run.CheckAsync(reopened);
        reopened.Abandon();
        return disk;
    }

    private static async Task<long> HeadOfAsync(SimulatedDisk disk)
    {
        var store = LiteDbHerdStore.Open(disk.Data, disk.Log);
        var head = await store.HeadPositionAsync();
        store.Abandon();
        return head;
    }

    private static int InsertUntilDark(SimulatedDisk disk)
    {
        var guard = new WriteGuard();
        guard.Open();
        using var engine = new LiteEngine(Plain(new GuardedStream(disk.Data, guard), new GuardedStream(disk.Log, guard)));
        var written = 0;
        try
        {
            while (disk.IsWorking)
            {
                engine.Insert("commits", [new BsonDocument { ["_id"] = written + 1, ["g"] = "g", ["k"] = $"k{written}", ["d"] = new string('d', 400) }], BsonAutoId.Int32);
                written += disk.IsWorking ? 1 : 0;
            }
        }
        catch (IOException) when (!disk.IsWorking)
        {
            // It noticed; what it acknowledged before counts.
        }

        return written;
    }

    private static int? TryCount(SimulatedDisk disk)
    {
        try
        {
            using var engine = new LiteEngine(Plain(disk.Data, disk.Log));
            using var reader = engine.Query("commits", new Query());
            var count = 0;
            while (reader.Read())
            {
                count++;
            }

            return count;
        }
        catch (Exception damage) when (damage is not OutOfMemoryException)
        {
            return null;
        }
    }

    private static EngineSettings Plain(Stream data, Stream log) => new() { DataStream = data, LogStream = log, Collation = Collation.Binary };

    private static byte[] EmptyWithCheckpointEvery(int pages)
    {
        using var data = new MemoryStream();
        data.Write(HerdDatabase.Empty());
        using (var engine = new LiteEngine(Plain(data, new MemoryStream())))
        {
            engine.Pragma("CHECKPOINT", pages);
        }

        return data.ToArray();
    }
}

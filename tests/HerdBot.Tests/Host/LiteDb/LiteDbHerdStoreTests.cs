using FluentAssertions;
using HerdBot.App.Ports;
using HerdBot.Host.LiteDb;
using HerdBot.Tests.Support.StoreContract;
using Xunit;

namespace HerdBot.Tests.Host.LiteDb;

public sealed class LiteDbHerdStoreTests : IDisposable
{
    private readonly StoreFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Reopening_keeps_all_whether_closed_or_cut_off(bool closed)
    {
        var handled = SomeStored.Commit(0, "u1", null, " {\"n\":1} ", "\0🦙");
        var other = SomeStored.Commit(0, "other", new GroupId("highfield"));
        var store = LiteDbHerdStore.Open(_folder.DataFile);
        await store.TakeInAsync(SomeStored.Entry("u1"));
        await store.TakeInAsync(SomeStored.Entry("u2"));
        await store.AppendAsync(handled);
        await store.AppendAsync(other);

        await EndAsync(store, closed);

        await using var reopened = LiteDbHerdStore.Open(_folder.DataFile);
        (await reopened.ReadAllAsync()).ShouldBe(SomeStored.Stored(1, handled), SomeStored.Stored(2, other));
        (await reopened.ReadGroupsAsync()).Should().Equal(handled.Group, other.Group);
        (await reopened.ReadWaitingAsync()).Should().Equal(SomeStored.Entry("u2"));
        (await reopened.HeadPositionAsync()).Should().Be(2);
    }

    [Fact]
    public async Task A_reopened_store_goes_on_where_it_stopped()
    {
        await EndAsync(await FilledAsync(), closed: true);
        await using var reopened = LiteDbHerdStore.Open(_folder.DataFile);
        var repeated = () => reopened.AppendAsync(SomeStored.Commit(0, "a"));
        var stale = () => reopened.AppendAsync(SomeStored.Commit(0, "c"));

        await repeated.Should().ThrowAsync<StoreDuplicateException>();
        await stale.Should().ThrowAsync<StoreConflictException>();
        (await reopened.TakeInAsync(SomeStored.Entry("u1"))).Should().BeFalse();
        (await reopened.TakeInAsync(SomeStored.Entry("u3"))).Should().BeTrue();
        (await reopened.AppendAsync(SomeStored.Commit(2, "c"))).Should().BeGreaterThan(2);
        (await reopened.ReadWaitingAsync()).Select(e => e.Key).Should().Equal("u1", "u3");
    }

    [Fact]
    public async Task Past_many_checkpoints_all_is_still_there()
    {
        var store = LiteDbHerdStore.Open(_folder.DataFile);
        var commits = Enumerable.Range(0, 1000).Select(n => SomeStored.Commit(n, $"k{n}", null, new string('d', 1500))).ToArray();

        foreach (var chunk in commits.Chunk(5))
        {
            await Task.WhenAll(chunk.Select(commit => store.AppendAsync(commit)));
        }

        new FileInfo(_folder.DataFile).Length.Should().BeGreaterThan(1_000_000, "the log has gone into the data file meanwhile");
        await EndAsync(store, closed: false);
        await using var reopened = LiteDbHerdStore.Open(_folder.DataFile);
        (await reopened.ReadAllAsync()).ShouldBe([.. commits.Select((commit, n) => SomeStored.Stored(n + 1, commit))]);
    }

    [Fact]
    public async Task Calls_in_flight_when_the_power_is_cut_are_answered()
    {
        var store = LiteDbHerdStore.Open(_folder.DataFile);
        var calls = Enumerable.Range(0, 2000).Select(n => Task.Run(() => OutcomeOf(store, n))).ToList();
        await Task.WhenAny(calls);

        store.Abandon();

        var outcomes = await Task.WhenAll(calls);
        outcomes.Where(o => o is not (null or StoreOutcomeUnknownException)).Should().BeEmpty();
        store.Faulted.IsCompleted.Should().BeFalse("it was asked to stop");
        await using var reopened = LiteDbHerdStore.Open(_folder.DataFile);
        (await reopened.ReadAllAsync()).Length.Should().BeGreaterThanOrEqualTo(outcomes.Count(o => o is null));
    }

    [Fact]
    public async Task Cutting_the_power_or_closing_twice_is_harmless()
    {
        var store = LiteDbHerdStore.Open(_folder.DataFile);
        store.Abandon();
        store.Abandon();
        await store.DisposeAsync();

        var closed = LiteDbHerdStore.Open(_folder.DataFile);
        await closed.DisposeAsync();
        await closed.DisposeAsync();
        closed.Abandon();

        var late = () => closed.HeadPositionAsync();
        await late.Should().ThrowAsync<ObjectDisposedException>();
    }

    [Fact]
    public async Task Closing_answers_what_waits_and_empties_the_log()
    {
        var store = LiteDbHerdStore.Open(_folder.DataFile);
        var calls = Enumerable.Range(0, 100).Select(n => store.AppendAsync(SomeStored.Commit(n, $"k{n}"))).ToList();

        await store.DisposeAsync();

        (await Task.WhenAll(calls)).Should().OnlyHaveUniqueItems();
        new FileInfo(_folder.LogFile).Length.Should().Be(0);
    }

    [Fact]
    public async Task A_backup_of_a_running_store_is_a_data_file_of_its_own()
    {
        await using var store = await FilledAsync();
        var backup = _folder.Named("backup.db");
        await File.WriteAllTextAsync(backup, "an older backup");

        await store.BackupAsync(backup);
        await store.AppendAsync(SomeStored.Commit(2, "later"));

        await using var restored = LiteDbHerdStore.Open(backup);
        (await restored.ReadAllAsync()).Select(c => c.Commit.Key).Should().Equal("a", "b");
        (await restored.ReadWaitingAsync()).Select(e => e.Key).Should().Equal("u1");
        (await store.ReadAllAsync()).Should().HaveCount(3);
    }

    [Fact]
    public async Task A_backup_that_fails_is_told_and_the_store_goes_on()
    {
        await using var store = await FilledAsync();
        var overItself = () => store.BackupAsync(_folder.DataFile);
        var overItsLog = () => store.BackupAsync(_folder.LogFile);
        var nowhere = () => store.BackupAsync(_folder.Named("no such folder/backup.db"));

        await overItself.Should().ThrowAsync<DataFileException>().WithMessage("*belongs to the running HerdBot*");
        await overItsLog.Should().ThrowAsync<DataFileException>().WithMessage("*belongs to the running HerdBot*");
        await nowhere.Should().ThrowAsync<DataFileException>().WithMessage("The backup * can't be written: *");

        (await store.AppendAsync(SomeStored.Commit(2, "later"))).Should().BePositive();
    }

    [Fact]
    public void A_file_that_can_not_be_written_whole_is_not_left_behind_half()
    {
        var write = () => DurableFile.WriteWhole(_folder.Named("backup.db"), file =>
        {
            file.Write(new byte[4096]);
            throw new IOException("No space left on device");
        });

        write.Should().Throw<IOException>();

        Directory.GetFiles(Path.GetDirectoryName(_folder.DataFile)!).Should().BeEmpty();
    }

    [Fact]
    public async Task A_missing_folder_is_made()
    {
        var path = _folder.Named("farm/data/herd.db");

        await using var store = LiteDbHerdStore.Open(path);

        File.Exists(path).Should().BeTrue();
    }

    private async Task<LiteDbHerdStore> FilledAsync()
    {
        var store = LiteDbHerdStore.Open(_folder.DataFile);
        await store.AppendAsync(SomeStored.Commit(0, "a"));
        await store.AppendAsync(SomeStored.Commit(1, "b"));
        await store.TakeInAsync(SomeStored.Entry("u1"));
        return store;
    }

    private static async Task EndAsync(LiteDbHerdStore store, bool closed)
    {
        if (closed)
        {
            await store.DisposeAsync();
        }
        else
        {
            store.Abandon();
        }
    }

    private static Task<Exception?> OutcomeOf(LiteDbHerdStore store, int n) =>
        Record.ExceptionAsync(() => store.AppendAsync(SomeStored.Commit(0, $"k{n}", new GroupId($"group {n}")))).AsTask();
}

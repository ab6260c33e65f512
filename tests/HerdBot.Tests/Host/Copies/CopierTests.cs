using FluentAssertions;
using HerdBot.App.Ports;
using HerdBot.Host.Copies;
using HerdBot.Host.LiteDb;
using HerdBot.Tests.Support.StoreContract;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace HerdBot.Tests.Host.Copies;

/// <summary>The second copy and the daily backups, and the way back from both.</summary>
public sealed class CopierTests : IDisposable
{
    private readonly StoreFolder _folder = new();
    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2027, 4, 18, 6, 40, 0, TimeSpan.Zero));
    private readonly StringWriter _report = new();

    private string Copies => _folder.Named("copies");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Every_commit_becomes_a_line_and_none_becomes_two()
    {
        await using var store = await FilledAsync(3);
        await CopyAsync(store);
        await store.AppendAsync(SomeStored.Commit(3, "k3"));
        await CopyAsync(store);
        await CopyAsync(store);

        new CommitLines(Copies).All().Select(line => CommitLine.Read(line.Text).Commit.Key).Should().Equal("k0", "k1", "k2", "k3");
    }

    [Fact]
    public async Task A_line_cut_short_by_a_crash_is_taken_off_and_written_anew()
    {
        await using var store = await FilledAsync(3);
        await CopyAsync(store);
        var file = new CommitLines(Copies).Files.Single();
        await File.WriteAllTextAsync(file, (await File.ReadAllTextAsync(file))[..^20]);

        await CopyAsync(store);

        new CommitLines(Copies).All().Select(line => CommitLine.Read(line.Text).Position).Should().Equal(1, 2, 3);
    }

    [Fact]
    public async Task Lines_of_another_history_are_put_aside_and_kept()
    {
        await using (var store = await FilledAsync(3))
        {
            await CopyAsync(store);
        }
        File.Delete(_folder.DataFile);
        await using var other = await FilledAsync(2, "other");

        await CopyAsync(other);

        new CommitLines(Copies).All().Select(line => CommitLine.Read(line.Text).Commit.Key).Should().Equal("other0", "other1");
        new CommitLines(Directory.GetDirectories(Copies).Single()).All().Should().HaveCount(3);
    }

    [Fact]
    public async Task A_backup_a_day_is_made_opened_and_counted_and_fourteen_are_kept()
    {
        await using var store = await FilledAsync(3);
        var backups = new DailyBackups(store, Copies, _time);
        var made = new List<Backup?>();
        for (var hour = 0; hour < 20 * 24; hour += 8)
        {
            made.Add(await backups.MakeAsync(default));
            _time.Advance(TimeSpan.FromHours(8));
        }

        made.OfType<Backup>().Should().HaveCount(20).And.OnlyContain(backup => backup.Commits == 3 && backup.Events == 3);
        backups.Files.Should().HaveCount(14).And.Equal(made.OfType<Backup>().Select(backup => backup.Path).TakeLast(14));
        Directory.GetFiles(Copies).Should().HaveCount(14, "no log and no draft is left behind");
    }

    [Fact]
    public async Task A_damaged_data_file_is_rebuilt_from_the_lines_and_the_old_one_kept()
    {
        StoredCommit[] before;
        await using (var store = await FilledAsync(5))
        {
            await CopyAsync(store);
            before = [.. await store.ReadAllAsync()];
        }
        await File.WriteAllTextAsync(_folder.DataFile, "all is lost");

        await Restore.RunAsync(Copies, _folder.DataFile, replace: true, _time, _report);

        await using (var again = LiteDbHerdStore.Open(_folder.DataFile))
        {
            (await again.ReadAllAsync()).ShouldBe(before);
            await CopyAsync(again);
        }
        new CommitLines(Copies).All().Should().HaveCount(5, "the rebuilt history is the same one: the copy goes on");
        _report.ToString().Should().Contain("5 lines were read").And.Contain("5 events in 5 commits").And.Contain(".replaced-20270418-064000");
        (await File.ReadAllTextAsync($"{_folder.DataFile}.replaced-20270418-064000")).Should().Be("all is lost");
    }

    [Fact]
    public async Task A_line_that_cannot_be_read_is_reported_and_what_does_not_depend_on_it_is_taken()
    {
        await using (var store = await FilledAsync(2))
        {
            await store.AppendAsync(SomeStored.Commit(0, "elsewhere", new GroupId("elsewhere")));
            await CopyAsync(store);
        }
        var file = new CommitLines(Copies).Files.Single();
        var lines = await File.ReadAllLinesAsync(file);
        await File.WriteAllLinesAsync(file, [lines[0], "{\"position\": 2, ", lines[2]]);
        var target = _folder.Named("rebuilt.db");

        await Restore.RunAsync(Copies, target, replace: false, _time, _report);

        await using var rebuilt = LiteDbHerdStore.Open(target);
        (await rebuilt.ReadAllAsync()).Select(stored => stored.Commit.Key).Should().Equal("k0", "elsewhere");
        _report.ToString().Should().Contain("Line 2 of ").And.Contain("2 lines were read");
    }

    [Fact]
    public async Task A_backup_goes_back_into_place()
    {
        await using (var store = await FilledAsync(4))
        {
            await DailyBackups.MakeAsync(store, _folder.Named("kept.db"), default);
            await store.AppendAsync(SomeStored.Commit(4, "later"));
        }

        await Restore.RunAsync(_folder.Named("kept.db"), _folder.DataFile, replace: true, _time, _report);

        await using var restored = LiteDbHerdStore.Open(_folder.DataFile);
        (await restored.ReadAllAsync()).Should().HaveCount(4);
    }

    [Fact]
    public async Task A_data_file_that_is_there_or_in_use_is_left_alone()
    {
        await using var store = await FilledAsync(1);
        await CopyAsync(store);
        var unasked = () => Restore.RunAsync(Copies, _folder.DataFile, replace: false, _time, _report);
        var inUse = () => Restore.RunAsync(Copies, _folder.DataFile, replace: true, _time, _report);

        await unasked.Should().ThrowAsync<DataFileException>().WithMessage("*--replace*");
        await inUse.Should().ThrowAsync<DataFileException>().WithMessage("*as it was*");
        (await store.ReadAllAsync()).Should().ContainSingle();
        Directory.GetFiles(Path.GetDirectoryName(_folder.DataFile)!, "*restoring*").Should().BeEmpty();
    }

    private async Task<LiteDbHerdStore> FilledAsync(int commits, string key = "k")
    {
        var store = LiteDbHerdStore.Open(_folder.DataFile);
        for (var n = 0; n < commits; n++)
        {
            await store.AppendAsync(SomeStored.Commit(n, $"{key}{n}"));
        }
        return store;
    }

    private async Task CopyAsync(LiteDbHerdStore store)
    {
        using var copier = new Copier(store, Copies, _time, NullLogger<Copier>.Instance);
        await copier.CopyAsync();
    }
}

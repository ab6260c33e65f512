using FluentAssertions;
using HerdBot.Host.LiteDb;
using HerdBot.Tests.Support.StoreContract;
using LiteDB;
using LiteDB.Engine;
using Xunit;

namespace HerdBot.Tests.Host.LiteDb;

/// <summary>What a farmer is told when the file can't be used, and that it is left as it was.</summary>
public sealed class DataFileTests : IDisposable
{
    private readonly StoreFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_second_HerdBot_on_the_same_file_is_refused_and_the_first_goes_on()
    {
        await using var first = LiteDbHerdStore.Open(_folder.DataFile);

        Opening().Should().Throw<DataFileException>()
            .WithMessage($"The data file {_folder.DataFile} is in use by another HerdBot. Stop that one first.");

        (await first.AppendAsync(SomeStored.Commit(0, "a"))).Should().BePositive();
    }

    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    [InlineData(20_000)]
    public void A_file_of_something_else_is_refused_and_left_alone(int length)
    {
        var notOurs = Enumerable.Range(0, length).Select(n => (byte)(n % 251)).ToArray();
        File.WriteAllBytes(_folder.DataFile, notOurs);

        Opening().Should().Throw<DataFileException>().WithMessage("*is not a HerdBot data file. Nothing was changed in it.*");

        File.ReadAllBytes(_folder.DataFile).Should().Equal(notOurs);
        File.Exists(_folder.LogFile).Should().BeFalse();
    }

    [Fact]
    public void A_file_of_another_program_that_uses_LiteDB_is_refused_and_left_alone()
    {
        using (var engine = new LiteEngine(new EngineSettings { Filename = _folder.DataFile, Collation = Collation.Binary }))
        {
            engine.Insert("songs", [new BsonDocument { ["_id"] = 1 }], BsonAutoId.Int32);
        }

        ShouldBeLeftAlone("*is a LiteDB file, but not HerdBot's. Nothing was changed in it.*");
    }

    [Fact]
    public async Task A_file_of_a_newer_HerdBot_is_refused_and_left_alone()
    {
        await FillAsync();
        using (var engine = new LiteEngine(new EngineSettings { Filename = _folder.DataFile }))
        {
            HerdSchema.Stamp(engine, HerdSchema.Current + 1);
        }

        ShouldBeLeftAlone("*was written by a newer HerdBot. Nothing was changed in it. Start that newer one.");
    }

    [Theory]
    [InlineData(0.2)]
    [InlineData(0.5)]
    [InlineData(0.95)]
    public async Task A_file_cut_short_is_refused_and_left_alone(double part)
    {
        await FillAsync();
        using (var file = File.OpenWrite(_folder.DataFile))
        {
            file.SetLength((long)(file.Length * part));
        }

        ShouldBeLeftAlone("*is cut short: * Nothing was changed in it. Bring back a backup.");
    }

    [Fact]
    public async Task A_file_with_garbage_in_it_is_refused_and_left_alone()
    {
        await FillAsync();
        var bytes = await File.ReadAllBytesAsync(_folder.DataFile);
        bytes.AsSpan(2 * DurableLogStream.PageBytes).Fill(0xa7);
        await File.WriteAllBytesAsync(_folder.DataFile, bytes);

        ShouldBeLeftAlone("*is damaged and can't be read. Nothing was changed in it. Bring back a backup.");
    }

    [Fact]
    public async Task A_commit_that_does_not_follow_from_those_before_it_is_damage()
    {
        await FillAsync();
        using (var engine = new LiteEngine(new EngineSettings { Filename = _folder.DataFile }))
        {
            engine.Insert("commits", [HerdDocuments.ToDocument(SomeStored.Stored(900, SomeStored.Commit(77, "from nowhere")))], BsonAutoId.Int64);
        }

        ShouldBeLeftAlone("*is damaged and can't be read.*");
    }

    [Fact]
    public async Task A_log_without_its_data_file_is_refused_and_left_alone()
    {
        var store = LiteDbHerdStore.Open(_folder.DataFile);
        await store.AppendAsync(SomeStored.Commit(0, "a"));
        store.Abandon();
        File.Delete(_folder.DataFile);
        var log = await File.ReadAllBytesAsync(_folder.LogFile);

        Opening().Should().Throw<DataFileException>().WithMessage("*is missing, but its log * is there and not empty.*");

        (await File.ReadAllBytesAsync(_folder.LogFile)).Should().Equal(log);
        File.Exists(_folder.DataFile).Should().BeFalse();
    }

    [Fact]
    public void A_folder_in_the_files_place_is_told()
    {
        Directory.CreateDirectory(_folder.DataFile);

        Opening().Should().Throw<DataFileException>().WithMessage("*can't be opened:*");
    }

    [Fact]
    public async Task What_a_cut_off_start_left_behind_does_not_hinder_the_next()
    {
        await File.WriteAllTextAsync(_folder.DataFile + ".new", "half a file");

        await using var store = LiteDbHerdStore.Open(_folder.DataFile);

        (await store.HeadPositionAsync()).Should().Be(0);
        File.Exists(_folder.DataFile + ".new").Should().BeFalse();
    }

    private Action Opening() => () => LiteDbHerdStore.Open(_folder.DataFile);

    private async Task FillAsync()
    {
        await using var store = LiteDbHerdStore.Open(_folder.DataFile);
        for (var version = 0; version < 60; version++)
        {
            await store.TakeInAsync(SomeStored.Entry($"k{version}"));
            await store.AppendAsync(SomeStored.Commit(version, $"k{version}", null, new string('d', 2000)));
        }
    }

    private void ShouldBeLeftAlone(string message)
    {
        var before = File.ReadAllBytes(_folder.DataFile);

        Opening().Should().Throw<DataFileException>().WithMessage(message).And.Message.Should().Contain(_folder.DataFile);

        File.ReadAllBytes(_folder.DataFile).Should().Equal(before);
    }
}

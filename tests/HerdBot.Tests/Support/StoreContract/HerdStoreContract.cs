using FluentAssertions;
using HerdBot.App.Ports;
using Xunit;

namespace HerdBot.Tests.Support.StoreContract;

/// <summary>What every store keeps, whatever engine is beneath it.</summary>
public abstract class HerdStoreContract
{
    private static readonly GroupId Alderbrook = SomeStored.Alderbrook;
    private static readonly GroupId Highfield = new("highfield");

    protected abstract IHerdStore Store { get; }

    [Fact]
    public async Task A_new_store_is_empty()
    {
        (await Store.ReadWaitingAsync()).Should().BeEmpty();
        (await Store.ReadGroupAsync(Alderbrook)).Should().BeEmpty();
        (await Store.ReadAllAsync()).Should().BeEmpty();
        (await Store.ReadGroupsAsync()).Should().BeEmpty();
        (await Store.HeadPositionAsync()).Should().Be(0);
    }

    [Fact]
    public async Task Commits_come_back_whole_and_in_order()
    {
        var first = SomeStored.Commit(0, "a", null, "{\"n\":1}", "{\"n\":2}");
        var second = SomeStored.Commit(1, "b", null, "{\"n\":3}");

        var positions = new[] { await Store.AppendAsync(first), await Store.AppendAsync(second) };

        (await Store.ReadGroupAsync(Alderbrook))
            .ShouldBe(SomeStored.Stored(positions[0], first), SomeStored.Stored(positions[1], second));
        (await Store.HeadPositionAsync()).Should().Be(positions[1]).And.BeGreaterThan(positions[0]);
    }

    [Fact]
    public async Task An_event_keeps_its_type_and_the_version_of_its_shape()
    {
        var commit = SomeStored.Commit(0, "a") with { Events = [new("birth", 3, "{}"), new("weight", 12, "[]")] };

        await Store.AppendAsync(commit);

        (await Store.ReadAllAsync())[0].Commit.Events.Should().Equal(commit.Events);
    }

    [Fact]
    public async Task A_group_is_read_from_any_version_on()
    {
        for (var version = 0; version < 5; version++)
        {
            await Store.AppendAsync(SomeStored.Commit(version, $"k{version}"));
        }

        (await Store.ReadGroupAsync(Alderbrook, afterVersion: 3)).Select(c => c.Version).Should().Equal(4, 5);
        (await Store.ReadGroupAsync(Alderbrook, afterVersion: 5)).Should().BeEmpty();
        (await Store.ReadGroupAsync(Alderbrook, afterVersion: 99)).Should().BeEmpty();
    }

    [Fact]
    public async Task Groups_have_histories_of_their_own()
    {
        await Store.AppendAsync(SomeStored.Commit(0, "h1", Highfield));
        await Store.AppendAsync(SomeStored.Commit(0, "a1", Alderbrook));
        await Store.AppendAsync(SomeStored.Commit(1, "h2", Highfield));

        (await Store.ReadGroupAsync(Highfield)).Select(c => c.Commit.Key).Should().Equal("h1", "h2");
        (await Store.ReadGroupAsync(Alderbrook)).Select(c => c.Version).Should().Equal(1);
        (await Store.ReadGroupsAsync()).Should().Equal([Highfield, Alderbrook], "that is the order of their first commits");
    }

    [Fact]
    public async Task Names_that_differ_in_case_alone_are_different()
    {
        var shouted = new GroupId("ALDERBROOK");
        await Store.AppendAsync(SomeStored.Commit(0, "key"));
        await Store.AppendAsync(SomeStored.Commit(0, "KEY", shouted));

        (await Store.ReadGroupAsync(Alderbrook)).Select(c => c.Commit.Key).Should().Equal("key");
        (await Store.ReadGroupAsync(shouted)).Select(c => c.Commit.Key).Should().Equal("KEY");
        (await Store.TakeInAsync(SomeStored.Entry("Key"))).Should().BeTrue();
    }

    [Fact]
    public async Task All_groups_are_read_page_by_page()
    {
        for (var version = 0; version < 4; version++)
        {
            await Store.AppendAsync(SomeStored.Commit(version, $"a{version}", Alderbrook));
            await Store.AppendAsync(SomeStored.Commit(version, $"h{version}", Highfield));
        }

        var keys = new List<string>();
        var after = 0L;
        while (await Store.ReadAllAsync(after, limit: 3) is { Length: > 0 } page)
        {
            page.Length.Should().BeLessThanOrEqualTo(3);
            keys.AddRange(page.Select(c => c.Commit.Key));
            after = page[^1].Position;
        }

        keys.Should().Equal("a0", "h0", "a1", "h1", "a2", "h2", "a3", "h3");
        after.Should().Be(await Store.HeadPositionAsync());
        (await Store.ReadAllAsync(limit: 0)).Should().BeEmpty();
    }

    [Fact]
    public async Task A_stale_version_is_a_conflict_and_writes_nothing()
    {
        await Store.AppendAsync(SomeStored.Commit(0, "a"));

        await Appending(SomeStored.Commit(0, "b")).Should().ThrowAsync<StoreConflictException>();
        await Appending(SomeStored.Commit(2, "c")).Should().ThrowAsync<StoreConflictException>();
        await Appending(SomeStored.Commit(1, "d", Highfield)).Should().ThrowAsync<StoreConflictException>();

        (await Store.ReadAllAsync()).Select(c => c.Commit.Key).Should().Equal("a");
        (await Store.AppendAsync(SomeStored.Commit(1, "b"))).Should().BePositive("a refused key is not used up");
    }

    [Fact]
    public async Task A_key_is_taken_once_and_for_all_groups()
    {
        await Store.AppendAsync(SomeStored.Commit(0, "a"));

        await Appending(SomeStored.Commit(1, "a")).Should().ThrowAsync<StoreDuplicateException>();
        await Appending(SomeStored.Commit(0, "a", Highfield)).Should().ThrowAsync<StoreDuplicateException>();

        (await Store.ReadAllAsync()).Should().HaveCount(1);
    }

    [Fact]
    public async Task A_repeated_append_is_called_a_duplicate_though_the_group_has_moved_on()
    {
        var commit = SomeStored.Commit(0, "a");
        await Store.AppendAsync(commit);

        await Appending(commit).Should().ThrowAsync<StoreDuplicateException>("after an unknown outcome the caller asks again with the same");
    }

    [Fact]
    public async Task What_comes_in_waits_in_order_until_a_commit_bears_its_key()
    {
        var entries = new[] { SomeStored.Entry("z"), SomeStored.Entry("a"), SomeStored.Entry("m") };
        foreach (var entry in entries)
        {
            (await Store.TakeInAsync(entry)).Should().BeTrue();
        }

        (await Store.ReadWaitingAsync()).Should().Equal(entries);

        await Store.AppendAsync(SomeStored.Commit(0, "a"));

        (await Store.ReadWaitingAsync()).Should().Equal(entries[0], entries[2]);
    }

    [Fact]
    public async Task The_same_update_is_taken_in_once()
    {
        var entry = SomeStored.Entry("u1");
        await Store.TakeInAsync(entry);

        (await Store.TakeInAsync(entry with { Raw = "something else" })).Should().BeFalse();

        (await Store.ReadWaitingAsync()).Should().Equal(entry);
    }

    [Fact]
    public async Task An_update_that_was_handled_is_not_taken_in_again()
    {
        await Store.TakeInAsync(SomeStored.Entry("u1"));
        await Store.AppendAsync(SomeStored.Commit(0, "u1"));
        await Store.AppendAsync(SomeStored.Commit(1, "never-in-the-inbox"));

        (await Store.TakeInAsync(SomeStored.Entry("u1"))).Should().BeFalse();
        (await Store.TakeInAsync(SomeStored.Entry("never-in-the-inbox"))).Should().BeFalse();
        (await Store.ReadWaitingAsync()).Should().BeEmpty();
    }

    [Fact]
    public async Task Sixty_four_appends_in_flight_are_all_kept()
    {
        var groups = Enumerable.Range(0, 64).Select(n => new GroupId($"group {n}")).ToArray();

        var positions = await Task.WhenAll(groups.Select(g => Task.Run(() => Store.AppendAsync(SomeStored.Commit(0, g.Value, g)))));

        positions.Should().OnlyHaveUniqueItems();
        (await Store.ReadAllAsync()).Select(c => c.Commit.Group).Should().BeEquivalentTo(groups);
        (await Store.ReadGroupAsync(groups[17])).Select(c => c.Commit.Key).Should().Equal("group 17");
    }

    [Fact]
    public async Task Of_sixty_four_that_expect_the_same_version_one_wins()
    {
        var outcomes = await Task.WhenAll(Enumerable.Range(0, 64).Select(n => Task.Run(() => OutcomeOf(SomeStored.Commit(0, $"k{n}")))));

        outcomes.Count(o => o is null).Should().Be(1);
        outcomes.Where(o => o is not null).Should().AllBeOfType<StoreConflictException>().And.HaveCount(63);
        (await Store.ReadAllAsync()).Should().HaveCount(1);
    }

    [Fact]
    public async Task Of_sixty_four_with_the_same_key_one_wins()
    {
        var outcomes = await Task.WhenAll(Enumerable.Range(0, 64).Select(n => Task.Run(() => OutcomeOf(SomeStored.Commit(0, "k", new GroupId($"{n}"))))));
        var takenIn = await Task.WhenAll(Enumerable.Range(0, 64).Select(_ => Task.Run(() => Store.TakeInAsync(SomeStored.Entry("u")))));

        outcomes.Count(o => o is null).Should().Be(1);
        outcomes.Where(o => o is not null).Should().AllBeOfType<StoreDuplicateException>();
        takenIn.Count(isNew => isNew).Should().Be(1);
    }

    [Fact]
    public async Task A_call_that_is_cancelled_beforehand_does_nothing()
    {
        using var cancelled = new CancellationTokenSource();
        await cancelled.CancelAsync();

        var append = () => Store.AppendAsync(SomeStored.Commit(0, "a"), cancelled.Token);

        await append.Should().ThrowAsync<OperationCanceledException>();
        (await Store.HeadPositionAsync()).Should().Be(0);
    }

    private Func<Task> Appending(Commit commit) => () => Store.AppendAsync(commit);

    private async Task<Exception?> OutcomeOf(Commit commit) => await Record.ExceptionAsync(() => Store.AppendAsync(commit));
}

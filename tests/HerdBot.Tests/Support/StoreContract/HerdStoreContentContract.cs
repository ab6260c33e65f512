using FluentAssertions;
using HerdBot.App.Ports;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Support.StoreContract;

/// <summary>What every store can hold, to the byte and the millisecond, and what it refuses to hold.</summary>
public abstract class HerdStoreContentContract
{
    protected abstract IHerdStore Store { get; }

    [Theory]
    [InlineData(200, "k")]
    [InlineData(100, "é")] // two bytes each
    [InlineData(50, "🦙")] // four
    public async Task A_key_of_200_bytes_is_kept_and_a_longer_one_is_refused(int times, string character)
    {
        var longest = string.Concat(Enumerable.Repeat(character, times));

        await Store.TakeInAsync(SomeStored.Entry(longest));
        await Store.AppendAsync(SomeStored.Commit(0, longest));

        (await Store.ReadAllAsync())[0].Commit.Key.Should().Be(longest);
        await TakingIn(SomeStored.Entry(longest + "k")).Should().ThrowAsync<ArgumentException>();
        await Appending(SomeStored.Commit(1, longest + "k")).Should().ThrowAsync<ArgumentException>();
        (await Store.ReadWaitingAsync()).Should().BeEmpty();
    }

    [Fact]
    public async Task What_no_store_can_keep_is_refused_and_the_store_goes_on()
    {
        var tooLong = new string('x', StoreIndex.MaxTextBytes + 1);
        await Appending(SomeStored.Commit(0, "")).Should().ThrowAsync<ArgumentException>();
        await Appending(SomeStored.Commit(0, "a", new GroupId(""))).Should().ThrowAsync<ArgumentException>();
        await Appending(SomeStored.Commit(0, "a", new GroupId(new string('g', 101)))).Should().ThrowAsync<ArgumentException>();
        await Appending(SomeStored.Commit(0, "a") with { Events = [] }).Should().ThrowAsync<ArgumentException>();
        await Appending(SomeStored.Commit(0, "a", null, tooLong)).Should().ThrowAsync<ArgumentException>();
        await TakingIn(SomeStored.Entry("a", tooLong)).Should().ThrowAsync<ArgumentException>();

        (await Store.AppendAsync(SomeStored.Commit(0, "a"))).Should().BePositive();
    }

    [Fact]
    public async Task The_longest_text_is_kept_even_where_every_character_must_be_escaped()
    {
        var entry = SomeStored.Entry("entry", new string('\0', StoreIndex.MaxTextBytes));
        var commit = SomeStored.Commit(0, "commit", null, new string('\u0001', StoreIndex.MaxTextBytes - 100));

        await Store.TakeInAsync(entry);
        await Store.AppendAsync(commit);

        (await Store.ReadWaitingAsync()).Should().Equal(entry);
        (await Store.ReadAllAsync())[0].Commit.Events.Should().Equal(commit.Events);
    }

    [Fact]
    public async Task Half_a_character_is_refused_rather_than_changed()
    {
        await TakingIn(SomeStored.Entry("a", "cria \ud83e")).Should().ThrowAsync<ArgumentException>();
        await Appending(SomeStored.Commit(0, "a", null, "\udd99")).Should().ThrowAsync<ArgumentException>();
    }

    [Theory]
    [MemberData(nameof(OddTexts))]
    public async Task Text_comes_back_to_the_byte(string text)
    {
        var entry = SomeStored.Entry("entry", text);
        var commit = SomeStored.Commit(0, "commit", null, text, "{}", text) with { Group = new(text[..Math.Min(text.Length, 40)]) };

        await Store.TakeInAsync(entry);
        var position = await Store.AppendAsync(commit);

        (await Store.ReadWaitingAsync()).Should().Equal(entry);
        (await Store.ReadGroupAsync(commit.Group)).ShouldBe(SomeStored.Stored(position, commit));
    }

    public static TheoryData<string> OddTexts => new(
        "  two spaces before and after  ",
        "   ",
        "\t\r\n",
        "nul \0 inside, bell \a, escape \u001b, delete \u007f",
        "<b>Sage</b> & 'Juniper' \"24\" \\ / {\"a\":[1,2]} ${x} @0 -- ;",
        "crías y añojas, Ünal, Łucja, Ωmega, 雌のアルパカ, أنثى",
        "e\u0301 is not é; \ufeff\u200b\u202e\u2028\u2029\ufffd\uffff",
        "🦙🦙🏽👩‍🌾 \U0010ffff",
        string.Concat(Enumerable.Range(0, 4096).Select(n => char.ConvertFromUtf32(n < 1000 ? n : 0x1f000 + (n % 1024)))));

    [Theory]
    [InlineData(0)]
    [InlineData(1_775_904_000_123)]
    [InlineData(-1)] // before 1970
    [InlineData(253_402_300_799_999)] // the last millisecond of the year 9999
    public async Task Instants_come_back_to_the_millisecond(long milliseconds)
    {
        var at = Instant.FromUnixTimeMilliseconds(milliseconds);

        await Store.TakeInAsync(SomeStored.Entry("entry") with { ReceivedAt = at.PlusNanoseconds(999_999) });
        await Store.AppendAsync(SomeStored.Commit(0, "commit") with { At = at.PlusNanoseconds(999_999) });

        (await Store.ReadWaitingAsync())[0].ReceivedAt.Should().Be(at);
        (await Store.ReadAllAsync())[0].Commit.At.Should().Be(at);
    }

    private Func<Task> Appending(Commit commit) => () => Store.AppendAsync(commit);

    private Func<Task> TakingIn(InboxEntry entry) => () => Store.TakeInAsync(entry);
}

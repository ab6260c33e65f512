using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.App.Messages;

public sealed class GroupDeskTests
{
    private const string Birth = "Sage had a girl 6:40, 24 lb";

    [Fact]
    public async Task The_same_update_twice_is_one_message()
    {
        var store = new InMemoryHerdStore();
        using var desk = await Desk.OpenAsync(store);
        await desk.HandleAsync(Desk.Line("k1", Birth), Desk.Dawn);
        var state = desk.State;
        await desk.HandleAsync(Desk.Line("k1", Birth), Desk.Dawn);

        desk.State.Should().BeSameAs(state);
        desk.State.Newborns.Should().ContainSingle();
    }

    [Fact]
    public async Task The_state_is_rebuilt_from_the_history()
    {
        var store = new InMemoryHerdStore();
        using var desk = await Desk.OpenAsync(store);
        await desk.HandleAsync(Desk.Line("k1", Birth), Desk.Dawn);
        await desk.RemindAsync(Desk.Dawn + Duration.FromMinutes(30));
        using var again = await Desk.OpenAsync(store);

        again.State.Records.Should().Equal(desk.State.Records);
        again.State.Posted.Should().BeEquivalentTo(desk.State.Posted);
        again.State.PostCount.Should().Be(desk.State.PostCount);
        again.State.Unsent.Should().Equal(desk.State.Unsent);
    }

    [Fact]
    public async Task Animals_of_the_settings_are_added_once()
    {
        var store = new InMemoryHerdStore();
        using var first = await Desk.OpenAsync(store);
        using var second = await Desk.OpenAsync(store);

        second.State.Roster.Select(animal => animal.Name).Should().Equal("Sage", "Willow");
        (await store.ReadGroupAsync(Desk.Group)).Should().ContainSingle();
    }

    [Fact]
    public async Task Two_desks_on_one_history_do_not_write_over_each_other()
    {
        var store = new InMemoryHerdStore();
        using var one = await Desk.OpenAsync(store);
        using var other = await Desk.OpenAsync(store);
        await one.HandleAsync(Desk.Line("k1", Birth), Desk.Dawn);
        var late = () => other.HandleAsync(Desk.Line("k2", Birth), Desk.Dawn);

        await late.Should().ThrowAsync<StoreConflictException>();
        other.State.Newborns.Should().BeEmpty("what was not stored has not happened");
    }

    [Fact]
    public async Task Asked_twice_what_is_due_it_is_queued_once()
    {
        using var desk = await Desk.OpenAsync(new InMemoryHerdStore());
        await desk.HandleAsync(Desk.Line("k1", Birth), Desk.Dawn);
        var soon = Desk.Dawn + Duration.FromMinutes(26);
        await desk.RemindAsync(soon);
        var posts = desk.State.PostCount;
        var next = await desk.RemindAsync(soon);

        desk.State.PostCount.Should().Be(posts);
        (next > soon).Should().BeTrue();
    }

    [Fact]
    public async Task A_start_after_an_outage_says_so_once()
    {
        var store = new InMemoryHerdStore();
        using (var desk = await Desk.OpenAsync(store))
        {
            await desk.HandleAsync(Desk.Line("k1", Birth), Desk.Dawn);
        }
        using var again = await Desk.OpenAsync(store, Desk.Dawn + Duration.FromHours(3));
        await again.RemindAsync(Desk.Dawn + Duration.FromHours(3));
        await again.RemindAsync(Desk.Dawn + Duration.FromHours(4));

        again.State.Posts.Values.Count(progress => progress.Post.Text.Contains("I was off since")).Should().Be(1);
    }

    [Fact]
    public async Task A_message_that_we_fail_on_is_answered_marked_as_worked_on_and_stops_nobody()
    {
        var store = new InMemoryHerdStore();
        using var desk = await Desk.OpenAsync(store);
        var fault = await desk.HandleAsync(Desk.Line("k1", null!), Desk.Dawn);
        var none = await desk.HandleAsync(Desk.Line("k2", Birth), Desk.Dawn);

        fault.Should().NotBeNull();
        none.Should().BeNull();
        desk.State.Posts.Values.First().Post.Should().Match<Post>(post => post.Text.StartsWith("A fault of mine") && post.ReplyTo == "m k1");
        desk.State.Newborns.Should().ContainSingle();
    }

    [Theory]
    [InlineData("1|0|3|1", true)]
    [InlineData("1|9|3|1", false)] // no such verb
    [InlineData("2|0|3|1", false)] // another version
    [InlineData("1|0|3", false)]
    [InlineData("1|0|x|1", false)]
    [InlineData("1|0|-3|1", false)]
    [InlineData("1|0|99999999999|1", false)]
    [InlineData("", false)]
    public void A_buttons_data_are_read_strictly(string data, bool ours) => ButtonData.TryRead(data, out _, out _, out _).Should().Be(ours);

    [Fact]
    public void A_buttons_data_come_back_and_are_short()
    {
        foreach (var verb in Enum.GetValues<ButtonVerb>())
        {
            var data = ButtonData.Write(int.MaxValue, new Button("Standing", verb, 12));
            ButtonData.TryRead(data, out var post, out var read, out var index).Should().BeTrue();
            (post, read, index).Should().Be((int.MaxValue, verb, 12));
            data.Length.Should().BeLessThan(64);
        }
    }

    [Fact]
    public async Task How_a_post_fares_is_part_of_the_history()
    {
        var store = new InMemoryHerdStore();
        using var desk = await Desk.OpenAsync(store);
        await desk.HandleAsync(Desk.Line("k1", Birth), Desk.Dawn);
        await desk.NoteAsync([new HerdEvent.PostSending(1, Desk.Dawn)], Desk.Dawn);
        await desk.NoteAsync([new HerdEvent.PostSent(1, "tg:77", Desk.Dawn)], Desk.Dawn);
        using var again = await Desk.OpenAsync(store);

        again.State.Posts[1].Should().Match<HerdBot.Core.Herd.PostProgress>(progress => progress.Message == "tg:77" && progress.Attempts == 1);
        again.State.Unsent.Should().BeEmpty();
        again.State.Records.Select(record => record.Fact.Kind).Should().Equal(FactKind.Birth, FactKind.Weight);
    }
}

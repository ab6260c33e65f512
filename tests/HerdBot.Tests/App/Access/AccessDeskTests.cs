using System.Text;
using FluentAssertions;
using HerdBot.App.Access;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Reading;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.App.Access;

public sealed class AccessDeskTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 5, 2, 4, 30);
    private static readonly Person Ana = new("tg:4711", "Ana M.");
    private static readonly Person Tom = new("tg:4712", "Tom");
    private static readonly GroupId AnasChat = new("tg:4711");
    private static readonly GroupId TomsChat = new("tg:4712");
    private static readonly GroupId Barn = new("tg:-4100001");
    private static readonly GroupId NewBarn = new("tg:-1001700000001");

    private AccessDesk _desk = new(Language.English, new SetUpCode("AB12CD34", Start));
    private AccessState _state = AccessState.Empty;
    private Instant _now = Start + Duration.FromMinutes(1);

    [Fact]
    public void The_code_in_a_private_chat_makes_its_sender_the_owner()
    {
        var decision = Take(Private(Ana, "/start ab12cd34"));

        decision.Should().BeOfType<AccessDecision.Settle>().Which.Events.Should().Equal(new AccessEvent.OwnerKnown(Ana, AnasChat, _now));
        Posts(decision).Should().Equal((AnasChat, "You are the owner now. Add me to the farm's group and I start there."));
        _state.IsOwner(Ana).Should().BeTrue();
        _state.IsOwner(Tom).Should().BeFalse();
    }

    [Fact]
    public void The_code_is_good_for_half_an_hour()
    {
        _now = Start + Duration.FromMinutes(30);

        var decision = Take(Private(Ana, "/start AB12CD34"));

        Posts(decision).Should().Equal((AnasChat, "That code is not good, or not any more. Start the bot again for a new one."));
        _state.Owner.Should().BeNull();
    }

    [Fact]
    public void The_code_is_good_once()
    {
        Take(Private(Ana, "/start AB12CD34"));

        Take(Private(Tom, "/start AB12CD34"));

        _state.IsOwner(Ana).Should().BeTrue();
    }

    [Fact]
    public void The_code_in_a_group_is_words_like_any_others()
    {
        Take(Said(Barn, Ana, "/start AB12CD34"));

        _state.Owner.Should().BeNull();
    }

    [Fact]
    public void A_new_code_can_hand_the_bot_over()
    {
        Take(Private(Ana, "/start AB12CD34"));
        _desk = new AccessDesk(Language.English, new SetUpCode("ZZ99", _now + Duration.FromDays(1)));
        _now += Duration.FromDays(1);

        Take(Private(Tom, "/start ZZ99"));

        _state.IsOwner(Tom).Should().BeTrue();
    }

    [Fact]
    public void A_group_the_owner_adds_the_bot_to_is_approved_at_once()
    {
        Own();

        var decision = Take(Added(Barn, Ana));

        decision.Should().BeOfType<AccessDecision.Settle>().Which.Events.Should().Equal(new AccessEvent.GroupApproved(Barn, "Willow Bend"));
        Posts(decision).Should().ContainSingle().Which.Chat.Should().Be(Barn);
        Take(Said(Barn, Tom, "Juniper is up")).Should().Be(new AccessDecision.Pass(Barn));
    }

    [Fact]
    public void A_group_somebody_else_adds_the_bot_to_waits_for_the_owners_word()
    {
        Own();

        var decision = Take(Added(Barn, Tom));

        decision.Should().BeOfType<AccessDecision.Settle>().Which.Events.Should().Equal(new AccessEvent.GroupWaiting(Barn, "Willow Bend", "Tom"));
        Posts(decision).Should().Equal(
            (Barn, "Nothing is recorded here until the farm's owner agrees."),
            (AnasChat, "May I work in 'Willow Bend'? Brought there by Tom. Until you say so I record nothing."));
        Buttons(decision).Should().Equal(new PostButton("Approve", "access:yes:0"), new PostButton("Refuse", "access:no:0"));
        Take(Said(Barn, Tom, "Juniper is up")).Should().Be(new AccessDecision.Ignore());
    }

    [Fact]
    public void The_owner_approves_by_a_press()
    {
        Own();
        Take(Added(Barn, Tom));

        var decision = Take(Press(Ana, "access:yes:0"));

        Posts(decision).Should().Equal(
            (AnasChat, "I work in 'Willow Bend' from now on."),
            (Barn, "I keep the birth log here. Write as you talk: 'Juniper had a boy 5:20, 17 lb'."));
        Take(Said(Barn, Tom, "Juniper is up")).Should().Be(new AccessDecision.Pass(Barn));
        Take(Press(Ana, "access:yes:0")).Should().Be(new AccessDecision.Ignore());
    }

    [Fact]
    public void The_owner_refuses_by_a_press_and_may_think_better_of_it()
    {
        Own();
        Take(Added(Barn, Tom));

        Posts(Take(Press(Ana, "access:no:0"))).Should().Equal((AnasChat, "I stay silent in 'Willow Bend'."));
        Take(Said(Barn, Tom, "Juniper is up")).Should().Be(new AccessDecision.Ignore());
        Take(Added(Barn, Tom)).Should().Be(new AccessDecision.Ignore());
        Take(Press(Ana, "access:yes:0"));

        Take(Said(Barn, Tom, "Juniper is up")).Should().Be(new AccessDecision.Pass(Barn));
    }

    [Fact]
    public void Nobody_but_the_owner_can_approve()
    {
        Own();
        Take(Added(Barn, Tom));

        Take(Press(Tom, "access:yes:0")).Should().Be(new AccessDecision.Ignore());

        _state.Find(Barn)!.Standing.Should().Be(Standing.Waiting);
    }

    [Fact]
    public void Groups_that_wait_are_asked_about_when_the_owner_becomes_known()
    {
        Take(Added(Barn, Tom));
        Take(Said(new GroupId("tg:-5"), Tom, "hello"));

        var decision = Take(Private(Ana, "/start AB12CD34"));

        Posts(decision).Skip(1).Should().Equal(
            (AnasChat, "May I work in 'Willow Bend'? Brought there by Tom. Until you say so I record nothing."),
            (AnasChat, "May I work in a group without a title? Brought there by Tom. Until you say so I record nothing."));
        Take(Press(Ana, "access:yes:1"));
        _state.Find(new GroupId("tg:-5"))!.Standing.Should().Be(Standing.Approved);
    }

    [Fact]
    public void A_group_whose_welcome_was_missed_is_noticed_by_its_first_line_and_told_once()
    {
        Own();

        var first = Take(Said(Barn, Tom, "Juniper is up"));
        var second = Take(Said(Barn, Tom, "Juniper is down"));

        Posts(first).Select(post => post.Chat).Should().Equal(Barn, AnasChat);
        second.Should().Be(new AccessDecision.Ignore());
    }

    [Fact]
    public void An_outsider_is_told_once_and_then_nothing()
    {
        Own();

        var first = Take(Private(Tom, "hello"));
        var second = Take(Private(Tom, "hello?"));
        var afterRestart = _desk.Decide(Restarted(), Private(Tom, "hello??"), _now);

        Posts(first).Should().Equal((TomsChat, "This bot works for one farm. Nothing is done with what is written here."));
        second.Should().Be(new AccessDecision.Ignore());
        afterRestart.Should().Be(new AccessDecision.Ignore());
    }

    [Fact]
    public void The_owners_private_words_go_to_the_one_group_there_is()
    {
        Own();

        Posts(Take(Private(Ana, "Juniper is up"))).Should().Equal((AnasChat, "Add me to the farm's group; I work there."));
        Take(Added(Barn, Ana));
        Take(Private(Ana, "Juniper is up")).Should().Be(new AccessDecision.Pass(Barn));
        Take(Added(new GroupId("tg:-5"), Ana));
        Posts(Take(Private(Ana, "Juniper is up"))).Should().Equal((AnasChat, "I work in several groups. Write in the one you mean."));
    }

    [Fact]
    public void Somebody_known_in_a_group_is_heard_in_private_too()
    {
        Own();
        Take(Added(Barn, Ana));

        _desk.Decide(_state, Private(Tom, "Juniper is up"), _now, home: Barn).Should().Be(new AccessDecision.Pass(Barn));
    }

    [Fact]
    public void A_button_that_was_posted_privately_counts_for_whoever_has_it()
    {
        Own();
        Take(Added(Barn, Ana));

        Take(Press(Tom, "v1:mine:7")).Should().Be(new AccessDecision.Pass(Barn));
    }

    [Fact]
    public void Being_blocked_in_private_is_nobodys_business()
    {
        Own();

        Take(new Inbound.Membership("k", TomsChat, Tom, _now, "Tom", false) { Private = true }).Should().Be(new AccessDecision.Ignore());
    }

    [Fact]
    public void Leaving_a_group_asks_nobody_and_coming_back_needs_no_new_word()
    {
        Own();
        Take(Added(new GroupId("tg:-9"), Tom, member: false)).Should().Be(new AccessDecision.Ignore());
        Take(Added(Barn, Ana));

        Take(Added(Barn, Tom, member: false)).Should().Be(new AccessDecision.Pass(Barn));
        Take(Added(Barn, Tom)).Should().Be(new AccessDecision.Pass(Barn));
    }

    [Fact]
    public void A_group_that_moves_keeps_its_history_and_is_sent_to_at_its_new_place()
    {
        Own();
        Take(Added(Barn, Ana));

        Take(Moved(Barn, NewBarn));

        _state.StreamOf(NewBarn).Should().Be(Barn);
        _state.StreamOf(Barn).Should().Be(Barn);
        _state.ChatOf(Barn).Should().Be(NewBarn);
        Take(Said(NewBarn, Tom, "Juniper is up")).Should().Be(new AccessDecision.Pass(Barn));
        Take(Added(NewBarn, Tom)).Should().Be(new AccessDecision.Pass(Barn));
    }

    [Fact]
    public void The_same_move_told_twice_or_by_a_failed_send_is_recorded_once()
    {
        Own();
        Take(Added(Barn, Ana));
        Take(Moved(Barn, NewBarn));

        Take(Moved(Barn, NewBarn)).Should().Be(new AccessDecision.Ignore());
        AccessDesk.Moved(_state, Barn, NewBarn).Should().Be(new AccessDecision.Ignore());
        AccessDesk.Moved(_state, Barn, Barn).Should().Be(new AccessDecision.Ignore());
    }

    [Fact]
    public void A_group_may_move_again_and_is_still_the_same()
    {
        var third = new GroupId("tg:-1001700000009");
        Own();
        Take(Added(Barn, Ana));
        Take(Moved(Barn, NewBarn));

        Take(Moved(NewBarn, third));

        (_state.StreamOf(third), _state.StreamOf(NewBarn), _state.ChatOf(Barn)).Should().Be((Barn, Barn, third));
    }

    [Fact]
    public void A_move_of_a_group_nobody_knows_is_nobodys_business()
    {
        Take(Moved(Barn, NewBarn)).Should().Be(new AccessDecision.Ignore());
    }

    [Fact]
    public void News_of_a_move_that_comes_after_the_new_group_was_asked_about_settles_the_question()
    {
        Own();
        Take(Added(Barn, Ana));
        Take(Added(NewBarn, Tom)).Should().BeOfType<AccessDecision.Settle>();

        Take(Moved(Barn, NewBarn));

        Take(Said(NewBarn, Tom, "Juniper is up")).Should().Be(new AccessDecision.Pass(Barn));
    }

    [Fact]
    public void A_restart_forgets_nothing()
    {
        Own();
        Take(Added(Barn, Tom));
        Take(Press(Ana, "access:yes:0"));
        Take(Added(new GroupId("tg:-5"), Tom));
        Take(Press(Ana, "access:no:1"));
        Take(Moved(Barn, NewBarn));

        var restarted = Restarted();

        restarted.Owner.Should().Be(_state.Owner);
        restarted.Groups.Should().Equal(_state.Groups);
        (restarted.StreamOf(NewBarn), restarted.ChatOf(Barn)).Should().Be((Barn, NewBarn));
    }

    [Fact]
    public void A_button_carries_little_even_for_the_thousandth_group()
    {
        Own();
        for (var n = 0; n < 1000; n++)
            Take(Said(new GroupId($"tg:-{n + 10}"), Tom, "hello"));

        var data = Buttons(Take(Added(Barn, Tom))).Select(button => button.Data);

        data.Should().Equal("access:yes:1000", "access:no:1000").And.OnlyContain(one => Encoding.UTF8.GetByteCount(one) <= 64);
    }

    [Theory]
    [InlineData("access:yes:")]
    [InlineData("access:yes:7")]
    [InlineData("access:yes:-1")]
    [InlineData("access:yes:99999999999999999999")]
    public void A_button_for_no_group_does_nothing(string data)
    {
        Own();
        Take(Added(Barn, Tom));

        Take(Press(Ana, data)).Should().Be(new AccessDecision.Ignore());
    }

    [Fact]
    public void A_Spanish_farm_is_spoken_to_in_Spanish()
    {
        _desk = new AccessDesk(Language.Spanish, null);

        Posts(Take(Added(Barn, Tom))).Should().Equal((Barn, "Aquí no se anota nada hasta que el dueño de la granja lo apruebe."));
    }

    [Fact]
    public void Without_a_code_nobody_becomes_the_owner()
    {
        _desk = new AccessDesk(Language.English, null);

        Take(Private(Ana, "/start AB12CD34"));

        _state.Owner.Should().BeNull();
    }

    private readonly List<EventRecord> _history = [];

    // What was decided is written as it is stored, and folded as it would be after a restart.
    private AccessDecision Take(Inbound inbound)
    {
        var decision = _desk.Decide(_state, inbound, _now);
        if (decision is AccessDecision.Settle settle)
        {
            _history.AddRange(settle.Events.Select(AccessEventFormat.Write));
            _state = settle.Events.Aggregate(_state, (state, e) => state.Apply(e));
        }
        return decision;
    }

    private AccessState Restarted() => AccessState.Fold([new EventRecord("heard_from_vet", 3, "{}"), .. _history]);

    private void Own() => Take(Private(Ana, "/start AB12CD34"));

    private Inbound.Line Private(Person from, string text) => new("k", new GroupId(from.Key), from, _now, "1", text, null) { Private = true };

    private Inbound.Line Said(GroupId group, Person from, string text) => new("k", group, from, _now, "1", text, null);

    private Inbound.Tap Press(Person from, string data) => new("k", new GroupId(from.Key), from, _now, data) { Private = true };

    private Inbound.Membership Added(GroupId group, Person by, bool member = true) => new("k", group, by, _now, group == Barn || group == NewBarn ? "Willow Bend" : "", member);

    private Inbound.Moved Moved(GroupId from, GroupId to) => new("k", from, Tom, _now, to);

    private static IEnumerable<(GroupId Chat, string Text)> Posts(AccessDecision decision) =>
        decision.Should().BeOfType<AccessDecision.Settle>().Which.Posts.Select(post => (post.Chat, post.Text));

    private static IEnumerable<PostButton> Buttons(AccessDecision decision) =>
        decision.Should().BeOfType<AccessDecision.Settle>().Which.Posts.SelectMany(post => post.Buttons);
}

using System.Collections.Immutable;
using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Calendar;
using HerdBot.Core.Reading;
using HerdBot.Host.Rehearsal;
using HerdBot.Host.Terminal;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Host.Terminal;

public sealed class ChatScreenTests
{
    private static readonly ImmutableArray<PostButton> Three = [new("Standing", "1"), new("Not yet", "2"), new("On it", "3")];
    private readonly TestPaper _paper = TestPaper.Plain();
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2027, 5, 9, 10, 35, 0, TimeSpan.Zero));
    private readonly ChatScreen _screen;
    private int _messages;

    public ChatScreenTests()
    {
        _screen = new ChatScreen(_paper.Paper, TryFarm.Setup.Farm);
        _screen.Follow(_clock);
    }

    [Fact]
    public async Task Each_line_has_the_farms_time_and_who_says_it()
    {
        Say("Wade", "Juniper had a girl");
        await PostAsync(1, "Juniper's baby: girl.\nNext: temperature 4:50.", Three);

        _paper.Lines.Should().Equal(
            "",
            "Sunday, May 9",
            "",
            " 4:35     Wade     Juniper had a girl",
            " 4:35     HerdBot  Juniper's baby: girl.",
            "                   Next: temperature 4:50.",
            "                   1 Standing · 2 Not yet · 3 On it");
    }

    [Fact]
    public async Task A_free_line_tells_that_time_has_gone_by_and_a_new_day_is_named()
    {
        Say("Wade", "one");
        _clock.Advance(TimeSpan.FromMinutes(1));
        await PostAsync(1, "two");
        _clock.Advance(TimeSpan.FromHours(20));
        Say("Ines", "three");

        _paper.Lines.Skip(3).Should().Equal(
            " 4:35     Wade     one",
            "",
            " 4:36     HerdBot  two",
            "",
            "Monday, May 10",
            "",
            "12:36     Ines     three");
    }

    [Fact]
    public async Task An_answer_follows_its_line_even_where_the_minute_has_changed()
    {
        var message = Say("Wade", "one");
        _clock.Advance(TimeSpan.FromMinutes(1));
        await SendAsync(new Outgoing(PlainHouse.Group, 1, OutgoingKind.Send, "two") { Target = message });

        _paper.Lines.Skip(3).Should().Equal(" 4:35     Wade     one", " 4:36     HerdBot  two");
    }

    [Fact]
    public async Task A_mark_says_on_what_it_is()
    {
        var message = Say("Ines", "cord dipped");
        await SendAsync(new Outgoing(PlainHouse.Group, 1, OutgoingKind.Mark, "👍") { Target = message });

        _paper.Lines[^1].Should().Be(" 4:35     HerdBot  👍 on Ines's 'cord dipped'");
    }

    [Fact]
    public async Task A_press_names_its_button_and_the_edit_after_it_only_what_is_new()
    {
        await PostAsync(1, "Juniper's baby: is it up? 32 min old.", Three);
        Tap("Wade", "2");
        await SendAsync(new Outgoing(PlainHouse.Group, 2, OutgoingKind.Edit, "Juniper's baby: is it up? 32 min old.\nWade: not yet, 4:35.") { Target = PlainHouse.MessageOf(1), Buttons = Three });

        _paper.Lines.TakeLast(3).Should().Equal(
            " 4:35     Wade     [Not yet]  (under 'Juniper's baby: is it up? 32 min old.')",
            " 4:35     HerdBot  Wade: not yet, 4:35.",
            "                   1 Standing · 2 Not yet · 3 On it");
    }

    [Fact]
    public async Task An_edit_of_an_older_post_says_of_which()
    {
        await PostAsync(1, "Juniper: placenta out? 2 h after the birth. Gloves, never pull.", Three);
        Say("Wade", "it is");
        await SendAsync(new Outgoing(PlainHouse.Group, 2, OutgoingKind.Edit, "All is new") { Target = PlainHouse.MessageOf(1) });

        _paper.Lines[^1].Should().Be(" 4:35     HerdBot  All is new  (under 'Juniper: placenta out? 2 h after the bi…')");
    }

    [Fact]
    public async Task The_buttons_to_press_are_those_shown_last()
    {
        await PostAsync(1, "one", [new PostButton("A", "a")]);
        await PostAsync(2, "two", [new PostButton("B", "b")]);
        _screen.Buttons![1].Should().Be(new PostButton("B", "b"));

        await SendAsync(new Outgoing(PlainHouse.Group, 3, OutgoingKind.Edit, "two\ndone") { Target = PlainHouse.MessageOf(2) });
        _screen.Buttons![1].Should().Be(new PostButton("A", "a"), "the newer post shows none any more");

        await SendAsync(new Outgoing(PlainHouse.Group, 4, OutgoingKind.Edit, "one\ndone") { Target = PlainHouse.MessageOf(1) });
        _screen.Buttons.Should().BeNull();
    }

    [Fact]
    public async Task A_post_to_one_person_says_so()
    {
        await SendAsync(new Outgoing(PlainHouse.Group, 1, OutgoingKind.Send, "I may not write in the group.") { ToPerson = "Ines" });

        _paper.Lines[^1].Should().Be(" 4:35     HerdBot  (to Ines alone) I may not write in the group.");
    }

    [Fact]
    public void Names_made_of_markup_are_names()
    {
        Say("[bold]Bo[/]", "[/] {0}");

        _paper.Lines[^1].Should().Be(" 4:35     [bold]Bo[/]  [/] {0}");
    }

    [Fact]
    public void A_farm_with_the_other_clock_sees_that_one()
    {
        var farm = TryFarm.Setup.Farm with { Units = UnitSystem.Metric, Dates = DateOrder.DayFirst, Clock = new FarmClock(DateTimeZone.ForOffset(Offset.FromHours(8))) };
        var screen = new ChatScreen(_paper.Paper, farm);
        screen.Follow(_clock);

        screen.Hear(new Inbound.Line("k", PlainHouse.Group, new Person("", "Ines"), Now, "m", "hola", null));

        _paper.Lines.Should().Equal("", "Sunday, 9 May", "", "18:35  Ines     hola");
        screen.Time.Should().Be("Sunday, 9 May, 18:35");
    }

    private Instant Now => Instant.FromDateTimeOffset(_clock.GetUtcNow());

    private string Say(string by, string text)
    {
        var message = $"message {++_messages}";
        _screen.Hear(new Inbound.Line(message, PlainHouse.Group, new Person("", by), Now, message, text, null));
        return message;
    }

    private void Tap(string by, string data) => _screen.Hear(new Inbound.Tap("tap", PlainHouse.Group, new Person("", by), Now, data));

    private Task PostAsync(int number, string text, ImmutableArray<PostButton>? buttons = null) =>
        SendAsync(new Outgoing(PlainHouse.Group, number, OutgoingKind.Send, text) { Buttons = buttons ?? [] });

    private Task SendAsync(Outgoing outgoing) => _screen.SendAsync(outgoing);
}

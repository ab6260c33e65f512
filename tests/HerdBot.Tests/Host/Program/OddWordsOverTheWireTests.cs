using FluentAssertions;
using HerdBot.Core.Events;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Host.Program;

/// <summary>What people type and call themselves, through the whole program and back.</summary>
public sealed class OddWordsOverTheWireTests
{
    private const string Odd = "<b>_*[x](y)";

    [Fact]
    public async Task A_name_made_of_markup_comes_back_as_it_is()
    {
        await using var rig = await ProgramRig.PrepareAsync();
        await rig.RecordBirthAsync("Juniper", rig.Start);
        await rig.BootAsync();
        await rig.MoveInAsync();
        await rig.RunForAsync(Duration.FromMinutes(31));
        var asked = rig.SentTo(rig.Group).Last(post => post.ButtonData.Any(data => data.StartsWith("1|0|", StringComparison.Ordinal)));

        rig.Fake.Press(rig.Group, asked.MessageId, asked.ButtonData[0], rig.Person(Odd));
        await rig.Life.SettleAsync();

        rig.Fake.TextOf(asked).Should().Contain(Odd);
        (await rig.HistoryAsync()).OfType<HerdEvent.FactRecorded>().Last().By.Should().Be(Odd);
    }

    [Fact]
    public async Task An_animal_whose_name_is_markup_is_asked_for_by_just_that_name()
    {
        var script = HerdBot.Host.Rehearsal.RehearsalScript.Read([$$$"""{"farm": {"zone": "America/Denver", "herd": [{"name": "{{{Odd}}}", "role": "dam", "state": "due"}], "settings": {}}, "start": "2027-04-18T06:40"}"""]).Script!;
        await using var rig = await ProgramRig.PrepareAsync(script.Setup, new(script.Start.ToDateTimeOffset()));
        await rig.RecordBirthAsync(Odd, rig.Start);
        await rig.BootAsync();
        await rig.MoveInAsync();

        await rig.RunForAsync(Duration.FromMinutes(31));

        rig.SentTo(rig.Group).Should().Contain(post => post.Text.Contains($"{Odd}'s baby", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_message_of_4096_odd_characters_is_kept_to_the_letter_and_the_bot_goes_on()
    {
        const string Pattern = "<b>_*[x](y)~`>#+-=|{}.!&amp;\\ \u202Erev\u202C \u0000\u0007 🦙👩🏽‍🌾 ½ é 98.6 24 lb Juniper's baby\n";
        var text = string.Concat(Enumerable.Repeat(Pattern, 80))[..4096];
        await using var rig = await ProgramRig.StartAsync();

        await rig.SayAsync(text);
        await rig.SayAsync("/help");

        var heard = (await rig.HistoryAsync()).OfType<HerdEvent.LineHeard>().ToList();
        heard.Select(line => line.Text).Should().Equal(text, "/help");
        rig.SentTo(rig.Group)[^1].Text.Should().StartWith("Write as you always do");
        rig.State.Unsent.Should().BeEmpty();
    }
}

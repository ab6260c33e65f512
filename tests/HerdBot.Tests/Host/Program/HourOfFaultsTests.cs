using FluentAssertions;
using HerdBot.Core.Events;
using HerdBot.Core.Posting;
using HerdBot.Host.Composition;
using HerdBot.Tests.Support.FakeBotApi;
using HerdBot.Tests.Support.StoreDisk;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Host.Program;

/// <summary>An hour in which all goes wrong at random, and a calm one after it.</summary>
public sealed class HourOfFaultsTests
{
    private const string Again = "\n(perhaps sent before)";

    public static TheoryData<ulong> Seeds => [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task All_that_was_said_is_heard_once_and_all_that_fell_due_is_posted_in_order(ulong seed)
    {
        var chance = new Chance(seed);
        await using var rig = await ProgramRig.PrepareAsync();
        await rig.RecordBirthAsync("Juniper", rig.Start);
        await rig.BootAsync();
        await rig.MoveInAsync();
        var said = new List<int>();
        for (var minute = 0; minute < 60; minute += 1 + chance.Below(5))
        {
            await TroubleAsync(rig, chance, said);
            await rig.RunForAsync(Duration.FromMinutes(1 + chance.Below(5)));
        }
        rig.Group.Standing = BotStanding.Member;
        await rig.Life.SettleAsync();
        await rig.RunForAsync(Duration.FromHours(3));
        await rig.Life.SettleAsync();
        var history = await rig.HistoryAsync();

        history.OfType<HerdEvent.LineHeard>().Select(line => line.Message).Should().Equal(said.Select(message => $"{rig.Group.Id}/{message}"), "each is heard, once, in order");
        rig.State.Unsent.Should().BeEmpty("the line is back");
        Once(rig.SentTo(rig.Group).Select(post => post.Text)).Should().Equal(Posts(history), "all of it came, in order, and a repeat says that it is one");
        history.OfType<HerdEvent.PostSent>().Select(sent => sent.At).Should().Match(times => times.All(at => times.Count(other => other > at - Duration.FromMinutes(1) && other <= at) <= 20));
    }

    private static async Task TroubleAsync(ProgramRig rig, Chance chance, List<int> said)
    {
        Fault[] faults =
        [
            new Fault.Html(502), new Fault.Html(200), new Fault.Dropped(), new Fault.HalfAnswer(), new Fault.AnswerLost(), new Fault.NoResult(), new Fault.Error(500, "Internal Server Error"),
            new Fault.Error(401, "Unauthorized"), new Fault.Error(403, "Forbidden: bot was kicked from the supergroup chat"), new Fault.Error(400, "Bad Request: not enough rights to send text messages to the chat"),
            new Fault.Error(429, "Too Many Requests", RetryAfter: 1 + chance.Below(400)),
        ];
        switch (chance.Below(6))
        {
            case 0:
                rig.Fake.Break("sendMessage", faults[chance.Below(faults.Length)], times: 1 + chance.Below(3));
                break;
            case 1:
                rig.Fake.Break("getUpdates", faults[chance.Below(3)]);
                said.Add(rig.Fake.Say(rig.Group, ProgramRig.Ana, $"Trough {said.Count + 1} is full."));
                await HearAgainAsync(rig);
                break;
            case 2:
                rig.Group.Standing = rig.Group.Standing == BotStanding.Muted ? BotStanding.Member : BotStanding.Muted;
                break;
            case 3 when said.Count > 0:
                rig.Fake.DeliverAgain(rig.Group, said[chance.Below(said.Count)]);
                break;
            case 4:
                await rig.CutAsync();
                await rig.BootAsync();
                break;
            default:
                said.Add(rig.Fake.Say(rig.Group, chance.OneIn(2) ? ProgramRig.Ana : ProgramRig.Ben, $"Trough {said.Count + 1} is full."));
                break;
        }
    }

    /// <summary>The receiver waits a little after a fault, on a clock that stands still: it is moved until all is heard.</summary>
    private static async Task HearAgainAsync(ProgramRig rig)
    {
        using var look = new PeriodicTimer(TimeSpan.FromMilliseconds(1), SystemClocks.Real);
        while (!(rig.Fake.Polled && rig.Fake.Unconfirmed == 0) && await look.WaitForNextTickAsync())
        {
            rig.Clock.Advance(TimeSpan.FromSeconds(rig.Life.Deaf ? 1 : 0));
        }
    }

    /// <summary>The texts without what says of itself that it was perhaps sent before, where it was.</summary>
    private static List<string> Once(IEnumerable<string> sent)
    {
        var once = new List<string>();
        foreach (var text in sent.Where(text => !text.StartsWith("I keep the birth log", StringComparison.Ordinal)))
        {
            var repeat = text.EndsWith(Again, StringComparison.Ordinal);
            var plain = repeat ? text[..^Again.Length] : text;
            if (!repeat || once.LastOrDefault() != plain)
            {
                once.Add(plain);
            }
        }
        return once;
    }

    private static IEnumerable<string> Posts(IEnumerable<HerdEvent> history) =>
        history.OfType<HerdEvent.PostQueued>().Select(queued => queued.Post).Where(post => post.Kind is not (PostKind.React or PostKind.Edit)).Select(post => post.Text);
}

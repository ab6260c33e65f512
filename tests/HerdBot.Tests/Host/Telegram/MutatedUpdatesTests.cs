using System.Text;
using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.App.Outbox;
using HerdBot.App.Ports;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Support;
using HerdBot.Tests.Support.StoreDisk;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Host.Telegram;

/// <summary>Updates of any shape: each ends in a record, a question, an answer or aside; none ends the program or holds up the rest.</summary>
public sealed class MutatedUpdatesTests(ITestOutputHelper output)
{
    private static readonly string[] Recorded =
    [
        """{"update_id":1,"message":{"message_id":5,"from":{"id":4711,"is_bot":false,"first_name":"Ana"},"chat":{"id":-1001700000001,"type":"supergroup","title":"Barn"},"date":1808052300,"text":"Sage had a girl 6:40, 24 lb"}}""",
        """{"update_id":2,"message":{"message_id":6,"from":{"id":4712,"is_bot":false,"first_name":"Ben"},"chat":{"id":-1001700000001,"type":"supergroup","title":"Barn"},"date":1808052400,"text":"temp 98.4","reply_to_message":{"message_id":3,"date":1,"chat":{"id":-1001700000001}}}}""",
        """{"update_id":3,"edited_message":{"message_id":5,"from":{"id":4711,"is_bot":false,"first_name":"Ana"},"chat":{"id":-1001700000001,"type":"supergroup"},"date":1808052300,"edit_date":1808052500,"text":"Sage had a boy 6:45, 11.5 kg"}}""",
        """{"update_id":4,"callback_query":{"id":"438","from":{"id":4711,"is_bot":false,"first_name":"Ana"},"message":{"message_id":9,"date":0,"chat":{"id":-1001700000001,"type":"supergroup"}},"chat_instance":"1","data":"1|0|1|0"}}""",
        """{"update_id":5,"my_chat_member":{"chat":{"id":-1001700000001,"type":"supergroup","title":"Barn"},"from":{"id":4711,"is_bot":false,"first_name":"Ana"},"date":1808052300,"old_chat_member":{"status":"left"},"new_chat_member":{"status":"member"}}}""",
        """{"update_id":6,"message":{"message_id":7,"from":{"id":4711,"is_bot":false,"first_name":"Ana"},"chat":{"id":-1001700000001,"type":"supergroup"},"date":1808052300,"voice":{"file_id":"v","duration":3}}}""",
    ];

    private static readonly string[] Odds = ["null", "-1", "1e999", "9223372036854775808", "\"\"", "\"\\ud800\"", "[]", "{}", "true", "\"1|3|1|0\"", "\"no, 99.2 F\"", "\"Sage's baby 4000 lb at 25:99\"", "\"\\u0000\\u202e\"", "0"];

    private static readonly int Count = LongRun.Of("HERDBOT_FUZZ", 1500);

    [Fact]
    public async Task None_ends_the_program_or_stays_unworked()
    {
        var chance = new Chance(20270418);
        var clock = new FakeTimeProvider(Instant.FromUtc(2027, 4, 18, 12, 45).ToDateTimeOffset());
        var worked = 0;
        while (worked < Count)
        {
            // A history of its own now and then: a farm of a million odd messages is not what is tried here.
            var store = new InMemoryHerdStore();
            var door = new OpenDoor(new GroupId("tg:-1001700000001"));
            using var pipeline = new Pipeline(store, new TelegramInbound(new TelegramPresence()), door, new NoWakeUp(), new OutboxRun(new TakingAll(), door, NullLogger<OutboxRun>.Instance),
                new FarmSetup(Some.Farm(), [Some.Dam("Sage"), Some.Dam("Willow")]), clock, NullLogger<Pipeline>.Instance);
            using var stop = new CancellationTokenSource();
            await pipeline.StartAsync();
            var running = pipeline.RunAsync(stop.Token);
            var entries = Enumerable.Range(worked, Math.Min(500, Count - worked)).Select(n => new InboxEntry($"u{n}", Instant.FromDateTimeOffset(clock.GetUtcNow()), Mutated(chance))).ToList();
            await pipeline.TakeInAsync(entries);
            await Task.WhenAny(pipeline.IdleAsync(), running);
            running.IsCompleted.Should().BeFalse($"it goes on: {running.Exception}");
            (await store.ReadWaitingAsync()).Should().BeEmpty();
            await stop.CancelAsync();
            await running.ContinueWith(_ => { }, TaskScheduler.Default);
            worked += entries.Count;
            clock.Advance(TimeSpan.FromMinutes(chance.Below(600)));
        }
        output.WriteLine($"{worked} mutated updates, each worked on or set aside, none left, no stop");
    }

    /// <summary>A recorded update with a few places of it changed: cut, doubled, swapped for odd values, or torn off.</summary>
    private static string Mutated(Chance chance)
    {
        var text = new StringBuilder(Recorded[chance.Below(Recorded.Length)]);
        for (var change = chance.Below(4); change >= 0; change--)
        {
            var at = chance.Below(text.Length);
            switch (chance.Below(5))
            {
                case 0:
                    text.Remove(at, Math.Min(1 + chance.Below(6), text.Length - at));
                    break;
                case 1:
                    text.Insert(at, text.ToString(at, Math.Min(1 + chance.Below(40), text.Length - at)));
                    break;
                case 2:
                    Swap(text, at, Odds[chance.Below(Odds.Length)]);
                    break;
                case 3:
                    text[at] = (char)(32 + chance.Below(0x300));
                    break;
                default:
                    Swap(text, at, Odds[chance.Below(Odds.Length)]);
                    break;
            }
            if (text.Length == 0)
            {
                return "";
            }
        }
        return text.ToString();
    }

    /// <summary>Puts another value in the place of the one that follows the next colon.</summary>
    private static void Swap(StringBuilder text, int from, string value)
    {
        var whole = text.ToString();
        var colon = whole.IndexOf(':', from);
        var end = colon < 0 ? -1 : whole.IndexOfAny([',', '}'], colon);
        if (end > 0)
        {
            text.Remove(colon + 1, end - colon - 1).Insert(colon + 1, value);
        }
    }

    private sealed class NoWakeUp : IWakeUp
    {
        public Task ArmAsync(Instant? at, CancellationToken cancellation = default) => Task.CompletedTask;
    }

    private sealed class TakingAll : IChat
    {
        public int? MostAMinute => null;

        public Task<SendResult> SendAsync(Outgoing outgoing, CancellationToken cancellation = default) => Task.FromResult<SendResult>(new SendResult.Sent($"sent {outgoing.Number}"));
    }
}

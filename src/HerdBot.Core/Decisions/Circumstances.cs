using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Core.Reading;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>What the reader may know of a message's circumstances, out of the herd's state.</summary>
internal static class Circumstances
{
    private const int LogKept = 40;
    private static readonly Duration SaidKept = Duration.FromHours(12);

    public static ReadingContext Of(Draft draft, string by, string message, string? replyTo, Instant at)
    {
        var state = draft.State;
        var log = state.NewestFirst().Where(record => !record.Withdrawn && record.Message != message).Take(LogKept).Reverse().ToImmutableArray();
        var reminders = Reminders(draft).ToImmutableArray();
        return new ReadingContext(at.InZone(draft.Farm.Clock.Zone), Roll.Of(draft, at))
        {
            Units = draft.Farm.Units,
            Dates = draft.Farm.Dates,
            Language = draft.Farm.Language,
            From = by,
            People = draft.Farm.People,
            Words = draft.Farm.Words,
            Log = [.. log.Select(record => new LoggedFact(Named(state, record), record.At, record.Id))],
            Said = [.. state.Lines.Where(line => line.Message != message && line.At > at - SaidKept && line.At <= at)
                .Select(line => new SaidLine(line.By, line.Text, at - line.At))],
            Reminders = [.. reminders.Select(task => new OpenReminder(CareTaskWords.Word(task.Key.Name), state.Find(task.Key.Animal)?.Name))],
            ReplyToReminder = ReplyToReminder(state, reminders, replyTo),
            ReplyToLog = ReplyToLog(state, log, replyTo),
        };
    }

    /// <summary>The post that a message of the chat is; null where it is none of ours.</summary>
    public static Post? PostOf(HerdState state, string? message) =>
        message is null ? null : state.Posts.Values.LastOrDefault(progress => progress.Message == message)?.Post;

    /// <summary>Open tasks that people were told of, the one told last at the end.</summary>
    private static IEnumerable<CareTask> Reminders(Draft draft) => draft.Plan
        .Where(task => task.OpenAt(draft.Now) && draft.State.Posted.ContainsKey(task.Key))
        .OrderBy(task => draft.State.Posted[task.Key].Last).ThenBy(task => task.LevelAt(draft.Now));

    private static int? ReplyToReminder(HerdState state, ImmutableArray<CareTask> reminders, string? replyTo)
    {
        foreach (var told in PostOf(state, replyTo)?.Tasks ?? [])
        {
            var index = reminders.ToList().FindLastIndex(task => task.Key.Name == told.Key.Name && task.Key.Animal == told.Key.Animal);
            if (index >= 0)
            {
                return index;
            }
        }
        return null;
    }

    /// <summary>The record that a message replies to: one of its own message, or one that the bot's receipt of it states.</summary>
    private static int? ReplyToLog(HerdState state, ImmutableArray<HerdRecord> log, string? replyTo)
    {
        var message = PostOf(state, replyTo)?.ReplyTo ?? replyTo;
        return message is not null && log.ToList().FindLastIndex(record => record.Message == message) is var index and >= 0 ? index : null;
    }

    private static Fact Named(HerdState state, HerdRecord record) => record.Fact with { Animal = state.Find(record.Animal)?.Name ?? record.Fact.Animal };
}

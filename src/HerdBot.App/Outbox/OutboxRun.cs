using System.Collections.Concurrent;
using System.Collections.Immutable;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Events;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Core.Wording;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace HerdBot.App.Outbox;

/// <summary>
/// Hands a group's posts to the chat, oldest first. Each is noted before it is handed over and after: one whose outcome
/// is not known is sent once more and says so. No error ever finishes a post.
/// </summary>
/// <remarks>Safe for several groups at once, for one group only one call at a time.</remarks>
/// <param name="chat">Where to.</param>
/// <param name="door">Knows in which chat a group is met.</param>
/// <param name="log">For what goes wrong.</param>
public sealed partial class OutboxRun(IChat chat, IDoor door, ILogger<OutboxRun> log)
{
    private static readonly Duration LongestPause = Duration.FromMinutes(5);

    private readonly ConcurrentDictionary<GroupId, Lane> lanes = [];

    /// <summary>Sends what a group has waiting.</summary>
    /// <returns>When to go on, where the chat or the line wants a pause; null where all is sent.</returns>
    public async Task<Instant?> SendAsync(GroupDesk desk, Func<Instant> clock, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(clock);
        var lane = lanes.GetOrAdd(desk.Group, _ => new Lane(chat.MostAMinute));
        while (desk.State is { Unsent.Count: > 0 } state)
        {
            var now = clock();
            if (lane.NotBefore(now) is { } later)
            {
                return later;
            }
            if (await SendOneAsync(desk, state.Posts[state.Unsent.Min], lane, clock, cancellation) is { } pause)
            {
                return pause;
            }
        }
        return null;
    }

    private async Task<Instant?> SendOneAsync(GroupDesk desk, PostProgress progress, Lane lane, Func<Instant> clock, CancellationToken cancellation)
    {
        var number = progress.Post.Number;
        await desk.NoteAsync(new HerdEvent.PostSending(number, clock()), clock(), cancellation);
        var result = await chat.SendAsync(Outgoing(desk, progress), cancellation);
        var now = clock();
        switch (result)
        {
            case SendResult.Sent sent:
                lane.Went(now);
                await desk.NoteAsync(new HerdEvent.PostSent(number, sent.MessageId, now), now, cancellation);
                return null;
            case SendResult.Moved moved:
                await door.MovedAsync(desk.Group, moved.To, cancellation);
                await ParkAsync($"the chat is {moved.To} now");
                return lane.Pause(now, Duration.FromSeconds(1));
            case SendResult.Wait wait:
                await ParkAsync($"a pause of {wait.Pause.TotalSeconds:0} s is wanted");
                return lane.Pause(now, wait.Pause);
            case SendResult.Refused refused when progress.Post.Kind is PostKind.React or PostKind.Edit:
                LogCosmetic(number, refused.Why);
                await desk.NoteAsync(new HerdEvent.PostSent(number, "", now), now, cancellation);
                return null;
            case SendResult.Refused refused:
                LogParked(number, refused.Why);
                await ParkAsync(refused.Why);
                return lane.Fail(now, LongestPause);
            case SendResult.NotSent notSent:
                LogLine(number, notSent.Why);
                await ParkAsync(notSent.Why);
                return lane.Fail(now, LongestPause);
            case SendResult.Unknown unknown:
                LogLine(number, unknown.Why);
                return lane.Fail(now, LongestPause);
            default:
                throw new System.Diagnostics.UnreachableException(result.ToString());
        }

        // Certainly not sent: when it is, it need not say that it may have been sent before.
        Task ParkAsync(string why) => desk.NoteAsync(new HerdEvent.PostParked(number, why, now), now, cancellation);
    }

    private Outgoing Outgoing(GroupDesk desk, PostProgress progress)
    {
        var post = progress.Post;
        var kind = post.Kind switch { PostKind.React => OutgoingKind.Mark, PostKind.Edit => OutgoingKind.Edit, _ => OutgoingKind.Send };
        var repeated = progress.Attempts > 0 && kind == OutgoingKind.Send;
        return new Outgoing(door.ChatOf(desk.Group), post.Number, kind, repeated ? $"{post.Text}\n{Phrases.Of(desk.Farm.Language).Say("post.repeated")}" : post.Text)
        {
            ToPerson = post.To == Post.Group ? null : post.To,
            Loud = post.Kind == PostKind.Alarm,
            Target = post.Edits is { } edited ? desk.State.Posts.GetValueOrDefault(edited)?.Message : post.ReplyTo,
            Buttons = [.. post.Buttons.Select(button => new PostButton(button.Label, ButtonData.Write(post.Edits ?? post.Number, button)))],
        };
    }

    [LoggerMessage(2101, LogLevel.Warning, "Post {Number} was refused and waits: {Why}")]
    private partial void LogParked(int number, string why);

    [LoggerMessage(2102, LogLevel.Warning, "Post {Number} has not got through and waits: {Why}")]
    private partial void LogLine(int number, string why);

    [LoggerMessage(2103, LogLevel.Information, "Mark or edit {Number} was refused and is left: {Why}")]
    private partial void LogCosmetic(int number, string why);

    /// <summary>One group's pace: so many posts a minute, and the pauses that the chat or the line wants.</summary>
    private sealed class Lane(int? mostAMinute)
    {
        private readonly Queue<Instant> sent = new();
        private Instant notBefore = Instant.MinValue;

        public int Failures { get; private set; }

        public Instant? NotBefore(Instant now)
        {
            while (sent.Count > 0 && now - sent.Peek() >= Duration.FromMinutes(1))
            {
                sent.Dequeue();
            }
            return now < notBefore ? notBefore : sent.Count >= mostAMinute ? sent.Peek() + Duration.FromMinutes(1) : null;
        }

        public void Went(Instant now)
        {
            if (mostAMinute is not null)
            {
                sent.Enqueue(now);
            }
            Failures = 0;
        }

        public Instant Pause(Instant now, Duration pause) => notBefore = now + pause;

        public Instant Fail(Instant now, Duration longest)
        {
            var pause = Duration.Min(Duration.FromSeconds(Math.Pow(2, Math.Min(Failures, 12))), longest);
            Failures++;
            return Pause(now, pause);
        }
    }
}

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
/// <param name="pictures">Draws pictures; without it posts go out as words alone.</param>
public sealed partial class OutboxRun(IChat chat, IDoor door, ILogger<OutboxRun> log, IPictures? pictures = null) : IHandOver
{
    private static readonly Duration LongestPause = Duration.FromMinutes(5);

    private readonly ConcurrentDictionary<GroupId, Lane> lanes = [];

    /// <inheritdoc/>
    public HerdEvent? Next(GroupId group, HerdState state, Instant now)
    {
        ArgumentNullException.ThrowIfNull(state);
        return !state.Unsent.IsEmpty && LaneOf(group).TryHand(state, now) ? new HerdEvent.PostSending(state.Unsent.Min, now) : null;
    }

    /// <inheritdoc/>
    public void TakeBack(GroupId group) => LaneOf(group).TakeBack();

    /// <summary>Sends what a group has waiting.</summary>
    /// <returns>When to go on, where the chat or the line wants a pause; null where all is sent.</returns>
    public async Task<Instant?> SendAsync(GroupDesk desk, Func<Instant> clock, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(clock);
        var lane = LaneOf(desk.Group);
        while (desk.State is { Unsent.Count: > 0 } state)
        {
            if (lane.InHand(state) is { } progress)
            {
                await SendOneAsync(desk, progress, lane, clock, cancellation);
            }
            else if (lane.NotBefore(clock()) is { } later)
            {
                return later;
            }
            else
            {
                await desk.NoteAsync([], clock(), cancellation);
            }
        }
        return null;
    }

    /// <summary>Why a group's posts do not get through, in the chat's or the line's words; null where they do.</summary>
    public string? TroubleOf(GroupId group) => LaneOf(group).Trouble;

    private Lane LaneOf(GroupId group) => lanes.GetOrAdd(group, _ => new Lane(chat.MostAMinute));

    private async Task SendOneAsync(GroupDesk desk, PostProgress progress, Lane lane, Func<Instant> clock, CancellationToken cancellation)
    {
        var number = progress.Post.Number;
        var result = await chat.SendAsync(Outgoing(desk, progress), cancellation);
        var now = clock();
        switch (result)
        {
            case SendResult.Sent sent:
                lane.Went(now);
                await desk.NoteAsync([new HerdEvent.PostSent(number, sent.MessageId, now)], now, cancellation);
                break;
            case SendResult.Moved moved:
                await door.MovedAsync(desk.Group, moved.To, cancellation);
                lane.Pause(now, Duration.FromSeconds(1));
                await ParkAsync($"the chat is {moved.To} now");
                break;
            case SendResult.Wait wait:
                lane.Pause(now, wait.Pause);
                await ParkAsync($"a pause of {wait.Pause.TotalSeconds:0} s is wanted");
                break;
            case SendResult.Refused refused when progress.Post.Kind is PostKind.React or PostKind.Edit:
                LogCosmetic(number, refused.Why);
                await desk.NoteAsync([new HerdEvent.PostSent(number, "", now)], now, cancellation);
                break;
            case SendResult.Refused refused:
                LogParked(number, refused.Why);
                lane.Fail(now, LongestPause, refused.Why);
                await ParkAsync(refused.Why);
                break;
            case SendResult.NotSent notSent:
                LogLine(number, notSent.Why);
                lane.Fail(now, LongestPause, notSent.Why);
                await ParkAsync(notSent.Why);
                break;
            case SendResult.Unknown unknown:
                LogLine(number, unknown.Why);
                lane.Fail(now, LongestPause, unknown.Why);
                break;
            default:
                throw new System.Diagnostics.UnreachableException(result.ToString());
        }

        // Certainly not sent: when it is, it need not say that it may have been sent before.
        Task ParkAsync(string why) => desk.NoteAsync([new HerdEvent.PostParked(number, why, now)], now, cancellation);
    }

    private Outgoing Outgoing(GroupDesk desk, PostProgress progress)
    {
        var post = progress.Post;
        var kind = post.Kind switch { PostKind.React => OutgoingKind.Mark, PostKind.Edit => OutgoingKind.Edit, _ => OutgoingKind.Send };
        var repeated = progress.Attempts > 1 && kind == OutgoingKind.Send;
        return new Outgoing(door.ChatOf(desk.Group), post.Number, kind, repeated ? $"{post.Text}\n{Phrases.Of(desk.Farm.Language).Say("post.repeated")}" : post.Text)
        {
            ToPerson = post.To == Post.Group ? null : post.To,
            Loud = post.Kind == PostKind.Alarm,
            Picture = post.Picture is { } picture && kind == OutgoingKind.Send ? pictures?.Draw(picture, desk.State, desk.Farm, post.At) : null,
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

    /// <summary>One group's pace: so many posts a minute, and the pauses that the chat or the line wants. Safe for several threads.</summary>
    private sealed class Lane(int? mostAMinute)
    {
        private readonly Lock gate = new();
        private readonly Queue<Instant> sent = new();
        private Instant notBefore = Instant.MinValue;
        private int failures;
        private string? trouble;
        private (int Number, int Attempt)? inHand;

        public string? Trouble
        {
            get
            {
                lock (gate)
                {
                    return trouble;
                }
            }
        }

        /// <summary>The post that is in hand, once the state shows that this is on record; else null.</summary>
        public PostProgress? InHand(HerdState state)
        {
            lock (gate)
            {
                return inHand is { } hand && state.Unsent.Contains(hand.Number) && state.Posts[hand.Number] is { } progress && progress.Attempts >= hand.Attempt ? progress : null;
            }
        }

        /// <summary>Takes the oldest waiting post in hand; false where one is in hand already, or it must wait.</summary>
        public bool TryHand(HerdState state, Instant now)
        {
            lock (gate)
            {
                if ((inHand is { } hand && state.Unsent.Contains(hand.Number)) || NotBefore(now) is not null)
                {
                    return false;
                }
                inHand = (state.Unsent.Min, state.Posts[state.Unsent.Min].Attempts + 1);
                return true;
            }
        }

        public void TakeBack()
        {
            lock (gate)
            {
                inHand = null;
            }
        }

        public Instant? NotBefore(Instant now)
        {
            lock (gate)
            {
                while (sent.Count > 0 && now - sent.Peek() >= Duration.FromMinutes(1))
                {
                    sent.Dequeue();
                }
                return now < notBefore ? notBefore : sent.Count >= mostAMinute ? sent.Peek() + Duration.FromMinutes(1) : null;
            }
        }

        public void Went(Instant now)
        {
            lock (gate)
            {
                if (mostAMinute is not null)
                {
                    sent.Enqueue(now);
                }
                (failures, trouble) = (0, null);
            }
        }

        /// <summary>What is in hand did not get through: it is taken in hand anew after a pause.</summary>
        public void Pause(Instant now, Duration pause)
        {
            lock (gate)
            {
                (notBefore, inHand) = (now + pause, null);
            }
        }

        public void Fail(Instant now, Duration longest, string why)
        {
            lock (gate)
            {
                trouble = why;
                Pause(now, Duration.Min(Duration.FromSeconds(Math.Pow(2, Math.Min(failures, 12))), longest));
                failures++;
            }
        }
    }
}

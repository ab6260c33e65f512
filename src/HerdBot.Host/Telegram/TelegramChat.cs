using System.Collections.Concurrent;
using HerdBot.App.Ports;
using Microsoft.Extensions.Logging;
using Telegram.Bot.Requests;
using Telegram.Bot.Types;
using Telegram.Bot.Types.Enums;
using Telegram.Bot.Types.ReplyMarkups;

namespace HerdBot.Host.Telegram;

/// <summary>Sends to Telegram and says what came of it. The group of an <see cref="Outgoing"/> is the chat to send to.</summary>
/// <param name="line">The line to Telegram.</param>
/// <param name="findPerson">The number of a person by name; null where not known.</param>
/// <param name="log">Takes what went wrong, without the token and without anybody's words.</param>
public sealed partial class TelegramChat(TelegramLine line, Func<string, long?> findPerson, ILogger<TelegramChat> log) : IChat
{
    /// <summary>How many posts a minute Telegram lets into one group. Source: core.telegram.org/bots/faq, 2026.</summary>
    internal const int GroupsPace = 20;

    // Source: the Bot API's page on sendPhoto, 0-1024 characters.
    private const int LongestCaption = 1024;

    // How many parts of a long text have gone out, so that a pause in the middle repeats none of them.
    private readonly ConcurrentDictionary<(long Chat, GroupId Group, int Number, string Text), int> _partsSent = new();

    /// <inheritdoc/>
    public int? MostAMinute => GroupsPace;

    /// <inheritdoc/>
    public async Task<SendResult> SendAsync(Outgoing outgoing, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(outgoing);
        if (!TelegramIds.TryChat(outgoing.Group, out var chat))
            return new SendResult.Refused($"'{outgoing.Group}' is no chat of Telegram's.");
        var result = outgoing.Kind switch
        {
            OutgoingKind.Send => await SendAsync(chat, outgoing, cancellation),
            OutgoingKind.Edit => await EditAsync(chat, outgoing, cancellation),
            OutgoingKind.Mark => await MarkAsync(chat, outgoing, cancellation),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        if (result is not SendResult.Sent)
            LogResult(outgoing.Group, outgoing.Number, outgoing.Kind, result);
        return result;
    }

    // Who never wrote to the bot cannot be written to. What is meant for them must be seen all the same: in the group.
    private async Task<SendResult> SendAsync(long chat, Outgoing outgoing, CancellationToken cancellation)
    {
        if (outgoing.ToPerson is { } name && findPerson(name) is { } person && person != chat)
        {
            var result = await PostAsync(person, outgoing, cancellation);
            if (result is not (SendResult.Refused or SendResult.Moved))
                return result;
        }
        return await PostAsync(chat, outgoing, cancellation);
    }

    private async Task<SendResult> PostAsync(long chat, Outgoing outgoing, CancellationToken cancellation)
    {
        var parts = TextParts.Of(outgoing.Text);
        if (parts.Count == 0)
            return new SendResult.Refused("There is nothing to say.");
        var key = (chat, outgoing.Group, outgoing.Number, outgoing.Text);
        SendResult result;
        var next = _partsSent.GetValueOrDefault(key);
        do
        {
            result = await PostPartAsync(chat, outgoing, parts, next, cancellation);
            if (result is not SendResult.Sent)
                return result;
            _partsSent[key] = ++next;
        }
        while (next < parts.Count);
        _partsSent.TryRemove(key, out _);
        return result;
    }

    // The reply hangs on the first part, the buttons on the last; that one's id stands for the whole.
    private async Task<SendResult> PostPartAsync(
        long chat, Outgoing outgoing, IReadOnlyList<string> parts, int index, CancellationToken cancellation)
    {
        var reply = index == 0 && TelegramIds.TryMessage(outgoing.Target, out var there, out var target) && there == chat
            ? new ReplyParameters { MessageId = target, AllowSendingWithoutReply = true }
            : null;
        var result = await TryAsync(() => RequestAsync(reply), cancellation);
        return result is { Failure: { } failure } && reply is not null && SendFailure.IsAboutReply(failure)
            ? (await TryAsync(() => RequestAsync(null), cancellation)).Result
            : result.Result;

        async Task<string> RequestAsync(ReplyParameters? replyTo)
        {
            if (!outgoing.Picture.IsEmpty && parts.Count == 1 && parts[0].Length <= LongestCaption)
            {
                using var picture = new MemoryStream(outgoing.Picture.ToArray());
                var photo = new SendPicture
                {
                    ChatId = chat,
                    Photo = InputFile.FromStream(picture, "season.png"),
                    Caption = parts[0],
                    ReplyParameters = replyTo,
                    ReplyMarkup = Keyboard(outgoing),
                };
                return TelegramIds.MessageOf(chat, (await line.Send.SendRequest(photo, cancellation)).MessageId);
            }
            var request = new SendPost
            {
                ChatId = chat,
                Text = parts[index],
                Entities = index == 0 ? Bold(parts[index], outgoing.Loud) : null,
                ReplyParameters = replyTo,
                ReplyMarkup = index == parts.Count - 1 ? Keyboard(outgoing) : null,
            };
            return TelegramIds.MessageOf(chat, (await line.Send.SendRequest(request, cancellation)).MessageId);
        }
    }

    private async Task<SendResult> EditAsync(long chat, Outgoing outgoing, CancellationToken cancellation)
    {
        var parts = TextParts.Of(outgoing.Text);
        // A message of the chat's former life, before a move, is out of reach, and a second message cannot be edited in.
        if (parts.Count != 1 || !TelegramIds.TryMessage(outgoing.Target, out var there, out var target) || (there != chat && there < 0))
            return await SendAnewAsync();
        var request = new EditPost
        {
            ChatId = there,
            MessageId = target,
            Text = parts[0],
            Entities = Bold(parts[0], outgoing.Loud),
            ReplyMarkup = Keyboard(outgoing),
        };
        var (result, failure) = await TryAsync(async () =>
        {
            await line.Send.SendRequest(request, cancellation);
            return outgoing.Target!;
        }, cancellation);
        return failure switch
        {
            not null when SendFailure.IsUnchanged(failure) => new SendResult.Sent(outgoing.Target!),
            not null when SendFailure.IsGone(failure) => await SendAnewAsync(),
            _ => result,
        };

        Task<SendResult> SendAnewAsync() => SendAsync(chat, outgoing with { Target = null }, cancellation);
    }

    private async Task<SendResult> MarkAsync(long chat, Outgoing outgoing, CancellationToken cancellation)
    {
        if (ReactionMarks.Of(outgoing.Text) is not { } mark)
            return new SendResult.Refused($"'{outgoing.Text}' is no mark of Telegram's.");
        if (!TelegramIds.TryMessage(outgoing.Target, out var there, out var target) || (there != chat && there < 0))
            return new SendResult.Refused("The message to mark is not in this chat.");
        return (await TryAsync(async () =>
        {
            var request = new SetMessageReactionRequest
            {
                ChatId = there,
                MessageId = target,
                Reaction = [new ReactionTypeEmoji { Emoji = mark }],
            };
            await line.Send.SendRequest(request, cancellation);
            return outgoing.Target!;
        }, cancellation)).Result;
    }

    private async Task<(SendResult Result, Exception? Failure)> TryAsync(Func<Task<string>> send, CancellationToken cancellation)
    {
        try
        {
            return (new SendResult.Sent(await send()), null);
        }
        catch (Exception failure) when (SendFailure.IsOne(failure) && !cancellation.IsCancellationRequested)
        {
            return (SendFailure.Of(failure, line.Veil.Tell(failure)), failure);
        }
    }

    private static MessageEntity[]? Bold(string text, bool loud)
    {
        var length = text.Split('\n', 2)[0].TrimEnd().Length;
        return loud && length > 0 ? [new MessageEntity { Type = MessageEntityType.Bold, Offset = 0, Length = length }] : null;
    }

    private static InlineKeyboardMarkup? Keyboard(Outgoing outgoing) => outgoing.Buttons.IsDefaultOrEmpty
        ? null
        : new InlineKeyboardMarkup(outgoing.Buttons.Select(button => InlineKeyboardButton.WithCallbackData(button.Label, button.Data)));

    [LoggerMessage(3011, LogLevel.Warning, "Post {Group}#{Number} ({Kind}): {Result}")]
    private partial void LogResult(GroupId group, int number, OutgoingKind kind, SendResult result);
}

using Telegram.Bot.Requests;
using Telegram.Bot.Types;
using Telegram.Bot.Types.ReplyMarkups;

namespace HerdBot.Host.Telegram;

/// <summary>All that is read of the message Telegram returns: a part of a kind unknown to the library cannot hide that it was sent.</summary>
public sealed record PostedMessage(int MessageId);

/// <summary>A new message, plain text and entities alone: no character of it can be taken for markup.</summary>
public sealed class SendPost() : RequestBase<PostedMessage>("sendMessage")
{
    public required long ChatId { get; init; }

    public required string Text { get; init; }

    public IEnumerable<MessageEntity>? Entities { get; init; }

    public LinkPreviewOptions LinkPreviewOptions { get; init; } = LinkPreviewOptions.Disabled;

    public ReplyParameters? ReplyParameters { get; init; }

    public InlineKeyboardMarkup? ReplyMarkup { get; init; }
}

/// <summary>A new message with a picture; its words are the caption.</summary>
public sealed class SendPicture() : FileRequestBase<PostedMessage>("sendPhoto")
{
    public required long ChatId { get; init; }

    public required InputFile Photo { get; init; }

    public required string Caption { get; init; }

    public ReplyParameters? ReplyParameters { get; init; }

    public InlineKeyboardMarkup? ReplyMarkup { get; init; }
}

/// <summary>New words and buttons for an earlier message of ours; without buttons it loses those it had.</summary>
public sealed class EditPost() : RequestBase<PostedMessage>("editMessageText")
{
    public required long ChatId { get; init; }

    public required int MessageId { get; init; }

    public required string Text { get; init; }

    public IEnumerable<MessageEntity>? Entities { get; init; }

    public LinkPreviewOptions LinkPreviewOptions { get; init; } = LinkPreviewOptions.Disabled;

    public InlineKeyboardMarkup? ReplyMarkup { get; init; }
}

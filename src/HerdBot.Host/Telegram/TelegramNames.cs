using System.Globalization;
using System.Text;
using HerdBot.App.Messages;

namespace HerdBot.Host.Telegram;

/// <summary>Who somebody is and what to call them.</summary>
public static class TelegramNames
{
    private const string Nameless = "Somebody";

    /// <summary>Whoever speaks for the whole chat (an anonymous administrator) is the chat, not the bot that stands in.</summary>
    public static Person Sender(WireMessage message)
    {
        ArgumentNullException.ThrowIfNull(message);
        return message switch
        {
            { SenderChat: { } chat } => new Person(TelegramIds.PersonOf(chat.Id), FirstOf(message.AuthorSignature, chat.Title)),
            { From: { } user } => Of(user),
            _ => new Person(TelegramIds.PersonOf(message.Chat.Id), Title(message.Chat)),
        };
    }

    /// <summary>The first name, and the initial of the last name where there is one.</summary>
    public static Person Of(WireUser user)
    {
        ArgumentNullException.ThrowIfNull(user);
        var first = Clean(user.FirstName);
        var last = Clean(user.LastName);
        var name = first.Length > 0 && last.Length > 0 ? $"{first} {StringInfo.GetNextTextElement(last)}." : first;
        return new Person(TelegramIds.PersonOf(user.Id), FirstOf(name, last, user.Username));
    }

    /// <summary>A group's title; a private chat's is the person's name.</summary>
    public static string Title(WireChat chat)
    {
        ArgumentNullException.ThrowIfNull(chat);
        return FirstOf(chat.Title, chat.FirstName, chat.LastName);
    }

    private static string FirstOf(params ReadOnlySpan<string?> names)
    {
        foreach (var name in names)
        {
            if (Clean(name) is { Length: > 0 } clean)
                return clean;
        }
        return Nameless;
    }

    // Names are free text of up to 64 characters. Line breaks and direction marks would upset what they are put into.
    private static string Clean(string? name)
    {
        var kept = new StringBuilder();
        foreach (var rune in (name ?? "").EnumerateRunes())
        {
            var kind = Rune.GetUnicodeCategory(rune);
            if (Rune.IsWhiteSpace(rune) || kind is UnicodeCategory.Control)
                kept.Append(' ');
            else if (kind is not UnicodeCategory.Format || rune.Value is 0x200D)
                kept.Append(rune);
        }
        return string.Join(' ', kept.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }
}

using System.Globalization;
using HerdBot.App.Ports;

namespace HerdBot.Host.Telegram;

/// <summary>
/// How Telegram's numbers are written in the bot's own ids. A message id names its chat too, since Telegram counts
/// messages anew in every chat and after every move.
/// </summary>
public static class TelegramIds
{
    private const string Prefix = "tg:";

    public static GroupId GroupOf(long chat) => new(Prefix + Text(chat));

    public static string PersonOf(long id) => Prefix + Text(id);

    public static string MessageOf(long chat, long message) => $"{Text(chat)}/{Text(message)}";

    public static bool TryChat(GroupId group, out long chat) => TryNumber(group.Value, out chat);

    /// <summary>The number of a person or chat written with the prefix.</summary>
    public static bool TryNumber(string? written, out long number)
    {
        number = 0;
        return written is not null
            && written.StartsWith(Prefix, StringComparison.Ordinal)
            && TryParse(written.AsSpan(Prefix.Length), out number);
    }

    public static bool TryMessage(string? written, out long chat, out int message)
    {
        (chat, message) = (0, 0);
        var slash = written?.IndexOf('/', StringComparison.Ordinal) ?? -1;
        return slash > 0
            && TryParse(written.AsSpan(0, slash), out chat)
            && int.TryParse(written.AsSpan(slash + 1), NumberStyles.None, CultureInfo.InvariantCulture, out message);
    }

    private static bool TryParse(ReadOnlySpan<char> text, out long number) =>
        long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out number);

    private static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);
}

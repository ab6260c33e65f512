using System.Collections.Frozen;

namespace HerdBot.Host.Telegram;

/// <summary>The marks that Telegram lets a bot set on a message.</summary>
/// <remarks>Source: Bot API, ReactionTypeEmoji, as published in @gramio/types 10.3.1; the witnesses check each one.</remarks>
public static class ReactionMarks
{
    private static readonly FrozenSet<string> Known =
        ("❤ 👍 👎 🔥 🥰 👏 😁 🤔 🤯 😱 🤬 😢 🎉 🤩 🤮 💩 🙏 👌 🕊 🤡 🥱 🥴 😍 🐳 ❤‍🔥 🌚 🌭 💯 🤣 ⚡ 🍌 🏆 💔 🤨 😐 🍓 🍾 💋 🖕 😈 😴 " +
            "😭 🤓 👻 👨‍💻 👀 🎃 🙈 😇 😨 🤝 ✍ 🤗 🫡 🎅 🎄 ☃ 💅 🤪 🗿 🆒 💘 🙉 🦄 😘 💊 🙊 😎 👾 🤷‍♂ 🤷 🤷‍♀ 😡")
        .Split(' ').ToFrozenSet(StringComparer.Ordinal);

    public static IReadOnlyCollection<string> All => Known;

    /// <summary>The mark as Telegram writes it, without a picture selector; null where it has none such.</summary>
    public static string? Of(string mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        if (Known.Contains(mark))
            return mark;
        var plain = mark.Replace("\uFE0F", "", StringComparison.Ordinal);
        return Known.Contains(plain) ? plain : null;
    }
}

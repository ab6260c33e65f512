using System.Security.Cryptography;
using HerdBot.App.Access;
using NodaTime;

namespace HerdBot.Host.Telegram;

/// <summary>Makes the code by which the owner is known.</summary>
public static class SetUpCodes
{
    // Nothing that is easily taken for another: no 0 and O, no 1, I and L.
    private const string Letters = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";
    private const int Length = 8;

    public static SetUpCode New(Instant now) => new(RandomNumberGenerator.GetString(Letters, Length), now);

    /// <summary>What the console shows of it.</summary>
    public static string Invitation(SetUpCode code, string? botName)
    {
        ArgumentNullException.ThrowIfNull(code);
        var where = botName is null ? "to the bot" : $"to @{botName}";
        return $"To own this bot, write {where} in a private chat: /start {code.Code}  (good once, for {SetUpCode.ValidFor.TotalMinutes:0} minutes)";
    }
}

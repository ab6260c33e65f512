using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Tests.Support;
using NodaTime;

namespace HerdBot.Tests.App.Messages;

/// <summary>Desks and what comes in to them.</summary>
internal static class Desk
{
    public static readonly GroupId Group = new("farm");
    public static readonly Person Ana = new("name:Ana", "Ana");
    public static readonly Instant Dawn = Instant.FromUtc(2027, 4, 18, 12, 45);

    public static Task<GroupDesk> OpenAsync(IHerdStore store, Instant? now = null) =>
        GroupDesk.OpenAsync(Group, Some.Farm(), [Some.Dam("Sage"), Some.Dam("Willow")], store, now ?? Dawn);

    public static Inbound.Line Line(string key, string text, string? replyTo = null, Instant? at = null) => new(key, Group, Ana, at ?? Dawn, $"m {key}", text, replyTo);
}

using HerdBot.App.Messages;
using HerdBot.App.Outbox;
using HerdBot.App.Ports;
using HerdBot.Core.Events;
using HerdBot.Core.Herd;
using HerdBot.Tests.Support;
using NodaTime;

namespace HerdBot.Tests.App.Messages;

/// <summary>Desks and what comes in to them.</summary>
internal static class Desk
{
    public static readonly GroupId Group = new("farm");
    public static readonly Person Ana = new("name:Ana", "Ana");
    public static readonly Instant Dawn = Instant.FromUtc(2027, 4, 18, 12, 45);

    public static Task<GroupDesk> OpenAsync(IHerdStore store, Instant? now = null, IHandOver? handOver = null) =>
        GroupDesk.OpenAsync(Group, Some.Farm(), [Some.Dam("Sage"), Some.Dam("Willow")], store, handOver ?? new NoHandOver(), now ?? Dawn);

    /// <summary>Works on one thing, and queues what is due; a fault of ours is returned.</summary>
    public static async Task<Exception?> HandleAsync(this GroupDesk desk, Inbound inbound, Instant now) =>
        (await desk.WorkAsync([inbound], now)).Faults.Select(fault => fault.Fault).FirstOrDefault();

    /// <summary>Queues what is due.</summary>
    public static async Task<Instant?> RemindAsync(this GroupDesk desk, Instant now) => (await desk.WorkAsync([], now)).Next;

    public static Inbound.Line Line(string key, string text, string? replyTo = null, Instant? at = null) => new(key, Group, Ana, at ?? Dawn, $"m {key}", text, replyTo);

    /// <summary>Nothing is ever handed over.</summary>
    private sealed class NoHandOver : IHandOver
    {
        public HerdEvent? Next(GroupId group, HerdState state, Instant now) => null;

        public void TakeBack(GroupId group)
        {
        }
    }
}

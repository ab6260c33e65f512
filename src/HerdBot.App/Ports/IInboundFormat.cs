using HerdBot.App.Messages;

namespace HerdBot.App.Ports;

/// <summary>Turns a raw update, as it stands in the inbox, into what it means.</summary>
public interface IInboundFormat
{
    /// <summary>What the entry says; null where it says nothing to us.</summary>
    /// <exception cref="FormatException">It cannot be read; it is set aside and the rest goes on.</exception>
    Inbound? Read(InboxEntry entry);
}

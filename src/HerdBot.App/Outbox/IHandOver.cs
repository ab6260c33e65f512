using HerdBot.App.Ports;
using HerdBot.Core.Events;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.App.Outbox;

/// <summary>Decides which post is handed to the chat next. That it is goes on record together with what led to it, before it happens.</summary>
public interface IHandOver
{
    /// <summary>The note that a group's oldest waiting post is handed over; null where none waits, one is on its way, or it must wait.</summary>
    /// <param name="group">Whose.</param>
    /// <param name="state">The group's state, with all that is to be noted beside it.</param>
    /// <param name="now">When.</param>
    HerdEvent? Next(GroupId group, HerdState state, Instant now);

    /// <summary>The newest note was not written after all, and counts for nothing.</summary>
    /// <param name="group">Whose.</param>
    void TakeBack(GroupId group);
}

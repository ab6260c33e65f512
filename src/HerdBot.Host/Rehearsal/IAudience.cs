using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Host.Telegram;

namespace HerdBot.Host.Rehearsal;

/// <summary>A chat that somebody watches: it is told what people do too, and may take its time between two things.</summary>
internal interface IAudience : IChat
{
    /// <summary>Goes by this clock from now on.</summary>
    void Follow(TimeProvider clock);

    /// <summary>Somebody writes, edits or presses; the program is told next.</summary>
    void Hear(Inbound inbound);

    /// <summary>All that follows from the last thing has been posted. The clock stands until this ends.</summary>
    Task RestAsync();
}

/// <summary>Takes everything at once and shows nothing.</summary>
internal sealed class NoAudience : IAudience
{
    /// <summary>As many as a real group: what is rehearsed comes at the same times there.</summary>
    public int? MostAMinute => TelegramChat.GroupsPace;

    public void Follow(TimeProvider clock)
    {
    }

    public void Hear(Inbound inbound)
    {
    }

    public Task RestAsync() => Task.CompletedTask;

    public Task<SendResult> SendAsync(Outgoing outgoing, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(outgoing);
        return Task.FromResult<SendResult>(new SendResult.Sent(PlainHouse.MessageOf(outgoing.Number)));
    }
}

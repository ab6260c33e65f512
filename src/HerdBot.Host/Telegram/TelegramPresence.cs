using NodaTime;

namespace HerdBot.Host.Telegram;

/// <summary>What is known of our own standing with Telegram. Safe to read from any thread.</summary>
public sealed class TelegramPresence
{
    private volatile string? _userName;
    private long _heardAtMilliseconds;
    private int _failures;

    /// <summary>The bot's @name without the @; null until Telegram has told it.</summary>
    public string? UserName
    {
        get => _userName;
        set => _userName = value;
    }

    /// <summary>When a poll was last answered well; null before the first.</summary>
    public Instant? HeardAt => Interlocked.Read(ref _heardAtMilliseconds) is > 0 and var at
        ? Instant.FromUnixTimeMilliseconds(at)
        : null;

    /// <summary>How many polls have failed in a row.</summary>
    public int Failures => Volatile.Read(ref _failures);

    public void Heard(Instant at)
    {
        Interlocked.Exchange(ref _heardAtMilliseconds, at.ToUnixTimeMilliseconds());
        Volatile.Write(ref _failures, 0);
    }

    public void Failed() => Interlocked.Increment(ref _failures);
}

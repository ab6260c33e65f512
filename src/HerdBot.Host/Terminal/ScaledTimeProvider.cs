namespace HerdBot.Host.Terminal;

/// <summary>
/// A clock that starts where it is told to and runs so many times as fast as another, timers too. No timer rings
/// before its time has come on this clock.
/// </summary>
public sealed class ScaledTimeProvider : TimeProvider
{
    private readonly TimeProvider pace;
    private readonly int speed;
    private readonly DateTimeOffset start;
    private readonly DateTimeOffset paceStart;

    /// <summary>Starts the clock.</summary>
    /// <param name="pace">The clock that sets the pace.</param>
    /// <param name="speed">How many times as fast, from 1.</param>
    /// <param name="start">What it shows at first.</param>
    public ScaledTimeProvider(TimeProvider pace, int speed, DateTimeOffset start)
    {
        ArgumentNullException.ThrowIfNull(pace);
        ArgumentOutOfRangeException.ThrowIfLessThan(speed, 1);
        (this.pace, this.speed, this.start, paceStart) = (pace, speed, start, pace.GetUtcNow());
    }

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => start + (pace.GetUtcNow() - paceStart) * speed;

    /// <inheritdoc/>
    public override long GetTimestamp() => pace.GetTimestamp() * speed;

    /// <inheritdoc/>
    public override long TimestampFrequency => pace.TimestampFrequency;

    /// <inheritdoc/>
    public override TimeZoneInfo LocalTimeZone => pace.LocalTimeZone;

    /// <inheritdoc/>
    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        new Timer(this, pace.CreateTimer(callback, state, AtPace(dueTime), AtPace(period)));

    /// <summary>
    /// A wait as the other clock measures it, rounded up: timers count whole milliseconds, none may ring early, and a
    /// period of nothing would mean to ring once.
    /// </summary>
    private TimeSpan AtPace(TimeSpan wait) => wait <= TimeSpan.Zero ? wait
        : TimeSpan.FromMilliseconds(Math.Ceiling(wait.TotalMilliseconds / speed));

    private sealed class Timer(ScaledTimeProvider clock, ITimer inner) : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period) => inner.Change(clock.AtPace(dueTime), clock.AtPace(period));

        public void Dispose() => inner.Dispose();

        public ValueTask DisposeAsync() => inner.DisposeAsync();
    }
}

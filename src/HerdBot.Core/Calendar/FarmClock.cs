using NodaTime;
using NodaTime.TimeZones;

namespace HerdBot.Core.Calendar;

/// <summary>Instants and the farm's days and hours. The farm's zone counts, never the machine's.</summary>
/// <param name="Zone">The farm's zone.</param>
public sealed record FarmClock(DateTimeZone Zone)
{
    /// <summary>
    /// The policy for local times: one that the clock skips is moved on by the length of the gap, of one that comes
    /// twice the first is taken.
    /// </summary>
    private static readonly ZoneLocalMappingResolver Policy =
        Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnForwardShifted);

    /// <summary>What the clock on the barn wall shows.</summary>
    public LocalDateTime Local(Instant at) => at.InZone(Zone).LocalDateTime;

    /// <summary>The farm's day.</summary>
    public LocalDate Day(Instant at) => Local(at).Date;

    /// <summary>The instant of a local time, by the policy above.</summary>
    public Instant At(LocalDateTime local) => Zone.ResolveLocal(local, Policy).ToInstant();

    /// <summary>The instant of an hour of a farm day.</summary>
    public Instant At(LocalDate day, LocalTime time) => At(day + time);

    /// <summary>The first such hour at or after an instant.</summary>
    public Instant Next(Instant from, LocalTime time)
    {
        var today = At(Day(from), time);
        return today >= from ? today : At(Day(from).PlusDays(1), time);
    }
}

/// <summary>A span of the day, which may run over midnight: from included, to not.</summary>
/// <param name="From">First minute.</param>
/// <param name="To">The minute after the last.</param>
public readonly record struct DaySpan(LocalTime From, LocalTime To)
{
    /// <summary>Whether an hour lies in it.</summary>
    public bool Holds(LocalTime time) => From <= To ? time >= From && time < To : time >= From || time < To;
}

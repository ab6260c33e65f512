using HerdBot.Core.Facts;
using NodaTime;

namespace HerdBot.Core.Reading.Times;

/// <summary>Reckons a told time against the clock.</summary>
/// <remarks>
/// A bare hour is the latest such hour before now. Skipped clock times move on by the gap and repeated ones take the
/// earlier, where a length of time is counted from them.
/// </remarks>
internal static class WhenResolver
{
    private static readonly Duration Slack = Duration.FromMinutes(2);

    // "9pm" said at 8 pm has not come yet; "11pm" said at 1 am was last night.
    private const int HoursBackForPlainClock = 9;

    /// <summary>The time of something that has happened.</summary>
    /// <param name="when">As told.</param>
    /// <param name="now">When the message was sent.</param>
    /// <param name="birth">The birth it may be counted from.</param>
    /// <param name="impossible">It lies ahead, or before the birth: to be asked for.</param>
    public static FactTime? Past(When when, ZonedDateTime now, LocalDateTime? birth, out bool impossible)
    {
        impossible = false;
        var at = Reckon(when, now, birth, ref impossible);
        if (at is { Time: { } time } && birth is { } born && at.Value.Date + time < born.PlusMinutes(-2) && when.Kind != WhenKind.Age)
        {
            impossible = true;
        }

        return impossible ? null : at;
    }

    /// <summary>The time of something that is planned: the next such hour.</summary>
    public static FactTime? Ahead(When when, ZonedDateTime now)
    {
        switch (when.Kind)
        {
            case WhenKind.Ahead:
                return Minute((now + when.Length).LocalDateTime);
            case WhenKind.Clock:
                return Candidates(when, now.Date, 0, 1).Where(at => at >= now.LocalDateTime).OrderBy(at => at).Select(Minute).FirstOrDefault();
            default:
                return null;
        }
    }

    private static FactTime? Reckon(When when, ZonedDateTime now, LocalDateTime? birth, ref bool impossible)
    {
        switch (when.Kind)
        {
            case WhenKind.Ago:
                return Minute((now - when.Length).LocalDateTime);
            case WhenKind.Age when birth is { } born:
                return Minute((now.Zone.AtLeniently(born) + when.Length).LocalDateTime);
            case WhenKind.AtBirth when birth is { } born && born.Date < now.Date:
                return new FactTime(born.Date, null);
            case WhenKind.HourOrAge:
                return HourOrAge(when, now, birth, ref impossible);
            case WhenKind.Day or WhenKind.Range:
                return Day(when, now) is { } day ? new FactTime(day, null) : null;
            case WhenKind.Clock:
                return Clock(when, now, ref impossible);
            default:
                return null;
        }
    }

    private static LocalDate? Day(When when, ZonedDateTime now) =>
        when.Date ?? (when.DayOffset is { } offset and < 0 && when.Part == PartOfDay.None ? now.Date.PlusDays(offset) : null);

    private static FactTime? HourOrAge(When when, ZonedDateTime now, LocalDateTime? birth, ref bool impossible)
    {
        if (birth is { } born && when.Hour >= 13)
        {
            var at = now.Zone.AtLeniently(born) + Duration.FromMinutes(when.Hour);
            if (at.ToInstant() <= now.ToInstant() + Slack)
            {
                return Minute(at.LocalDateTime);
            }
        }

        return when.Hour < 24 ? Clock(when with { Kind = WhenKind.Clock }, now, ref impossible) : null;
    }

    private static FactTime? Clock(When when, ZonedDateTime now, ref bool impossible)
    {
        var limit = now.LocalDateTime.PlusMinutes(2);
        var dated = when.Date is not null || when.DayOffset is not null || when.Part == PartOfDay.Night;
        var past = Candidates(when, now.Date, -1, 0).Where(at => at <= limit).DefaultIfEmpty().Max();
        if (past == default)
        {
            impossible = true;
            return null;
        }

        // A time that names its half of the day and has yet to come today is a slip, unless last night is near.
        if (when.Half != HalfOfDay.Unsaid && !dated && Period.Between(past, limit, PeriodUnits.Hours).Hours > HoursBackForPlainClock)
        {
            impossible = true;
            return null;
        }

        return Minute(past);
    }

    private static IEnumerable<LocalDateTime> Candidates(When when, LocalDate today, int from, int to)
    {
        for (var day = from; day <= to; day++)
        {
            var date = when.Date ?? today.PlusDays(when.DayOffset ?? day);
            foreach (var hour in Hours(when))
            {
                if (when.Part != PartOfDay.Night || hour >= 17 || hour < 7)
                {
                    yield return date.At(new LocalTime(hour, when.Minute));
                }
            }
        }
    }

    private static IEnumerable<int> Hours(When when)
    {
        if (when.AnyHour)
        {
            return Enumerable.Range(0, 24);
        }

        var hour = when.Hour % 12;
        return (when.Half, when.Part) switch
        {
            (HalfOfDay.Exact, _) => [when.Hour % 24],
            (HalfOfDay.Am, _) => [hour],
            (HalfOfDay.Pm, _) => [hour + 12],
            (_, PartOfDay.Morning) when when.Hour <= 12 => [when.Hour == 12 ? 12 : hour],
            (_, PartOfDay.Afternoon or PartOfDay.Evening) when when.Hour <= 12 => [hour + 12],
            _ => when.Hour > 12 || when.Hour == 0 ? [when.Hour % 24] : [hour, hour + 12],
        };
    }

    private static FactTime? Minute(LocalDateTime at) =>
        FactTime.Of(new LocalDateTime(at.Year, at.Month, at.Day, at.Hour, at.Minute));
}

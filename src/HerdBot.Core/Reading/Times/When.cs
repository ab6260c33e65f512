using NodaTime;

namespace HerdBot.Core.Reading.Times;

/// <summary>How a time was told.</summary>
internal enum WhenKind : byte
{
    /// <summary>This morning, a while ago, before noon: nothing to reckon with.</summary>
    Vague,
    /// <summary>A clock time.</summary>
    Clock,
    /// <summary>A day.</summary>
    Day,
    /// <summary>So long ago.</summary>
    Ago,
    /// <summary>So long after the birth.</summary>
    Age,
    /// <summary>In so long.</summary>
    Ahead,
    /// <summary>A length of time.</summary>
    Length,
    /// <summary>From a day to a day.</summary>
    Range,
    /// <summary>At birth.</summary>
    AtBirth,
    /// <summary>A bare "at 32": the hour, or minutes of age.</summary>
    HourOrAge,
}

/// <summary>Which half of the day a clock time was said to be in.</summary>
internal enum HalfOfDay : byte
{
    Unsaid,
    Am,
    Pm,
    Exact,
}

/// <summary>A part of the day.</summary>
internal enum PartOfDay : byte
{
    None,
    Morning,
    Afternoon,
    Evening,
    Night,
}

/// <summary>A time as it was told, before it is reckoned against the clock.</summary>
internal sealed record When(WhenKind Kind)
{
    public int Hour { get; init; }
    public int Minute { get; init; }
    public HalfOfDay Half { get; init; }
    public PartOfDay Part { get; init; }

    /// <summary>Only the minutes are known: "ten past".</summary>
    public bool AnyHour { get; init; }

    /// <summary>Days from today: -1 for yesterday.</summary>
    public int? DayOffset { get; init; }
    public LocalDate? Date { get; init; }
    /// <summary>Told by the weekday's name alone.</summary>
    public bool IsWeekday { get; init; }
    public LocalDate? EndDate { get; init; }
    public Duration Length { get; init; }

    /// <summary>"since 4", "from 4 on".</summary>
    public bool Since { get; init; }
    public static When Clock(int hour, int minute, HalfOfDay half) => new(WhenKind.Clock) { Hour = hour, Minute = minute, Half = half };

    /// <summary>The two told as one: a day and a clock time, a clock time and a part of the day; null where they do not go together.</summary>
    public When? With(When other) => (Kind, other.Kind) switch
    {
        (WhenKind.Clock or WhenKind.HourOrAge, WhenKind.Vague or WhenKind.Day) when other.Part != PartOfDay.None || other.DayOffset is not null || other.Date is not null =>
            this with { Kind = WhenKind.Clock, Part = other.Part == PartOfDay.None ? Part : other.Part, DayOffset = other.DayOffset ?? DayOffset, Date = other.Date ?? Date },
        (WhenKind.Vague or WhenKind.Day, WhenKind.Clock) => other.With(this),
        (WhenKind.Day, WhenKind.Vague) when other.Part != PartOfDay.None => this with { Part = other.Part },
        (WhenKind.Vague, WhenKind.Day) => other.With(this),
        _ => null,
    };
}

using System.Collections.Immutable;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Reading;

/// <summary>The farm's habit for numbers that bear no unit.</summary>
public enum UnitSystem
{
    /// <summary>Pounds, ounces, °F.</summary>
    Us,
    /// <summary>Kilograms, millilitres, °C.</summary>
    Metric,
}

/// <summary>How 6/3 is read.</summary>
public enum DateOrder
{
    /// <summary>Month first.</summary>
    MonthFirst,
    /// <summary>Day first.</summary>
    DayFirst,
}

/// <summary>The farm's language; people are free to write in either.</summary>
public enum Language
{
    /// <summary>English.</summary>
    English,
    /// <summary>Spanish.</summary>
    Spanish,
}

/// <summary>An animal as the reader knows it.</summary>
/// <param name="Name">The herd's name for it; "X's baby" for a newborn without a name.</param>
/// <param name="Role">What it is in the herd.</param>
public sealed record HerdEntry(string Name, HerdRole Role)
{
    /// <summary>Species; null where not known.</summary>
    public Species? Species { get; init; }
    /// <summary>Sex; null where not known.</summary>
    public Sex? Sex { get; init; }
    /// <summary>Its dam's name.</summary>
    public string? Dam { get; init; }
    /// <summary>Colour, as the farm says it.</summary>
    public string? Colour { get; init; }
    /// <summary>When it was born.</summary>
    public FactTime? Born { get; init; }
    /// <summary>Where it stands in the season.</summary>
    public HerdEntryState? State { get; init; }
    /// <summary>Ear tag or collar number.</summary>
    public string? Tag { get; init; }
    /// <summary>Nicknames, and names that it bore before.</summary>
    public ImmutableArray<string> OtherNames { get; init; } = [];
}

/// <summary>A record the reader may refer back to.</summary>
/// <param name="Fact">What was recorded.</param>
/// <param name="At">When it happened; null where only the day is known.</param>
/// <param name="Id">Names it for corrections; null in corpora.</param>
public sealed record LoggedFact(Fact Fact, Instant? At, FactId? Id = null);

/// <summary>An earlier chat line.</summary>
/// <param name="From">Who wrote it.</param>
/// <param name="Text">What it said.</param>
/// <param name="Age">How long ago.</param>
public sealed record SaidLine(string? From, string Text, Duration Age);

/// <summary>A reminder that is open in the group.</summary>
/// <param name="Task">Its task's word.</param>
/// <param name="Animal">The animal's name.</param>
public sealed record OpenReminder(string Task, string? Animal);

/// <summary>All that the reader may know of a message's circumstances.</summary>
/// <param name="Now">When the message was sent, in the farm's zone.</param>
/// <param name="Herd">The animals.</param>
public sealed record ReadingContext(ZonedDateTime Now, ImmutableArray<HerdEntry> Herd)
{
    /// <summary>The farm's unit habit; null where not known.</summary>
    public UnitSystem? Units { get; init; }
    /// <summary>How 6/3 is read.</summary>
    public DateOrder Dates { get; init; } = DateOrder.MonthFirst;
    /// <summary>The farm's language.</summary>
    public Language Language { get; init; } = Language.English;
    /// <summary>Who wrote the message.</summary>
    public string? From { get; init; }
    /// <summary>The people in the group.</summary>
    public ImmutableArray<string> People { get; init; } = [];
    /// <summary>The farm's own words.</summary>
    public OwnWords Words { get; init; } = OwnWords.None;
    /// <summary>Recent records, newest last.</summary>
    public ImmutableArray<LoggedFact> Log { get; init; } = [];
    /// <summary>Recent lines, newest last.</summary>
    public ImmutableArray<SaidLine> Said { get; init; } = [];
    /// <summary>Open reminders, newest last.</summary>
    public ImmutableArray<OpenReminder> Reminders { get; init; } = [];
    /// <summary>The message replies to this reminder (an index into <see cref="Reminders"/>).</summary>
    public int? ReplyToReminder { get; init; }
    /// <summary>The message replies to this record (an index into <see cref="Log"/>).</summary>
    public int? ReplyToLog { get; init; }
}

/// <summary>Why the reader read what it read: which words gave which fact, or why one gave none.</summary>
/// <param name="Words">The words of the message.</param>
/// <param name="Why">What they gave, in plain words.</param>
public sealed record ReadingReason(string Words, string Why);

/// <summary>What a message was understood to say.</summary>
/// <param name="Facts">In the order said; empty where nothing may be recorded.</param>
/// <param name="Ask">The one thing to ask back before recording; null where nothing.</param>
/// <param name="Reasons">For people who want to know why; empty unless they were asked for.</param>
public sealed record Reading(ImmutableArray<Fact> Facts, Ask? Ask, ImmutableArray<ReadingReason> Reasons)
{
    /// <summary>Nothing to record and nothing to ask.</summary>
    public static Reading Nothing { get; } = new([], null, []);
}

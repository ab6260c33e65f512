using System.Collections.Immutable;
using HerdBot.Core.Calendar;
using HerdBot.Core.Care;
using HerdBot.Core.Due;
using HerdBot.Core.Reading;
using NodaTime;

namespace HerdBot.Core.Herd;

/// <summary>The farm's settings as the core uses them: everything here is given, nothing is learnt.</summary>
/// <param name="Clock">The farm's zone.</param>
/// <param name="Tables">The care table of each species that care is planned for.</param>
public sealed record Farm(FarmClock Clock, ImmutableDictionary<Species, CareTable> Tables)
{
    /// <summary>Which half of the earth the farm is in, by its zone; null where the zone names no place.</summary>
    public Hemisphere? Hemisphere { get; init; } = Zones.HemisphereOf(Clock.Zone);
    /// <summary>Months in which a birth is hard for its heat, 1 to 12; null for the height of summer where the farm is.</summary>
    public ImmutableArray<int>? HotMonths { get; init; }
    /// <summary>Months in which a birth is hard for its cold, 1 to 12; null for the depth of winter where the farm is.</summary>
    public ImmutableArray<int>? ColdMonths { get; init; }
    /// <summary>The farm's unit habit.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Us;
    /// <summary>How 6/3 is read.</summary>
    public DateOrder Dates { get; init; } = DateOrder.MonthFirst;
    /// <summary>The farm's language.</summary>
    public Language Language { get; init; } = Language.English;
    /// <summary>What an animal is where nothing is said.</summary>
    public Species Species { get; init; } = Species.Llama;
    /// <summary>The people, the owner first where one is named.</summary>
    public ImmutableArray<string> People { get; init; } = [];
    /// <summary>The farm's own words.</summary>
    public OwnWords Words { get; init; } = OwnWords.None;
    /// <summary>Nicknames that the settings give, each with its animal's name.</summary>
    public ImmutableDictionary<string, string> Nicknames { get; init; } = ImmutableDictionary<string, string>.Empty;
    /// <summary>The vet's number by day; null where it was not given.</summary>
    public string? VetPhone { get; init; }
    /// <summary>The vet's number out of hours; null where it was not given.</summary>
    public string? VetPhoneNight { get; init; }
    /// <summary>Fine and heed wait while these last.</summary>
    public DaySpan QuietHours { get; init; } = new(new LocalTime(22, 0), new LocalTime(6, 0));
    /// <summary>Cords are dipped and animals weighed in these.</summary>
    public DaySpan WakingHours { get; init; } = new(new LocalTime(6, 0), new LocalTime(22, 0));
    /// <summary>When what is open is told at once.</summary>
    public ImmutableArray<LocalTime> RoundUps { get; init; } = [new LocalTime(7, 0), new LocalTime(19, 0)];
    /// <summary>Whether the farm has antibodies tested.</summary>
    public bool IggTest { get; init; } = true;
    /// <summary>How long the vet drives: taken off every vet time.</summary>
    public Duration VetDrive { get; init; } = Duration.Zero;

    /// <summary>The nicknames that the settings give an animal of this name.</summary>
    public IEnumerable<string> NicknamesOf(string name) => Nicknames.IsEmpty ? [] : Nicknames.Where(nick => string.Equals(nick.Value, name, StringComparison.OrdinalIgnoreCase)).Select(nick => nick.Key);

    /// <summary>The species' table; a sheep's or goat's care is not planned: null.</summary>
    public CareTable? TableOf(Species species) => Tables.GetValueOrDefault(species);
}

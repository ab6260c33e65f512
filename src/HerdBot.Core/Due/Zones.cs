using System.Collections.Frozen;
using NodaTime;
using NodaTime.TimeZones;

namespace HerdBot.Core.Due;

/// <summary>Where on earth a time zone is.</summary>
public static class Zones
{
    private static readonly Lazy<FrozenDictionary<string, double>> Latitudes = new(() =>
        (TzdbDateTimeZoneSource.Default.ZoneLocations ?? []).GroupBy(place => place.ZoneId).ToFrozenDictionary(zone => zone.Key, zone => zone.First().Latitude));

    /// <summary>The half of the earth of a zone, by the place that the IANA list names for it; null for one without a place, like UTC.</summary>
    public static Hemisphere? HemisphereOf(DateTimeZone zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        var id = TzdbDateTimeZoneSource.Default.CanonicalIdMap.TryGetValue(zone.Id, out var canonical) ? canonical : zone.Id;
        return Latitudes.Value.TryGetValue(id, out var latitude) ? latitude >= 0 ? Hemisphere.North : Hemisphere.South : null;
    }
}

using System.Collections.Frozen;
using NodaTime.TimeZones;

namespace WorkWindows.Feeds.TimeZones;

/// <summary>The time zone of a position in the United States.</summary>
public static class UsTimeZone
{
    /// <summary>The quadtree's cells near borders: about 30 km.</summary>
    private const double MarginDeg = 0.35;

    private static readonly FrozenSet<string> Zones = TzdbDateTimeZoneSource.Default.ZoneLocations!
        .Where(location => location.CountryCode == "US")
        .Select(location => location.ZoneId)
        .ToFrozenSet();

    /// <summary>
    /// The zone there, or else the first one of the United States about 30 km away: close to a border the data may
    /// answer with the neighbour's. Prefer <see cref="CountyTimeZone"/> where the county is known.
    /// </summary>
    /// <returns>An IANA name, or null if the position is abroad or at sea.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The position is not on the globe.</exception>
    public static string? Find(double latitudeDeg, double longitudeDeg)
    {
        var zone = TimeZoneLookup.Find(latitudeDeg, longitudeDeg);
        return Zones.Contains(zone)
            ? zone
            : Around(latitudeDeg, longitudeDeg).FirstOrDefault(Zones.Contains);
    }

    private static IEnumerable<string> Around(double latitudeDeg, double longitudeDeg) =>
        from north in new[] { 0, -MarginDeg, MarginDeg }
        from east in new[] { 0, -MarginDeg, MarginDeg }
        select TimeZoneLookup.Find(
            Math.Clamp(latitudeDeg + north, -90, 90), Math.Clamp(longitudeDeg + east, -180, 180));
}

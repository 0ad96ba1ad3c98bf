using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;

namespace WorkWindows.Service.Weather;

/// <summary>
/// Chooses the stations that a parcel's temperatures are blended from: its own station, and the nearest others. A
/// station chosen by hand stands alone.
/// </summary>
public sealed class StationNeighbours(IEnumerable<Station> stations)
{
    /// <summary>Half of the days: a neighbour's gaps are filled from the others (common practice, no source).</summary>
    public const double MinCoverage = 0.5;

    /// <summary>A record that ends longer before the newest one is closed, and nothing new will come of it.</summary>
    private static readonly Period ClosedAfter = Period.FromYears(1);

    private readonly List<Station> usable =
        [.. Current(stations).Where(station => station.TemperatureCoverage >= MinCoverage)];

    /// <summary>The stations whose records are not closed.</summary>
    public static IEnumerable<Station> Current(IEnumerable<Station> stations)
    {
        var all = stations.ToList();
        var newest = all.Max(station => station.LastDay);
        return all.Where(station => station.LastDay >= newest?.Minus(ClosedAfter));
    }

    /// <summary>The stations of a place, its own first, then by distance.</summary>
    /// <param name="own">The parcel's own station.</param>
    /// <param name="isManual">Whether it was chosen by hand.</param>
    /// <param name="place">Where the parcel is.</param>
    public IReadOnlyList<Station> Of(Station own, bool isManual, RecordPlace place) => isManual ? [own] :
    [
        own,
        .. usable.Where(station => station.Id != own.Id)
            .Select(station => (Station: station, DistanceM: place.DistanceM(station.Described())))
            .Where(near => near.DistanceM <= StationChoice.MaxDistanceM)
            .OrderBy(near => near.DistanceM).ThenBy(near => near.Station.GhcnId, StringComparer.Ordinal)
            .Take(ParcelRecord.MaxStations - 1)
            .Select(near => near.Station),
    ];
}

using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;

namespace WorkWindows.Service.Weather;

/// <summary>A station that a parcel takes its temperatures, or its winds, from.</summary>
/// <param name="Station">The station.</param>
/// <param name="Purpose">What it is consulted for.</param>
/// <param name="IsManual">Somebody chose it.</param>
public sealed record StationLink(Station Station, StationPurpose Purpose, bool IsManual);

/// <summary>
/// Where a place's weather comes from. Two are equal when they give the same weather, so that parcels side by side
/// share what is computed.
/// </summary>
public sealed class WeatherSource : IEquatable<WeatherSource>
{
    /// <summary>
    /// Parcels nearer to each other than this are one place: about 2 km, and 0.1 °C of height. Stations, which lie 20
    /// km apart, cannot tell them apart.
    /// </summary>
    private const double GridDeg = 0.02, GridM = 20;

    private readonly string key;

    private WeatherSource(WeatherPoint point, RecordPlace place, IReadOnlyList<Station> temperature, Station? wind)
    {
        (Point, Place, Temperature, Wind) = (point, place, temperature, wind);
        // The version of a record is part of it, so that an import on any server is seen on all.
        RecordKey =
            $"{place} {string.Join(' ', temperature.Select(station => $"{station.Id}:{station.RecordVersion}"))}";
        key = $"{point} {RecordKey} {wind?.Id}:{wind?.RecordVersion}";
    }

    /// <summary>What signals are computed for.</summary>
    public WeatherPoint Point { get; }

    /// <summary>Where the record is blended for.</summary>
    public RecordPlace Place { get; }

    /// <summary>The stations of the temperatures, the parcel's own first; none without one.</summary>
    public IReadOnlyList<Station> Temperature { get; }

    /// <summary>The parcel's own station: it gives the forecast and the alerts; null without one.</summary>
    public Station? Primary => Temperature.Count > 0 ? Temperature[0] : null;

    public Station? Wind { get; }

    /// <summary>Names the record of everything but wind.</summary>
    public string RecordKey { get; }

    /// <param name="parcelId">The parcel.</param>
    /// <param name="place">Where it is.</param>
    /// <param name="links">Its stations.</param>
    /// <param name="neighbours">Those of the organization.</param>
    public static WeatherSource Of(
        Guid parcelId, RecordPlace place, IReadOnlyCollection<StationLink> links, StationNeighbours neighbours)
    {
        var own = links.FirstOrDefault(link => link.Purpose == StationPurpose.Temperature);
        var wind = links.FirstOrDefault(link => link.Purpose == StationPurpose.Wind)?.Station;
        if (own is null)
            return new(new($"parcel {parcelId}", place.LatitudeDeg, place.LongitudeDeg), place, [], wind);
        var stations = neighbours.Of(own.Station, own.IsManual, place);
        if (stations is [var station])
        {
            return new(
                new(station.GhcnId, station.Latitude, station.Longitude), RecordPlace.Of(station.Described()), stations,
                wind);
        }
        var cell = new RecordPlace(
            OnGrid(place.LatitudeDeg, GridDeg), OnGrid(place.LongitudeDeg, GridDeg),
            place.ElevationM is { } elevation ? OnGrid(elevation, GridM) : null);
        return new(
            new(FormattableString.Invariant($"{cell.LatitudeDeg:0.00}, {cell.LongitudeDeg:0.00}"), cell.LatitudeDeg,
                cell.LongitudeDeg),
            cell, stations, wind);
    }

    public bool Equals(WeatherSource? other) => other is not null && key == other.key;

    public override bool Equals(object? obj) => Equals(obj as WeatherSource);

    public override int GetHashCode() => key.GetHashCode(StringComparison.Ordinal);

    private static double OnGrid(double value, double step) => Math.Round(Math.Round(value / step) * step, 6);
}

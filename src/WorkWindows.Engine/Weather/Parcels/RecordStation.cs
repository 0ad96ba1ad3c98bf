using WorkWindows.Engine.Weather.Quality;

namespace WorkWindows.Engine.Weather.Parcels;

/// <summary>A station and its checked record.</summary>
public sealed record RecordStation(WeatherStation Station, CheckedSeries Record);

/// <summary>Where a record is made for.</summary>
/// <param name="LatitudeDeg">WGS 84, north positive.</param>
/// <param name="LongitudeDeg">WGS 84, east positive.</param>
/// <param name="ElevationM">Metres above sea level, or null when not known.</param>
public readonly record struct RecordPlace(double LatitudeDeg, double LongitudeDeg, double? ElevationM)
{
    public static RecordPlace Of(WeatherStation station) =>
        new(station.LatitudeDeg, station.LongitudeDeg, station.ElevationM);

    public double DistanceM(WeatherStation station) =>
        StationChoice.DistanceM(LatitudeDeg, LongitudeDeg, station.LatitudeDeg, station.LongitudeDeg);
}

using NodaTime;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Weather;

/// <summary>A weather station.</summary>
/// <param name="Id">Its identifier in the network.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="LatitudeDeg">WGS 84, north positive.</param>
/// <param name="LongitudeDeg">WGS 84, east positive.</param>
/// <param name="ElevationM">Metres above sea level, or null when not known.</param>
public sealed record WeatherStation(
    string Id, string Name, double LatitudeDeg, double LongitudeDeg, double? ElevationM);

/// <summary>A station and how complete its record is.</summary>
/// <param name="Station">The station.</param>
/// <param name="Coverage">The share of recent days with minimum and maximum, 0 to 1.</param>
public sealed record StationCandidate(WeatherStation Station, double Coverage);

/// <summary>The station chosen for a place.</summary>
/// <param name="Station">The station.</param>
/// <param name="Coverage">The share of recent days with minimum and maximum, 0 to 1.</param>
/// <param name="DistanceM">Great-circle distance, m.</param>
/// <param name="ElevationDifferenceM">Station above place, m; negative below it, null when either is not known.</param>
public sealed record StationMatch(
    WeatherStation Station, double Coverage, double DistanceM, double? ElevationDifferenceM);

/// <summary>Chooses where a parcel's weather comes from.</summary>
public static class StationChoice
{
    /// <summary>Common practice, no source.</summary>
    public const double MinCoverage = 0.9;

    /// <summary>Common practice, no source.</summary>
    public const double MaxDistanceM = 100_000;

    /// <summary>Mean radius of the earth (IUGG).</summary>
    private const double EarthRadiusM = 6_371_008.8;

    /// <summary>The share of days that have both a minimum and a maximum, 0 to 1.</summary>
    /// <param name="series">The record.</param>
    /// <param name="last">The last day looked at.</param>
    /// <param name="years">How many years up to it, at least one.</param>
    public static double Coverage(DailySeries series, LocalDate last, int years) =>
        Coverage(series, last, years, DailyElement.MinTemperatureC, DailyElement.MaxTemperatureC);

    /// <summary>The share of days that have a value of each of the elements, 0 to 1.</summary>
    /// <param name="series">The record.</param>
    /// <param name="last">The last day looked at.</param>
    /// <param name="years">How many years up to it, at least one.</param>
    /// <param name="elements">The elements; without any every day counts.</param>
    public static double Coverage(
        DailySeries series, LocalDate last, int years, params ReadOnlySpan<DailyElement> elements)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(years, 1);
        return Coverage(series, DaySpan.Between(last.PlusYears(-years).PlusDays(1), last), elements);
    }

    /// <summary>The share of the days of a span that have a value of each of the elements, 0 to 1.</summary>
    public static double Coverage(DailySeries series, DaySpan span, params ReadOnlySpan<DailyElement> elements)
    {
        var known = DayBits.All(span.Count);
        var values = new double[span.Count];
        foreach (var element in elements)
        {
            if (series[element] is not { } column)
                return 0;
            column.CopyTo(span, values);
            known &= DayBits.Where(span.Count, day => !double.IsNaN(values[day]));
        }
        return (double)known.Count / span.Count;
    }

    /// <summary>The nearest station with a usable record, the smaller identifier where two are equally near.</summary>
    /// <returns>Null when no station within the distance has the coverage.</returns>
    public static StationMatch? Nearest(
        IEnumerable<StationCandidate> stations, double latitudeDeg, double longitudeDeg, double? elevationM,
        double minCoverage = MinCoverage, double maxDistanceM = MaxDistanceM) =>
        stations
            .Where(record => record.Coverage >= minCoverage)
            .Select(record => new StationMatch(record.Station, record.Coverage,
                DistanceM(latitudeDeg, longitudeDeg, record.Station.LatitudeDeg, record.Station.LongitudeDeg),
                record.Station.ElevationM - elevationM))
            .Where(match => match.DistanceM <= maxDistanceM)
            .OrderBy(match => match.DistanceM).ThenBy(match => match.Station.Id, StringComparer.Ordinal)
            .FirstOrDefault();

    /// <summary>
    /// Great-circle distance in metres on a sphere of the earth's mean radius, within 0.6 % of the ellipsoid.
    /// </summary>
    public static double DistanceM(double latitude1Deg, double longitude1Deg, double latitude2Deg, double longitude2Deg)
    {
        var (latitude1, latitude2) = (double.DegreesToRadians(latitude1Deg), double.DegreesToRadians(latitude2Deg));
        var halfLatitude = Math.Sin((latitude2 - latitude1) / 2);
        var halfLongitude = Math.Sin(double.DegreesToRadians(longitude2Deg - longitude1Deg) / 2);
        var haversine = halfLatitude * halfLatitude
            + Math.Cos(latitude1) * Math.Cos(latitude2) * halfLongitude * halfLongitude;
        return 2 * EarthRadiusM * Math.Asin(Math.Min(1, Math.Sqrt(haversine)));
    }
}

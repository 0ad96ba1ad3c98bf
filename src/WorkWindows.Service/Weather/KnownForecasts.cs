using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>
/// The forecasts and alerts of a station in the two times: when they were made, and since when they are known.
/// </summary>
internal static class KnownForecasts
{
    /// <returns>
    /// The forecasts of stations that had been fetched by a moment and still say something then, with their readings, in the order
    /// of issue.
    /// </returns>
    public static IQueryable<Forecast> Of(WorkWindowsDb db, IReadOnlyCollection<Guid> stations, Instant asOf)
    {
        var earliest = asOf - WeatherRecords.LongestObservationAge;
        return db.Forecasts.AsNoTracking().Include(forecast => forecast.Readings)
            .Where(forecast => stations.Contains(forecast.StationId)
                && forecast.IssuedAt > earliest && forecast.FetchedAt <= asOf)
            .OrderBy(forecast => forecast.IssuedAt);
    }

    /// <returns>The answers about alerts that had come by a moment.</returns>
    public static IQueryable<WeatherAlertReport> Alerts(WorkWindowsDb db, Guid stationId, Instant asOf) =>
        db.WeatherAlertReports.AsNoTracking()
            .Where(report => report.StationId == stationId && report.FetchedAt <= asOf);
}

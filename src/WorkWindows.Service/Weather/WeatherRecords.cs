using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Caching.Memory;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Stations' records and forecasts, laid out for computing.</summary>
public sealed class WeatherRecords(WorkWindowsDb db, IMemoryCache cache)
{
    /// <summary>Forecasts issued longer ago say nothing of the days to come: the feed has stopped.</summary>
    public static readonly Duration LongestUsableAge = Duration.FromHours(48);

    private static readonly Duration LongestKept = Duration.FromDays(10);

    private static readonly TimeSpan CachedFor = TimeSpan.FromHours(1);

    /// <summary>All that a station has reported.</summary>
    public async Task<DailySeries> ObservedAsync(Station station, CancellationToken cancellation)
    {
        // The version is part of the key, so that an import on any server is seen on all.
        var key = (station.Id, station.RecordVersion);
        if (cache.TryGetValue(key, out DailySeries? cached))
            return cached!;
        var readings = await db.StationReadings.AsNoTracking()
            .Where(reading => reading.StationId == station.Id)
            .OrderBy(reading => reading.Element).ThenBy(reading => reading.Date)
            .Select(reading => new DailyReading(reading.Date, reading.Element, reading.Value, reading.QualityFlag))
            .ToListAsync(cancellation);
        return cache.Set(key, DailySeries.Of(readings, station.WholeFahrenheit), CachedFor);
    }

    /// <summary>
    /// What was forecast for a station, the newest forecast of each value, or null. Days that have passed keep what was
    /// last forecast for them, until they are observed.
    /// </summary>
    /// <param name="stationId">The station.</param>
    /// <param name="now">The time of asking.</param>
    /// <param name="zone">The zone whose days are meant.</param>
    /// <param name="cancellation">Ends the query.</param>
    public async Task<Engine.Weather.Forecast?> ForecastAsync(
        Guid stationId, Instant now, DateTimeZone zone, CancellationToken cancellation)
    {
        var today = now.InZone(zone).Date;
        var earliest = now - LongestKept;
        var forecasts = await db.Forecasts.AsNoTracking().Include(forecast => forecast.Readings)
            .Where(forecast => forecast.StationId == stationId && forecast.IssuedAt > earliest && forecast.IssuedAt <= now)
            .OrderBy(forecast => forecast.IssuedAt).ToListAsync(cancellation);
        var newest = new Dictionary<(LocalDate, DailyElement), DailyReading>();
        foreach (var forecast in forecasts)
        {
            var isRecent = now - forecast.IssuedAt <= LongestUsableAge;
            foreach (var reading in forecast.Readings.Where(reading => isRecent || reading.Date < today))
                newest[(reading.Date, reading.Element)] = new(reading.Date, reading.Element, reading.Value, null);
        }
        return newest.Count == 0 ? null : new(forecasts[^1].IssuedAt, DailySeries.Of(newest.Values));
    }
}

using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Caching.Memory;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Quality;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Stations' records, forecasts and alerts, laid out for computing.</summary>
public sealed class WeatherRecords(WorkWindowsDb db, IMemoryCache cache)
{
    /// <summary>Forecasts issued longer ago say nothing of the days to come: the feed has stopped.</summary>
    public static readonly Duration LongestUsableAge = Duration.FromHours(48);

    /// <summary>
    /// Alerts are asked for every hour. When two rounds in a row have failed and a third is due, nobody is asking, and
    /// an alert may have been issued since.
    /// </summary>
    public static readonly Duration LongestAlertAge = Duration.FromHours(3);

    /// <summary>
    /// So long what was last forecast for a day stands in for its observation. When observations stop, the day after
    /// the last one is missing after this time, and runs and sums over it are not known. Stations report days late as a
    /// rule: common practice, no source.
    /// </summary>
    public static readonly Duration LongestObservationAge = Duration.FromDays(10);

    private static readonly TimeSpan CachedFor = TimeSpan.FromHours(1);

    /// <summary>All that a station has reported and that may be used, as it was known on a moment.</summary>
    public async Task<DailySeries> ObservedAsync(Station station, Instant asOf, CancellationToken cancellation) =>
        (await CheckedAsync(station, asOf, cancellation)).Usable;

    /// <summary>All that a station has reported, parted into what may be used and what may not.</summary>
    /// <param name="station">The station with the version that its record has now.</param>
    /// <param name="asOf">The moment: values that became known later do not count, and those they replaced do.</param>
    /// <param name="cancellation">Ends the query.</param>
    public async Task<CheckedSeries> CheckedAsync(Station station, Instant asOf, CancellationToken cancellation)
    {
        if (asOf < station.RecordChangedAt)
            return await ReadAsync(station, asOf, cancellation);
        // The version is part of the key, so that an import on any server is seen on all.
        var key = (station.Id, station.RecordVersion);
        return cache.TryGetValue(key, out CheckedSeries? cached)
            ? cached!
            : cache.Set(key, await ReadAsync(station, asOf, cancellation), CachedFor);
    }

    private async Task<CheckedSeries> ReadAsync(Station station, Instant asOf, CancellationToken cancellation) =>
        QualityControl.Check(
            await KnownReadings.Of(db, station, asOf)
                .Select(reading => new DailyReading(reading.Date, reading.Element, reading.Value, reading.QualityFlag))
                .ToListAsync(cancellation),
            station.WholeFahrenheit);

    /// <summary>
    /// What was forecast for a station, the newest forecast of each value, or null. Days that have passed keep what was
    /// last forecast for them, until they are observed.
    /// </summary>
    /// <param name="stationId">The station.</param>
    /// <param name="asOf">The moment it is known on: forecasts that were fetched later do not count.</param>
    /// <param name="zone">The zone whose days are meant.</param>
    /// <param name="cancellation">Ends the query.</param>
    public async Task<Engine.Weather.Forecast?> ForecastAsync(
        Guid stationId, Instant asOf, DateTimeZone zone, CancellationToken cancellation) =>
        Newest(await KnownForecasts.Of(db, [stationId], asOf).ToListAsync(cancellation), asOf, zone);

    /// <summary>
    /// What is said of the days to come at stations: their forecasts, and their alerts, from today on those of the newest
    /// report, and on days that are over those that were reported on them. Without a recent report today and the days
    /// after it are not known. It asks twice, however many stations there are.
    /// </summary>
    /// <param name="asked">Stations, null for a place without one, whose alerts nobody asks for; and the zones whose days are meant.</param>
    /// <param name="asOf">The moment it is known on: what was fetched later does not count.</param>
    /// <param name="first">The first day whose alerts are of interest.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<IReadOnlyDictionary<(Guid? Station, DateTimeZone Zone), StationOutlook>> OutlooksAsync(
        IReadOnlyCollection<(Guid? Station, DateTimeZone Zone)> asked, Instant asOf, LocalDate first,
        CancellationToken cancellation)
    {
        Guid[] stations = [.. asked.Select(one => one.Station).OfType<Guid>().Distinct()];
        var forecasts = (stations.Length == 0 ? [] : await KnownForecasts.Of(db, stations, asOf).ToListAsync(cancellation))
            .ToLookup(forecast => forecast.StationId);
        var told = await ToldAlerts.ReadAsync(db, asked, asOf, first, cancellation);
        return asked.Distinct().ToDictionary(one => one, one => one.Station is { } station
            ? new StationOutlook(Newest([.. forecasts[station]], asOf, one.Zone), told.Of(station, one.Zone))
            : new(null, new([], ToldAlerts.NotKnown(asOf, one.Zone))));
    }

    private static Engine.Weather.Forecast? Newest(IReadOnlyList<Forecast> forecasts, Instant asOf, DateTimeZone zone)
    {
        var today = asOf.InZone(zone).Date;
        var newest = new Dictionary<(LocalDate, DailyElement), DailyReading>();
        foreach (var forecast in forecasts)
        {
            var isRecent = asOf - forecast.IssuedAt <= LongestUsableAge;
            foreach (var reading in forecast.Readings.Where(reading => isRecent || reading.Date < today))
                newest[(reading.Date, reading.Element)] = new(reading.Date, reading.Element, reading.Value, null);
        }
        return newest.Count == 0 ? null : new(forecasts[^1].IssuedAt, DailySeries.Of(newest.Values));
    }
}

/// <summary>What is said of the days to come at a station.</summary>
public sealed record StationOutlook(Engine.Weather.Forecast? Forecast, AlertReport Alerts);

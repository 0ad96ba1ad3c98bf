using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Caching.Memory;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Quality;
using WorkWindows.Feeds.Alerts;
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

    /// <summary>Today and six more: watches and outlooks do not reach further.</summary>
    private const int DaysOfAlerts = 7;

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
        Guid stationId, Instant asOf, DateTimeZone zone, CancellationToken cancellation)
    {
        var today = asOf.InZone(zone).Date;
        var forecasts = await KnownForecasts.Of(db, stationId, asOf).ToListAsync(cancellation);
        var newest = new Dictionary<(LocalDate, DailyElement), DailyReading>();
        foreach (var forecast in forecasts)
        {
            var isRecent = asOf - forecast.IssuedAt <= LongestUsableAge;
            foreach (var reading in forecast.Readings.Where(reading => isRecent || reading.Date < today))
                newest[(reading.Date, reading.Element)] = new(reading.Date, reading.Element, reading.Value, null);
        }
        return newest.Count == 0 ? null : new(forecasts[^1].IssuedAt, DailySeries.Of(newest.Values));
    }

    /// <summary>
    /// The alerts of a station: from today on those of the newest report, and on days that are over those that were
    /// reported on them. Without a recent report today and the days after it are not known.
    /// </summary>
    /// <param name="stationId">The station; null for a place without one, whose alerts nobody asks for.</param>
    /// <param name="asOf">The moment it is known on: reports that were fetched later do not count.</param>
    /// <param name="zone">The zone whose days are meant.</param>
    /// <param name="first">The first day that is of interest.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<AlertReport> AlertsAsync(
        Guid? stationId, Instant asOf, DateTimeZone zone, LocalDate first, CancellationToken cancellation)
    {
        var today = asOf.InZone(zone).Date;
        var reports = KnownForecasts.Alerts(db, stationId, asOf);
        var newest = await reports.Include(report => report.Alerts)
            .OrderByDescending(report => report.FetchedAt).FirstOrDefaultAsync(cancellation);
        DaySpan? notKnown = newest is not null && asOf - newest.FetchedAt <= LongestAlertAge
            ? null
            : new(today, DaysOfAlerts);
        if (newest is null)
            return new([], notKnown);
        var from = zone.AtStartOfDay(first).ToInstant();
        var until = zone.AtStartOfDay(today).ToInstant();
        // Reports come every hour and mostly repeat the one before: what they say is brought together where it lies.
        var past = await reports.Where(report => report.FetchedAt >= from && report.FetchedAt < until)
            .SelectMany(report => report.Alerts, (report, alert) => new
            {
                Day = report.FetchedAt.InZone(DateTimeZoneProviders.Tzdb[zone.Id]).Date,
                alert.Kind,
                alert.Event,
                alert.StartsAt,
                alert.EndsAt,
            })
            .Distinct().ToListAsync(cancellation);
        var coming = newest.Alerts.Select(alert => alert.ToActive().InZone(zone))
            .Where(alert => alert.Last >= today)
            .Select(alert => alert with { First = LocalDate.Max(alert.First, today) });
        var over = past
            .Select(said => (
                said.Day, Alert: new ActiveAlert(said.Kind, said.Event, said.StartsAt, said.EndsAt).InZone(zone)))
            .Where(said => said.Alert.First <= said.Day && said.Day <= said.Alert.Last)
            .Select(said => said.Alert with { First = said.Day, Last = said.Day });
        return new([.. over.Distinct().Concat(coming)], notKnown);
    }
}

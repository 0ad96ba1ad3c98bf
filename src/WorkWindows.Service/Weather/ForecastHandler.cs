using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Fetches the forecasts of an organization's stations, and keeps each once.</summary>
public sealed partial class ForecastHandler(
    WorkWindowsDb db, ForecastFeed feed, StationFetches fetches, FeedStates states, PromptLook look,
    IClock clock, ILogger<ForecastHandler> logger)
{
    /// <summary>
    /// Fetches for every station that a parcel takes its temperatures from, and notes those with a new forecast to be
    /// looked at. A station whose forecast cannot be had is logged and passed over.
    /// </summary>
    public async Task FetchAsync(CancellationToken cancellation)
    {
        var stations = (await Stations.WithForecast(db).ToListAsync(cancellation))
            .Where(station => feed.Configured.Serves(station.Place));
        await fetches.EachAsync(
            WeatherFeed.Forecasts, stations, station => FetchAsync(station, cancellation), cancellation);
    }

    private async Task FetchAsync(Station station, CancellationToken cancellation)
    {
        var today = clock.GetCurrentInstant().InZone(station.Zone).Date;
        var reply = await feed.Configured.FetchAsync(
            new(station.Place, station.Zone, new(today, today), FeedValidators.None), cancellation);
        var daily = (reply as DailyFeedReply.Foretold)?.Forecast;
        await states.NoteAsync(station.Id, WeatherFeed.Forecasts, daily?.IssuedAt, null, cancellation);
        if (daily is null
            || await db.Forecasts.AnyAsync(
                kept => kept.StationId == station.Id && kept.IssuedAt == daily.IssuedAt, cancellation))
        {
            await db.SaveChangesAsync(cancellation);
            return;
        }
        if (!daily.Faults.IsEmpty)
            LogRejected(station.GhcnId, daily.Faults.Faults.Length + daily.Faults.More);
        var forecast = new Forecast
        {
            StationId = station.Id,
            IssuedAt = daily.IssuedAt,
            FetchedAt = clock.GetCurrentInstant(),
        };
        foreach (var reading in daily.Readings)
            forecast.Readings.Add(new() { Element = reading.Element, Date = reading.Date, Value = reading.Value });
        foreach (var rest in daily.RestOfDay)
        {
            // Only with what an earlier forecast said of the whole day is there an extreme of the whole day.
            var whole = await db.Forecasts
                .Where(kept => kept.StationId == station.Id && kept.IssuedAt < daily.IssuedAt)
                .OrderByDescending(kept => kept.IssuedAt)
                .SelectMany(kept => kept.Readings)
                .Where(kept => kept.Element == rest.Element && kept.Date == rest.Date)
                .Select(kept => (double?)kept.Value).FirstOrDefaultAsync(cancellation);
            if (whole is { } earlier)
            {
                forecast.Readings.Add(new()
                {
                    Element = rest.Element,
                    Date = rest.Date,
                    Value = rest.Element == DailyElement.MinHumidityPercent
                        ? Math.Min(earlier, rest.Value)
                        : Math.Max(earlier, rest.Value),
                });
            }
        }
        db.Add(forecast);
        look.Note(WeatherChange.OfOutlooks([station.Id]));
        await db.SaveChangesAsync(cancellation);
    }

    [LoggerMessage(LogLevel.Warning, "The forecast for station {GhcnId} has {Count} values that cannot be used")]
    private partial void LogRejected(string ghcnId, int count);
}

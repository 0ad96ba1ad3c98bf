using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Feeds.Alerts;
using WorkWindows.Feeds.Daily;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Fetches the alerts of an organization's stations, and keeps every answer.</summary>
public sealed partial class AlertHandler(
    WorkWindowsDb db, AlertFeed feed, IClock clock, ILogger<AlertHandler> logger)
{
    /// <summary>Fetches for every station that a parcel takes its temperatures from.</summary>
    /// <returns>
    /// For how many stations something new is known: other alerts, or any after a time in which none were known. A
    /// station whose alerts cannot be had is logged and passed over.
    /// </returns>
    public async Task<int> FetchAsync(CancellationToken cancellation)
    {
        var changed = 0;
        foreach (var station in await Stations.WithForecast(db).ToListAsync(cancellation))
        {
            try
            {
                if (await FetchAsync(station, cancellation))
                    changed++;
            }
            catch (FeedException fault)
            {
                LogFailed(fault, station.GhcnId);
            }
        }
        return changed;
    }

    private async Task<bool> FetchAsync(Station station, CancellationToken cancellation)
    {
        var alerts = await feed.FetchAsync(station.Place, cancellation);
        var report = new WeatherAlertReport { StationId = station.Id, FetchedAt = clock.GetCurrentInstant() };
        foreach (var alert in alerts)
            report.Alerts.Add(ReportedAlert.Of(alert));
        var before = await db.WeatherAlertReports.AsNoTracking().Include(kept => kept.Alerts)
            .Where(kept => kept.StationId == station.Id)
            .OrderByDescending(kept => kept.FetchedAt).FirstOrDefaultAsync(cancellation);
        db.Add(report);
        await db.SaveChangesAsync(cancellation);
        return before is null
            || report.FetchedAt - before.FetchedAt > WeatherRecords.LongestAlertAge
            || !before.Alerts.Select(alert => alert.ToActive()).ToHashSet().SetEquals(alerts);
    }

    [LoggerMessage(LogLevel.Warning, "No alerts for station {GhcnId}: they are not known until there are some")]
    private partial void LogFailed(Exception fault, string ghcnId);
}

using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Feeds.Alerts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Fetches the alerts of an organization's stations, and keeps every answer.</summary>
public sealed class AlertHandler(
    WorkWindowsDb db, AlertFeed feed, StationFetches fetches, FeedStates states, PromptLook look, IClock clock)
{
    /// <summary>
    /// Fetches for every station that a parcel takes its temperatures from, and notes those of which something new is
    /// known to be looked at: other alerts, or any after a time in which none were known. A station whose alerts cannot
    /// be had is logged and passed over.
    /// </summary>
    public async Task FetchAsync(CancellationToken cancellation)
    {
        var stations = await Stations.WithForecast(db).ToListAsync(cancellation);
        await fetches.EachAsync(
            WeatherFeed.Alerts, stations, station => FetchAsync(station, cancellation), cancellation);
    }

    private async Task FetchAsync(Station station, CancellationToken cancellation)
    {
        var alerts = await feed.FetchAsync(station.Place, cancellation);
        var report = new WeatherAlertReport { StationId = station.Id, FetchedAt = clock.GetCurrentInstant() };
        foreach (var alert in alerts)
            report.Alerts.Add(ReportedAlert.Of(alert));
        var before = await db.WeatherAlertReports.AsNoTracking().Include(kept => kept.Alerts)
            .Where(kept => kept.StationId == station.Id)
            .OrderByDescending(kept => kept.FetchedAt).FirstOrDefaultAsync(cancellation);
        db.Add(report);
        await states.NoteAsync(station.Id, WeatherFeed.Alerts, report.FetchedAt, null, cancellation);
        var isNew = before is null
            || report.FetchedAt - before.FetchedAt > WeatherRecords.LongestAlertAge
            || !before.Alerts.Select(alert => alert.ToActive()).ToHashSet().SetEquals(alerts);
        if (isNew)
            look.Note(WeatherChange.OfOutlooks([station.Id]));
        await db.SaveChangesAsync(cancellation);
    }
}

using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Fetches what an organization's stations have observed, and what was corrected of late.</summary>
public sealed partial class ObservationHandler(
    WorkWindowsDb db, CurrentOrganization organization, ParcelSources sources, ObservationFeed feed,
    StationFetches fetches, StationReadings readings, FeedStates states, PromptLook look, IClock clock,
    ILogger<ObservationHandler> logger)
{
    /// <summary>
    /// So many days are asked for again each time: the source corrects readings after it has published them. Common
    /// practice, no source.
    /// </summary>
    public const int DaysAgain = 30;

    /// <summary>
    /// What is asked for of a station without a record: chances rest on thirty years, and ten more are wanted.
    /// </summary>
    public const int YearsOfRecord = 40;

    /// <summary>
    /// Fetches for every station that a parcel takes temperatures or winds from, blended ones as well, and notes those
    /// whose record changed to be looked at. A station whose readings cannot be had is logged and passed over.
    /// </summary>
    public async Task FetchAsync(CancellationToken cancellation)
    {
        if (feed.Configured is not { } source)
            return;
        var served = (await sources.InUseAsync(cancellation)).Where(station => source.Serves(station.Place));
        await fetches.EachAsync(WeatherFeed.Observations, served, FetchAsync, cancellation);

        async Task FetchAsync(Station station) => await StoreAsync(
            station.Id, await source.FetchAsync(RequestOf(station), cancellation), cancellation);
    }

    /// <summary>Up to yesterday: a day that is not over has no minimum and maximum yet.</summary>
    private DailyFeedRequest RequestOf(Station station)
    {
        var yesterday = TodayAt(station).PlusDays(-1);
        var first = station.LastDay is { } last
            ? LocalDate.Min(last.PlusDays(1), yesterday.PlusDays(1 - DaysAgain))
            : yesterday.PlusYears(-YearsOfRecord);
        return new(station.Place, station.Zone, new(first, yesterday), FeedValidators.None);
    }

    private LocalDate TodayAt(Station station) => clock.GetCurrentInstant().InZone(station.Zone).Date;

    private async Task StoreAsync(Guid id, DailyFeedReply reply, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var station = await db.Stations.SingleAsync(row => row.Id == id, cancellation);
        if (reply is DailyFeedReply.Observed observed)
        {
            if (!observed.Faults.IsEmpty)
                LogRejected(station.GhcnId, observed.Faults.Faults.Length + observed.Faults.More);
            var counts = await readings.MergeAsync(station, Past(station, observed), cancellation);
            if (counts.Created + counts.Updated > 0)
                look.Note(WeatherChange.OfRecords([station.Id]));
        }
        // Readings that someone imported by hand count as well: days are known by them.
        await states.NoteAsync(station.Id, WeatherFeed.Observations, station.ObservedUntil(), null, cancellation);
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
    }

    /// <summary>
    /// A reading of a day to come is a fault of the feed, whichever day was asked for: it would be the last one for
    /// ever.
    /// </summary>
    private List<DailyReading> Past(Station station, DailyFeedReply.Observed observed)
    {
        var today = TodayAt(station);
        foreach (var reading in observed.Readings.Where(reading => reading.Date > today))
            LogToCome(station.GhcnId, reading.Element, reading.Date, today);
        return [.. observed.Readings.Where(reading => reading.Date <= today)];
    }

    [LoggerMessage(LogLevel.Warning, "The readings of station {GhcnId} have {Count} values that cannot be used")]
    private partial void LogRejected(string ghcnId, int count);

    [LoggerMessage(
        LogLevel.Warning,
        "{Element} of station {GhcnId} on {Date} is left out: it is of a day after {Today}, today there")]
    private partial void LogToCome(string ghcnId, DailyElement element, LocalDate date, LocalDate today);
}

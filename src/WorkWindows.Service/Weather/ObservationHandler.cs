using System.Runtime.CompilerServices;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.TimeZones;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Fetches what an organization's stations have observed, and what was corrected of late.</summary>
public sealed partial class ObservationHandler(
    WorkWindowsDb db, CurrentOrganization organization, ParcelSources sources, ObservationFeed feed,
    StationReadings readings, FeedStates states, IClock clock, ILogger<ObservationHandler> logger)
{
    /// <summary>
    /// So many days are asked for again each time: the source corrects readings after it has published them. Common
    /// practice, no source.
    /// </summary>
    public const int DaysAgain = 30;

    /// <summary>What is asked for of a station without a record: chances rest on thirty years, and ten more are wanted.</summary>
    public const int YearsOfRecord = 40;

    /// <summary>Fetches for every station that a parcel takes temperatures or winds from, blended ones as well.</summary>
    /// <returns>
    /// The stations whose record changed, as it is stored. A station whose readings cannot be had is logged and passed
    /// over.
    /// </returns>
    public async IAsyncEnumerable<Guid> FetchAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        if (feed.Configured is not { } source)
            yield break;
        foreach (var station in await sources.InUseAsync(cancellation))
        {
            if (!source.Serves(station.Place))
                continue;
            DailyFeedReply? reply = null;
            try
            {
                reply = await source.FetchAsync(RequestOf(station), cancellation);
            }
            catch (FeedException fault)
            {
                LogFailed(fault, station.GhcnId);
                await NoteAsync(station, fault, cancellation);
                await db.SaveChangesAsync(cancellation);
            }
            if (reply is not null && await StoreAsync(station.Id, reply, cancellation))
                yield return station.Id;
            db.ChangeTracker.Clear();
        }
    }

    /// <summary>Up to yesterday: a day that is not over has no minimum and maximum yet.</summary>
    private DailyFeedRequest RequestOf(Station station)
    {
        var zone = DateTimeZoneProviders.Tzdb[TimeZoneLookup.Find(station.Latitude, station.Longitude)];
        var yesterday = clock.GetCurrentInstant().InZone(zone).Date.PlusDays(-1);
        var first = station.LastDay is { } last
            ? LocalDate.Min(last.PlusDays(1), yesterday.PlusDays(1 - DaysAgain))
            : yesterday.PlusYears(-YearsOfRecord);
        return new(station.Place, zone, new(first, yesterday), FeedValidators.None);
    }

    private async Task<bool> StoreAsync(Guid id, DailyFeedReply reply, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var station = await db.Stations.SingleAsync(row => row.Id == id, cancellation);
        var isChanged = false;
        if (reply is DailyFeedReply.Observed observed)
        {
            if (!observed.Faults.IsEmpty)
                LogRejected(station.GhcnId, observed.Faults.Faults.Length + observed.Faults.More);
            var counts = await readings.MergeAsync(station, observed.Readings, cancellation);
            isChanged = counts.Created + counts.Updated > 0;
        }
        await NoteAsync(station, null, cancellation);
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        return isChanged;
    }

    /// <summary>Readings that someone imported by hand count as well: days are known by them.</summary>
    private Task NoteAsync(Station station, Exception? fault, CancellationToken cancellation) => states.NoteAsync(
        station.Id, WeatherFeed.Observations,
        station.LastDay?.PlusDays(1).AtStartOfDayInZone(DateTimeZone.Utc).ToInstant(), fault, cancellation);

    [LoggerMessage(LogLevel.Warning, "No readings for station {GhcnId}: its record stays as it is")]
    private partial void LogFailed(Exception fault, string ghcnId);

    [LoggerMessage(LogLevel.Warning, "The readings of station {GhcnId} have {Count} values that cannot be used")]
    private partial void LogRejected(string ghcnId, int count);
}

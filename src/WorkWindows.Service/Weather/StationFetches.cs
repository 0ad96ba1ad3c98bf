using WorkWindows.Feeds.Daily;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>
/// Goes through the stations of a round, so that one that fails, for whatever reason, keeps no other from its weather.
/// </summary>
public sealed partial class StationFetches(WorkWindowsDb db, FeedStates states, ILogger<StationFetches> logger)
{
    private readonly List<Exception> faults = [];

    /// <param name="feed">What is fetched.</param>
    /// <param name="stations">For which stations; not tracked.</param>
    /// <param name="fetch">Fetches and stores.</param>
    /// <param name="cancellation">Ends the round.</param>
    /// <remarks>One that fails is logged and passed over, and why is kept.</remarks>
    public async Task EachAsync(
        WeatherFeed feed, IEnumerable<Station> stations, Func<Station, Task> fetch, CancellationToken cancellation)
    {
        foreach (var station in stations)
        {
            cancellation.ThrowIfCancellationRequested();
            await TryAsync(feed, station, fetch, cancellation);
            db.ChangeTracker.Clear();
        }
    }

    /// <summary>To be called at the end of a round: what is more than a feed without an answer fails its job.</summary>
    /// <exception cref="AggregateException">What stations failed of.</exception>
    public void ThrowIfAnyFailed()
    {
        if (faults.Count > 0)
        {
            throw new AggregateException(
                "The weather of some stations was not stored; that of the others was.", faults);
        }
    }

    private async Task TryAsync(
        WeatherFeed feed, Station station, Func<Station, Task> fetch, CancellationToken cancellation)
    {
        try
        {
            await fetch(station);
        }
        catch (FeedException fault)
        {
            LogFailed(fault, feed, station.GhcnId);
            await NoteAsync(feed, station, fault, cancellation);
        }
        // Not to be swallowed, but the others come first: it is thrown at the end of the round.
        catch (Exception fault) when (!cancellation.IsCancellationRequested)
        {
            LogBroken(fault, feed, station.GhcnId);
            faults.Add(fault);
            await NoteAsync(feed, station, fault, cancellation);
        }
    }

    private async Task NoteAsync(
        WeatherFeed feed, Station station, Exception fault, CancellationToken cancellation)
    {
        db.ChangeTracker.Clear();
        var newest = feed == WeatherFeed.Observations ? station.ObservedUntil() : null;
        await states.NoteAsync(station.Id, feed, newest, fault, cancellation);
        await db.SaveChangesAsync(cancellation);
    }

    [LoggerMessage(LogLevel.Warning, "No {Feed} for station {GhcnId}: what is known of it stays as it is")]
    private partial void LogFailed(Exception fault, WeatherFeed feed, string ghcnId);

    [LoggerMessage(LogLevel.Error, "{Feed} for station {GhcnId} were not stored: the other stations go on")]
    private partial void LogBroken(Exception fault, WeatherFeed feed, string ghcnId);
}

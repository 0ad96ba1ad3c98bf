using NodaTime;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Keeps how it goes with fetching weather, a row a station and feed.</summary>
public sealed class FeedStates(WorkWindowsDb db, IClock clock)
{
    /// <summary>What is kept of the words of a service that failed.</summary>
    private const int LongestError = 300;

    /// <summary>Notes an attempt; the caller saves, together with what came.</summary>
    /// <param name="stationId">The station.</param>
    /// <param name="feed">What was fetched.</param>
    /// <param name="newestAt">How new the newest values are; null when nothing came.</param>
    /// <param name="fault">Why nothing came; null when the answer could be used.</param>
    /// <param name="cancellation">Ends the query.</param>
    public async Task NoteAsync(
        Guid stationId, WeatherFeed feed, Instant? newestAt, Exception? fault, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        if (await db.FeedStates.FindAsync([stationId, feed], cancellation) is not { } state)
        {
            state = new() { StationId = stationId, Feed = feed, FirstAttemptAt = now, LastAttemptAt = now };
            db.Add(state);
        }
        state.LastAttemptAt = now;
        state.LastError = fault is null ? null : fault.Message[..Math.Min(fault.Message.Length, LongestError)];
        if (fault is null)
            state.LastSuccessAt = now;
        if (newestAt is { } newest)
            state.NewestAt = Instant.Max(newest, state.NewestAt ?? newest);
        // The outage is over, and the next one is told of anew.
        if (!state.IsOut(now))
            (state.OutSeenAt, state.ToldAt) = (null, null);
    }
}

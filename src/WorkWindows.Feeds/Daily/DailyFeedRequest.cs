using NodaTime;

namespace WorkWindows.Feeds.Daily;

/// <summary>What a feed is asked for.</summary>
/// <param name="Place">Where.</param>
/// <param name="Zone">The zone whose days are meant.</param>
/// <param name="Days">The days that are wanted, both ends included. Feeds of forecasts give all that they have.</param>
/// <param name="Before">
/// The validators of the reply before to the same request; none to be told everything in any case.
/// </param>
public sealed record DailyFeedRequest(
    FeedPlace Place, DateTimeZone Zone, DateInterval Days, FeedValidators Before);

/// <summary>A place on earth, and the station that stands there.</summary>
/// <param name="GhcnId">The eleven characters of GHCN-Daily; null where there is no station.</param>
/// <param name="LatitudeDeg">Degrees north, WGS 84.</param>
/// <param name="LongitudeDeg">Degrees east, WGS 84; west is negative.</param>
/// <param name="ElevationM">Metres above sea level, where it is known.</param>
public sealed record FeedPlace(string? GhcnId, double LatitudeDeg, double LongitudeDeg, double? ElevationM)
{
    /// <exception cref="ArgumentException">The feed does not serve the place.</exception>
    internal string StationOf(IDailyFeed feed) => feed.Serves(this) && GhcnId is { } station
        ? station
        : throw new ArgumentException(
            $"{feed.Key} goes by stations and does not serve a place without one.", nameof(feed));
}

/// <summary>
/// By what a feed tells whether a reply is still what it would give, sent back as they came (RFC 9110).
/// </summary>
/// <param name="ETag">The header of that name, with its quotes; null if there was none.</param>
/// <param name="LastModified">The header of that name; null if there was none.</param>
public sealed record FeedValidators(string? ETag, string? LastModified)
{
    public static FeedValidators None { get; } = new(null, null);
}

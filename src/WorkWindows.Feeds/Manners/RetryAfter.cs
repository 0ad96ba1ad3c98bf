using System.Net;
using NodaTime;

namespace WorkWindows.Feeds.Manners;

/// <summary>How long a server wants to be left alone (RFC 9110, section 10.2.3).</summary>
internal static class RetryAfter
{
    /// <summary>A header that asks for more was not meant.</summary>
    private static readonly Duration Longest = Duration.FromDays(1);

    /// <returns>Null for an answer that is no refusal, or one that does not say; at most a day.</returns>
    public static Duration? Of(HttpResponseMessage response, IClock clock)
    {
        if (response.StatusCode < HttpStatusCode.BadRequest || response.Headers.RetryAfter is not { } header)
            return null;
        var wait = header.Delta is { } delta ? Duration.FromTimeSpan(delta)
            : header.Date is { } date ? Instant.FromDateTimeOffset(date) - clock.GetCurrentInstant()
            : Duration.Zero;
        return Duration.Max(Duration.Zero, Duration.Min(wait, Longest));
    }

    public static Duration LongestPause(this FeedOptions options) => Duration.FromSeconds(options.LongestPauseSeconds);
}

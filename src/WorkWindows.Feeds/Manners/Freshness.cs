using NodaTime;

namespace WorkWindows.Feeds.Manners;

/// <summary>Until when a reply is as good as a new one (RFC 9111, section 4.2).</summary>
internal static class Freshness
{
    /// <summary>A server that promises more may still learn better.</summary>
    private static readonly Duration Longest = Duration.FromDays(7);

    /// <returns>At most a week from now. Null where the server says nothing of it: nothing is guessed then.</returns>
    public static Instant? Until(HttpResponseMessage response, Instant now)
    {
        if (response.Headers.CacheControl is { } control)
        {
            if (control.NoStore || control.NoCache)
                return null;
            if (control.MaxAge is { } age)
                return now + Least(age - (response.Headers.Age ?? TimeSpan.Zero));
        }
        return response.Content.Headers.Expires is { } expires
            ? now + Least(expires - (response.Headers.Date ?? now.ToDateTimeOffset()))
            : null;
    }

    private static Duration Least(TimeSpan age) =>
        Duration.Max(Duration.Zero, Duration.Min(Longest, Duration.FromTimeSpan(age)));
}

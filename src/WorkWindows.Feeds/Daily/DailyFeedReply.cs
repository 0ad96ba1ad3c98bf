using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Feeds.Daily;

/// <summary>The answer of a feed: nothing new, what was observed, or what is foretold.</summary>
/// <param name="Validators">To be sent with the next request.</param>
/// <param name="FreshUntil">Until when the feed says that it has nothing else; null if it does not say.</param>
public abstract record DailyFeedReply(FeedValidators Validators, Instant? FreshUntil)
{
    /// <summary>The reply before still holds.</summary>
    public sealed record NotModified(FeedValidators Validators, Instant? FreshUntil)
        : DailyFeedReply(Validators, FreshUntil);

    /// <param name="Readings">
    /// Ascending by date and element, each pair once, within the days that were asked for. What the source itself
    /// rejects has its quality flag; a day without a value is absent.
    /// </param>
    /// <param name="Faults">The values that cannot be read.</param>
    /// <param name="Validators">To be sent with the next request.</param>
    /// <param name="FreshUntil">Until when the feed has nothing else.</param>
    public sealed record Observed(
        ImmutableArray<DailyReading> Readings, FaultReport Faults, FeedValidators Validators, Instant? FreshUntil)
        : DailyFeedReply(Validators, FreshUntil);

    /// <param name="Forecast">With the time when it was issued.</param>
    /// <param name="Validators">To be sent with the next request.</param>
    /// <param name="FreshUntil">Until when the feed has nothing else.</param>
    public sealed record Foretold(DailyForecast Forecast, FeedValidators Validators, Instant? FreshUntil)
        : DailyFeedReply(Validators, FreshUntil);
}

namespace WorkWindows.Feeds.Daily;

/// <summary>A service that gives weather by local day. Adding one is one class and one page in docs/feeds.</summary>
public interface IDailyFeed
{
    /// <summary>
    /// Its name in provenance and in the file name of its page, such as <c>open-meteo-archive</c>; never changed.
    /// </summary>
    string Key { get; }

    /// <summary>What its replies hold.</summary>
    FeedKind Kind { get; }

    /// <returns>
    /// False where there is nothing to ask for: a feed that goes by stations and a place without one.
    /// </returns>
    bool Serves(FeedPlace place);

    /// <summary>Asks once, with all manners; a reply that is fresh in memory is not asked for again.</summary>
    /// <exception cref="FeedException">
    /// The feed cannot answer now, or its answer cannot be used; another round may succeed.
    /// </exception>
    /// <exception cref="ArgumentException">The feed does not serve the place.</exception>
    Task<DailyFeedReply> FetchAsync(DailyFeedRequest request, CancellationToken cancellationToken);
}

/// <summary>What the replies of a feed hold.</summary>
public enum FeedKind
{
    /// <summary>What was measured at a station: <see cref="DailyFeedReply.Observed"/>.</summary>
    Observations,

    /// <summary>
    /// What a model makes of observations afterwards, in the same form; no reading of a station, and never to be stored
    /// as one.
    /// </summary>
    Analyses,

    /// <summary>What is expected: <see cref="DailyFeedReply.Foretold"/>.</summary>
    Forecasts,
}

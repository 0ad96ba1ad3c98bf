using Microsoft.Extensions.Options;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Manners;

namespace WorkWindows.Service.Weather;

/// <summary>Where observations are fetched from: section Feeds.</summary>
public sealed class ObservationOptions
{
    public const string Section = "Feeds";

    /// <summary>The key of the feed that records are brought up to date from; none without it.</summary>
    public string Observations { get; set; } = "";
}

/// <summary>
/// The feed of observations that the settings name. Analyses are none: what is stored with a station is what was read
/// there, and a model's values would take the place of its readings.
/// </summary>
public sealed class ObservationFeed(
    IEnumerable<IDailyFeed> feeds, IOptions<ObservationOptions> options, IOptions<FeedOptions> manners)
{
    /// <summary>Null when records are only imported by hand, or nobody says who asks.</summary>
    public IDailyFeed? Configured { get; } = manners.Value.IsEnabled
        ? feeds.SingleOrDefault(feed => feed.Key == options.Value.Observations)
        : null;

    /// <summary>A key that no feed has is found out at the start.</summary>
    internal sealed class Validation(IEnumerable<IDailyFeed> feeds) : IValidateOptions<ObservationOptions>
    {
        public ValidateOptionsResult Validate(string? name, ObservationOptions options) =>
            options.Observations.Length == 0
                ? ValidateOptionsResult.Success
                : FeedKeys.Check("Feeds:Observations", options.Observations, feeds, FeedKind.Observations);
    }
}

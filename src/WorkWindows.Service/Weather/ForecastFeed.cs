using Microsoft.Extensions.Options;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Forecasts;

namespace WorkWindows.Service.Weather;

/// <summary>Where forecasts are fetched from: section Feeds.</summary>
public sealed class ForecastOptions
{
    public const string Section = "Feeds";

    /// <summary>The key of the feed of forecasts: nws-gridpoint.</summary>
    public string Forecasts { get; set; } = NwsGridpointFeed.FeedKey;
}

/// <summary>The feed of forecasts that the settings name.</summary>
public sealed class ForecastFeed(IEnumerable<IDailyFeed> feeds, IOptions<ForecastOptions> options)
{
    public IDailyFeed Configured { get; } = feeds.Single(feed => feed.Key == options.Value.Forecasts);

    /// <summary>A key that no feed has is found out at the start.</summary>
    internal sealed class Validation(IEnumerable<IDailyFeed> feeds) : IValidateOptions<ForecastOptions>
    {
        public ValidateOptionsResult Validate(string? name, ForecastOptions options) =>
            FeedKeys.Check("Feeds:Forecasts", options.Forecasts, feeds, FeedKind.Forecasts);
    }
}

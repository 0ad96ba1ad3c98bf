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

/// <summary>The feed that the settings name.</summary>
public sealed class ObservationFeed(
    IEnumerable<IDailyFeed> feeds, IOptions<ObservationOptions> options, IOptions<FeedOptions> manners)
{
    /// <summary>Null when records are only imported by hand, or nobody says who asks.</summary>
    public IDailyFeed? Configured { get; } = manners.Value.IsEnabled
        ? feeds.SingleOrDefault(feed => feed.Key == options.Value.Observations && IsSuitable(feed))
        : null;

    private static bool IsSuitable(IDailyFeed feed) => feed.Kind == FeedKind.Observations;

    /// <summary>A key that no feed has is found out at the start.</summary>
    internal sealed class Validation(IEnumerable<IDailyFeed> feeds) : IValidateOptions<ObservationOptions>
    {
        public ValidateOptionsResult Validate(string? name, ObservationOptions options)
        {
            string[] keys = [.. feeds.Where(IsSuitable).Select(feed => feed.Key).Order(StringComparer.Ordinal)];
            return options.Observations.Length == 0 || keys.Contains(options.Observations)
                ? ValidateOptionsResult.Success
                : ValidateOptionsResult.Fail($"Feeds:Observations is '{options.Observations}', "
                    + $"which no feed of observations is called: {string.Join(", ", keys)}.");
        }
    }
}

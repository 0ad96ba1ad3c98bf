using Microsoft.Extensions.Options;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Service.Weather;

/// <summary>Checks a setting that names a feed by its key.</summary>
internal static class FeedKeys
{
    /// <returns>A failure that lists the keys there are, unless one of them is named.</returns>
    public static ValidateOptionsResult Check(string setting, string key, IEnumerable<IDailyFeed> feeds, FeedKind kind)
    {
        string[] keys =
            [.. feeds.Where(feed => feed.Kind == kind).Select(feed => feed.Key).Order(StringComparer.Ordinal)];
        return keys.Contains(key)
            ? ValidateOptionsResult.Success
            : ValidateOptionsResult.Fail(
                $"{setting} is '{key}', which no feed of {kind.ToString().ToLowerInvariant()} is called: "
                + $"{string.Join(", ", keys)}.");
    }
}

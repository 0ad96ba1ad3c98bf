using System.Collections.Immutable;
using Microsoft.Extensions.Options;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Forecasts;
using WorkWindows.Feeds.Manners;

namespace WorkWindows.Feeds.Alerts;

/// <summary>The alerts of the US National Weather Service: docs/feeds/nws-alerts.md.</summary>
public sealed class AlertFeed(FeedHttp http, IOptions<FeedOptions> options)
{
    /// <summary>
    /// Fetches the alerts that are in force or coming at a position, rounded to four decimals, as the service has them
    /// now: never from memory, however long it calls its reply fresh.
    /// </summary>
    /// <exception cref="FeedException">
    /// The service cannot answer, or its reply, or an alert in it, cannot be read.
    /// </exception>
    public async Task<ImmutableArray<ActiveAlert>> FetchAsync(FeedPlace place, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(place);
        var address = new Uri(options.Value.NationalWeatherService, $"alerts/active?point={NwsPoints.Text(place)}");
        var body = await http.GetAsync(
            address, NwsPoints.Types, FeedValidators.None, cancellationToken, isConfirmed: true);
        return ActiveAlerts.Read(body.Bytes ?? default);
    }
}

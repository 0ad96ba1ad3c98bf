using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Manners;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>The forecasts by the hour of the US National Weather Service: docs/feeds/nws-hourly.md.</summary>
public sealed class NwsHourlyFeed(FeedHttp http, NwsPoints points) : IDailyFeed
{
    public const string FeedKey = "nws-hourly";

    public string Key => FeedKey;

    public FeedKind Kind => FeedKind.Forecasts;

    public bool Serves(FeedPlace place) => true;

    public async Task<DailyFeedReply> FetchAsync(DailyFeedRequest request, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(request);
        var gridpoint = await points.FindAsync(request.Place, cancellationToken);
        var body = await http.GetAsync(gridpoint.Hourly, NwsPoints.Types, request.Before, cancellationToken);
        return body.Bytes is { } json
            ? new DailyFeedReply.Foretold(
                HourlyForecast.Read(json, request.Zone, body.AnsweredAt), body.Validators, body.FreshUntil)
            : new DailyFeedReply.NotModified(body.Validators, body.FreshUntil);
    }
}

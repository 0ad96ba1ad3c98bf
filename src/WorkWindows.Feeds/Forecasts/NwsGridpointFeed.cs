using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Manners;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>The gridpoint forecasts of the US National Weather Service: docs/feeds/nws-gridpoint.md.</summary>
public sealed class NwsGridpointFeed(FeedHttp http, NwsPoints points) : IDailyFeed
{
    public const string FeedKey = "nws-gridpoint";

    public string Key => FeedKey;

    public FeedKind Kind => FeedKind.Forecasts;

    public bool Serves(FeedPlace place) => true;

    public async Task<DailyFeedReply> FetchAsync(DailyFeedRequest request, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(request);
        var gridpoint = await points.FindAsync(request.Place, cancellationToken);
        var body = await http.GetAsync(gridpoint.Layers, NwsPoints.Types, request.Before, cancellationToken);
        return body.Bytes is { } json
            ? new DailyFeedReply.Foretold(
                GridpointForecast.Read(json, request.Zone, body.AnsweredAt), body.Validators, body.FreshUntil)
            : new DailyFeedReply.NotModified(body.Validators, body.FreshUntil);
    }
}

using Microsoft.Extensions.Options;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Manners;
using WorkWindows.Feeds.Stations;

namespace WorkWindows.Feeds.Ncei;

/// <summary>
/// The Access Data Service of NOAA's National Centers for Environmental Information: docs/feeds/ncei.md.
/// </summary>
public sealed class NceiFeed(FeedHttp http, IOptions<FeedOptions> options) : IDailyFeed
{
    public const string FeedKey = "ncei";

    private static readonly string Elements = string.Join(
        ',', Enum.GetValues<GhcnElement>().Select(element => element.Code()));

    public string Key => FeedKey;

    public FeedKind Kind => FeedKind.Observations;

    public bool Serves(FeedPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return place.GhcnId is not null;
    }

    public async Task<DailyFeedReply> FetchAsync(DailyFeedRequest request, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(request);
        var station = request.Place.StationOf(this);
        var address = new Uri(
            options.Value.Ncei,
            $"v1?dataset=daily-summaries&stations={station}&startDate={request.Days.Start:uuuu-MM-dd}"
            + $"&endDate={request.Days.End:uuuu-MM-dd}&dataTypes={Elements}&format=json&units=metric"
            + "&includeAttributes=true");
        var body = await http.GetAsync(address, FeedHttp.Json, request.Before, cancellationToken);
        if (body.Bytes is not { } json)
            return new DailyFeedReply.NotModified(body.Validators, body.FreshUntil);
        var (readings, faults) = DailySummaries.Read(json, StationUnits.Metric, station);
        return new DailyFeedReply.Observed(
            [.. readings.Where(reading => request.Days.Contains(reading.Date))], faults, body.Validators,
            body.FreshUntil);
    }
}

using Microsoft.Extensions.Options;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Manners;

namespace WorkWindows.Feeds.OpenMeteo;

/// <summary>
/// The past days of Open-Meteo, an analysis of a model and not the reading of a station:
/// docs/feeds/open-meteo-archive.md.
/// </summary>
public sealed class OpenMeteoArchiveFeed(FeedHttp http, IOptions<FeedOptions> options) : IDailyFeed
{
    public const string FeedKey = "open-meteo-archive";

    public string Key => FeedKey;

    public FeedKind Kind => FeedKind.Analyses;

    public bool Serves(FeedPlace place) => true;

    public async Task<DailyFeedReply> FetchAsync(DailyFeedRequest request, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(request);
        var days = $"start_date={request.Days.Start:uuuu-MM-dd}&end_date={request.Days.End:uuuu-MM-dd}";
        var address = OpenMeteoQuery.Address(
            new(options.Value.OpenMeteoArchive, "v1/archive"), request, days, options.Value.OpenMeteoKey);
        var body = await http.GetAsync(address, FeedHttp.Json, request.Before, cancellationToken);
        if (body.Bytes is not { } json)
            return new DailyFeedReply.NotModified(body.Validators, body.FreshUntil);
        var (readings, faults) = OpenMeteoDays.Read(json, request.Zone, request.Days, OpenMeteoQuery.Always);
        return new DailyFeedReply.Observed(readings, faults, body.Validators, body.FreshUntil);
    }
}

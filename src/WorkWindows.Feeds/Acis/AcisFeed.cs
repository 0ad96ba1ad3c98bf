using System.Text.Json;
using Microsoft.Extensions.Options;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Manners;

namespace WorkWindows.Feeds.Acis;

/// <summary>The station data of the Regional Climate Centers' information system: docs/feeds/acis.md.</summary>
public sealed class AcisFeed(FeedHttp http, IOptions<FeedOptions> options) : IDailyFeed
{
    public const string FeedKey = "acis";

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
        var question = JsonSerializer.SerializeToUtf8Bytes(new
        {
            sid = station,
            sdate = $"{request.Days.Start:uuuu-MM-dd}",
            edate = $"{request.Days.End:uuuu-MM-dd}",
            elems = StationData.Elements.Select(element => new { name = element.Name, interval = "dly" }),
        });
        var body = await http.PostJsonAsync(new Uri(options.Value.Acis, "StnData"), question, cancellationToken);
        var (readings, faults) = StationData.Read(body.Bytes ?? default, station, StationData.Elements, request.Days);
        return new DailyFeedReply.Observed(readings, faults, body.Validators, body.FreshUntil);
    }
}

using Microsoft.Extensions.Options;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Forecasts;
using WorkWindows.Feeds.Manners;

namespace WorkWindows.Feeds.OpenMeteo;

/// <summary>The forecasts of Open-Meteo: docs/feeds/open-meteo-forecast.md.</summary>
public sealed class OpenMeteoForecastFeed(FeedHttp http, IOptions<FeedOptions> options) : IDailyFeed
{
    public const string FeedKey = "open-meteo-forecast";

    /// <summary>As far as the service looks ahead.</summary>
    private static readonly string Days = $"forecast_days={ForecastHorizon.DaysAhead}";

    public string Key => FeedKey;

    public FeedKind Kind => FeedKind.Forecasts;

    public bool Serves(FeedPlace place) => true;

    public async Task<DailyFeedReply> FetchAsync(DailyFeedRequest request, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(request);
        var address = OpenMeteoQuery.Address(
            new(options.Value.OpenMeteoForecast, "v1/forecast"), request, Days, options.Value.OpenMeteoKey);
        var body = await http.GetAsync(address, FeedHttp.Json, request.Before, cancellationToken);
        if (body.Bytes is not { } json)
            return new DailyFeedReply.NotModified(body.Validators, body.FreshUntil);
        // The reply does not say when the forecast was made: it is as old as the reply at least.
        var days = new ForecastHorizon(body.AnsweredAt).Days(request.Zone);
        var (readings, faults) = OpenMeteoDays.Read(json, request.Zone, days, days);
        return readings.IsEmpty
            ? throw new FeedFormatException($"The forecast has no day with a usable value. {faults}".TrimEnd())
            : new DailyFeedReply.Foretold(
                new(body.AnsweredAt, readings, [], faults), body.Validators, body.FreshUntil);
    }
}

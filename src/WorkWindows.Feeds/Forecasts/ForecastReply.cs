using NodaTime;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>The answer to a request for a forecast.</summary>
/// <param name="Forecast">Null if the service has nothing newer than the time that was asked with.</param>
/// <param name="LastModified">To be sent with the next request; null if the service gave none.</param>
public sealed record ForecastReply(DailyForecast? Forecast, Instant? LastModified);

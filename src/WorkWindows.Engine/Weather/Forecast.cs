using NodaTime;

namespace WorkWindows.Engine.Weather;

/// <summary>Daily values of the coming days, as forecast at one time.</summary>
/// <param name="IssuedAt">When the forecast was issued.</param>
/// <param name="Days">Its daily values.</param>
public sealed record Forecast(Instant IssuedAt, DailySeries Days);

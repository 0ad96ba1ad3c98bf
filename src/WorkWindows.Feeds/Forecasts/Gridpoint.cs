namespace WorkWindows.Feeds.Forecasts;

/// <summary>The cell of the forecast grid that holds a position. It seldom changes and may be kept.</summary>
/// <param name="Address">Where its forecast is.</param>
/// <param name="TimeZone">IANA name, as the service gives it.</param>
public sealed record Gridpoint(Uri Address, string TimeZone);

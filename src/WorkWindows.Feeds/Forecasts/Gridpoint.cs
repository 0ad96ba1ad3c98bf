namespace WorkWindows.Feeds.Forecasts;

/// <summary>The cell of the forecast grid that holds a position.</summary>
/// <param name="Layers">Where its layers are.</param>
/// <param name="Hourly">Where its forecast by the hour is.</param>
internal sealed record Gridpoint(Uri Layers, Uri Hourly);

using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Service.Windows;

/// <summary>The signals of a weather point, and the record and forecast behind them.</summary>
public sealed record PointWeather(
    SignalSet Signals, DailySeries Observed, Engine.Weather.Forecast? Forecast, double LatitudeDeg)
{
    /// <summary>
    /// The signals on a property: leaf-out is drawn to what was seen there in other years, and is what was seen in a
    /// year that it was seen in.
    /// </summary>
    /// <param name="seen">What was seen on the property, one day a year at most.</param>
    public SignalSet On(IReadOnlyCollection<SeasonEvent> seen)
    {
        if (seen.Count == 0)
            return Signals;
        var span = Signals.Span;
        var predicted = LeafOut.Predict(
            span.First.Year, span.Last.Year, Observed, Forecast?.Days, seen: seen.Select(leafOut => leafOut.Date));
        return Signals.With(predicted).With(seen);
    }
}

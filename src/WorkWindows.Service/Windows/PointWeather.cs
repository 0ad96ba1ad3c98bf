using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Service.Windows;

/// <summary>The signals of a weather point and the record that leaf-out is predicted from.</summary>
internal sealed record PointWeather(SignalSet Signals, DailySeries Observed, DailySeries? Forecast)
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
            span.First.Year, span.Last.Year, Observed, Forecast, seen: seen.Select(leafOut => leafOut.Date));
        return Signals.With(predicted).With(seen);
    }
}

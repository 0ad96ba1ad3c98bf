using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>Values in time of which a day has one.</summary>
/// <param name="Element">The value of a day.</param>
/// <param name="Spans">Ascending by start, in the unit of the payload.</param>
/// <param name="Extreme">Picks the value of a day.</param>
/// <param name="Factor">From the payload's unit to the element's.</param>
internal sealed record DayLayer(
    DailyElement Element, ImmutableArray<ForecastSpan> Spans, Func<IEnumerable<double>, double> Extreme,
    double Factor = 1)
{
    public IEnumerable<DailyReading> Readings(Dictionary<LocalDate, double> days) =>
        days.Select(day => new DailyReading(day.Key, Element, day.Value * Factor, QualityFlag: null));

    public static double Highest(IEnumerable<double> values) => values.Max();

    public static double Lowest(IEnumerable<double> values) => values.Min();
}

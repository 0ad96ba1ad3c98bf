using System.Runtime.InteropServices;
using NodaTime;
using UnitsNet;
using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Ground;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Signals;

/// <summary>Signals that are worked out from other ones. A value without all of its inputs is missing.</summary>
internal static class DerivedSignals
{
    /// <summary>
    /// No ground of the states that rules speak of is frozen on this day, so that the index may start anew.
    /// </summary>
    private static readonly FixedDate FrostYear = new(7, 1);

    /// <summary>
    /// A wet loam (common practice, no source): 1.0 W/(m K), 1500 kg/m³, 20 % water. Much water and little conduction
    /// make the frost shallow.
    /// </summary>
    private static readonly GroundSoil Soil = GroundSoil.Of(1.0, 1500, 20);

    /// <summary>
    /// The low bound of frost depth in mild places, a share of Stefan's. Source: docs/rules/frozen-ground.md.
    /// </summary>
    private const double ShareOfStefan = 0.707;

    /// <summary>At or above this index the ground is frozen, °C-days. Source: docs/rules/frozen-ground.md.</summary>
    private const double FrozenFromC = 83;

    private const double CmPerM = 100;

    /// <summary>
    /// Gaps of temperature and snow up to this long are bridged in a straight line for the frozen ground index.
    /// </summary>
    private const int LongestBridgedGapDays = 3;

    /// <summary>The signals that are measured, and those that are worked out from them.</summary>
    /// <param name="span">The days.</param>
    /// <param name="measured">Measures an element over a span.</param>
    public static IEnumerable<Signal> OfWeather(DaySpan span, Func<DailyElement, DaySpan, Signal> measured)
    {
        var weather = Enum.GetValues<DailyElement>()
            .ToDictionary(element => element, element => measured(element, span));
        var (frozenGround, frostDepth) = FrozenGround(span, measured);
        return
        [
            .. weather.Values,
            HeatIndex(weather[DailyElement.MaxTemperatureC], weather[DailyElement.MinHumidityPercent]),
            WindChill(weather[DailyElement.MinTemperatureC], weather[DailyElement.WindMps]),
            frozenGround,
            frostDepth,
        ];
    }

    /// <summary>
    /// The heat index of the day's maximum in its lowest humidity: the two come at about the same hour.
    /// </summary>
    public static Signal HeatIndex(Signal maxC, Signal minHumidityPercent) => Combined(
        SignalKind.HeatIndexC, maxC, minHumidityPercent,
        (tempC, humidity) => ToC(HeatAndCold.HeatIndex.OfF(ToF(tempC), humidity)));

    /// <summary>The wind chill of the day's minimum in its strongest wind: the worst that the day can feel.</summary>
    public static Signal WindChill(Signal minC, Signal windMps) => Combined(
        SignalKind.WindChillC, minC, windMps,
        (tempC, mps) => ToC(HeatAndCold.WindChill.OfF(ToF(tempC), Speed.FromMetersPerSecond(mps).MilesPerHour)));

    /// <summary>The first day of the frost year that a day lies in.</summary>
    public static LocalDate FrostYearOf(LocalDate day) => YearlyDates.LastOnOrBefore(FrostYear, day);

    /// <summary>The continuous frozen ground index, and the frost depth that it stands for.</summary>
    /// <param name="span">The days.</param>
    /// <param name="measured">Measures an element over a span.</param>
    public static (Signal IndexC, Signal DepthCm) FrozenGround(
        DaySpan span, Func<DailyElement, DaySpan, Signal> measured)
    {
        var winter = DaySpan.Between(FrostYearOf(span.First), span.Last);
        var (min, max) = (
            measured(DailyElement.MinTemperatureC, winter), measured(DailyElement.MaxTemperatureC, winter));
        var snow = measured(DailyElement.SnowDepthCm, winter);
        var means = Bridged([.. min.Values.Zip(max.Values, (low, high) => (low + high) / 2)]);
        var depths = Bridged([.. snow.Values]);
        var index = new double[winter.Count];
        for (var first = 0; first < winter.Count;)
        {
            // The span begins on a first of July.
            var next = winter[first].PlusYears(1);
            var count = Math.Min(winter.IndexOf(next), winter.Count) - first;
            FrozenGroundIndex.Over(means.AsSpan(first, count), depths.AsSpan(first, count), index.AsSpan(first, count));
            first += count;
        }
        var values = index[winter.IndexOf(span.First)..];
        var bases = max.Bases.AsSpan()[winter.IndexOf(span.First)..].ToArray();
        var ofSnow = snow.Bases.AsSpan()[winter.IndexOf(span.First)..];
        for (var day = 0; day < values.Length; day++)
        {
            bases[day] = double.IsNaN(values[day]) ? Basis.Missing
                : bases[day] is Basis.Missing or Basis.Observed && ofSnow[day] == Basis.Interpolated ? Basis.Interpolated
                : bases[day] == Basis.Missing ? Basis.Observed
                : bases[day];
        }
        return (
            new(SignalKind.FrozenGroundIndexC, span, [.. values], [.. bases]),
            new(SignalKind.FrostDepthCm, span,
                [.. values.Select(DepthCm)],
                [.. bases]));
    }

    /// <summary>
    /// None while the index does not call the ground frozen: the formula alone finds inches of frost after two cold
    /// days.
    /// </summary>
    private static double DepthCm(double indexC) => indexC < FrozenFromC
        ? 0
        : CmPerM * ShareOfStefan * FrostDepth.StefanM(indexC, Soil);

    private static Signal Combined(SignalKind kind, Signal left, Signal right, Func<double, double, double> combine)
    {
        var span = left.Span;
        var values = new double[span.Count];
        var bases = new Basis[span.Count];
        for (var day = 0; day < values.Length; day++)
        {
            var known = left.Bases[day] != Basis.Missing && right.Bases[day] != Basis.Missing;
            values[day] = known ? combine(left.Values[day], right.Values[day]) : double.NaN;
            bases[day] = !known ? Basis.Missing
                : left.Bases[day] == Basis.Forecast || right.Bases[day] == Basis.Forecast ? Basis.Forecast
                : right.Bases[day] == Basis.Interpolated ? Basis.Interpolated
                : left.Bases[day];
        }
        return new(kind, span, ImmutableCollectionsMarshal.AsImmutableArray(values),
            ImmutableCollectionsMarshal.AsImmutableArray(bases));
    }

    /// <summary>The values with short gaps filled in a straight line between the days beside them.</summary>
    private static double[] Bridged(double[] values)
    {
        for (var day = 1; day < values.Length; day++)
        {
            if (!double.IsNaN(values[day]) || double.IsNaN(values[day - 1]))
                continue;
            var after = day;
            while (after < values.Length && double.IsNaN(values[after]))
                after++;
            if (after == values.Length || after - day > LongestBridgedGapDays)
                continue;
            var (from, step) = (values[day - 1], (values[after] - values[day - 1]) / (after - day + 1));
            for (var gap = day; gap < after; gap++)
                values[gap] = from + step * (gap - day + 1);
        }
        return values;
    }

    private static double ToF(double tempC) => Temperature.FromDegreesCelsius(tempC).DegreesFahrenheit;

    private static double ToC(double tempF) => Temperature.FromDegreesFahrenheit(tempF).DegreesCelsius;
}

using NodaTime;
using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Evaluation;

/// <summary>What a sum has come to on a day.</summary>
/// <param name="Known">The sum of the days that have a value, in the unit of the signals.</param>
/// <param name="MissingDays">The days that count and have none.</param>
internal readonly record struct RunningSum(double Known, int MissingDays)
{
    public RunningSum Plus(double value) =>
        double.IsNaN(value) ? this with { MissingDays = MissingDays + 1 } : this with { Known = Known + value };
}

/// <summary>Sums over days. A day without a value is counted as missing, never as zero.</summary>
internal static class Sums
{
    /// <summary>What a sum has come to on each day of the signals' span.</summary>
    public static RunningSum[] Of(Sum sum, SignalSet signals) => sum switch
    {
        TotalOver total => Totals(total, signals),
        HeatSince heat => Heat(heat, signals),
        _ => throw new ArgumentException($"{sum.GetType().Name} is not a sum that can be evaluated."),
    };

    /// <summary>The day that a sum on a day begins with.</summary>
    public static LocalDate FirstDay(Sum sum, LocalDate day) => sum switch
    {
        TotalOver total => day.PlusDays(1 - total.Days),
        HeatSince heat => YearlyDates.LastOnOrBefore(heat.Since, day),
        _ => throw new ArgumentException($"{sum.GetType().Name} is not a sum that can be evaluated."),
    };

    private static RunningSum[] Totals(TotalOver total, SignalSet signals)
    {
        var sums = new RunningSum[signals.Span.Count];
        for (var day = 0; day < sums.Length; day++)
        {
            for (var back = 0; back < total.Days; back++)
                sums[day] = sums[day].Plus(
                    day < back ? double.NaN : signals[total.Signal]?.Values[day - back] ?? double.NaN);
        }
        return sums;
    }

    private static RunningSum[] Heat(HeatSince heat, SignalSet signals)
    {
        var sums = new RunningSum[signals.Span.Count];
        var first = FirstDay(heat, signals.Span.First);
        var sum = new RunningSum(0, Period.DaysBetween(first, signals.Span.First));
        var next = heat.Since.Resolve(signals.Span.First.Year)!.Value;
        if (next < signals.Span.First)
            next = heat.Since.Resolve(next.Year + 1)!.Value;
        var nextIndex = signals.Span.IndexOf(next);
        for (var day = 0; day < sums.Length; day++)
        {
            if (day == nextIndex)
            {
                sum = default;
                nextIndex = signals.Span.IndexOf(heat.Since.Resolve(signals.Span[day].Year + 1)!.Value);
            }
            sums[day] = sum = sum.Plus(DegreeDaysC(heat.Heat, signals, day));
        }
        return sums;
    }

    private static double DegreeDaysC(HeatCount heat, SignalSet signals, int day)
    {
        var min = Value(SignalKind.MinTemperatureC, day);
        var max = Value(SignalKind.MaxTemperatureC, day);
        var nextMin = heat.Method is DegreeDayMethod.DoubleSine or DegreeDayMethod.DoubleTriangle
            ? Value(SignalKind.MinTemperatureC, day + 1)
            : min;
        // A forecast minimum may lie above an observed maximum: then one of them is wrong.
        return min > max
            ? double.NaN
            : DegreeDays.Of(heat.Method, min, max, nextMin, heat.Base.InSignalUnit,
                heat.Upper?.InSignalUnit ?? double.PositiveInfinity);

        double Value(SignalKind kind, int index) =>
            index < signals.Span.Count ? signals[kind]?.Values[index] ?? double.NaN : double.NaN;
    }
}

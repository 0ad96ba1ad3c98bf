using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Evaluation;

/// <summary>On which days of a set of signals a condition holds.</summary>
public static class ConditionDays
{
    // Thresholds and readings go through the same unit conversions, which leave errors of about 1e-14; a reading equal
    // to the threshold must count as equal.
    private const double Tolerance = 1e-6;

    /// <returns>An answer for every day of the signals' span; unknown where an input is missing and matters.</returns>
    public static Tri Of(Condition condition, SignalSet signals) => condition switch
    {
        AllOf all => all.Parts.Select(part => Of(part, signals)).Aggregate((left, right) => left & right),
        AnyOf any => any.Parts.Select(part => Of(part, signals)).Aggregate((left, right) => left | right),
        Not not => !Of(not.Part, signals),
        InRange inRange => CalendarDays.Days(inRange.Range, signals),
        Compare compare => Of(compare, signals),
        InARow row => Of(row.Each, signals).Run(row.Days),
        _ => throw new ArgumentException($"{condition.GetType().Name} is not a condition that can be evaluated."),
    };

    private static Tri Of(Compare compare, SignalSet signals)
    {
        var length = signals.Span.Count;
        if (signals[compare.Signal] is not { } signal)
            return new(DayBits.None(length), DayBits.None(length));
        var values = signal.Values;
        var limit = compare.Threshold.InSignalUnit;
        // NaN compares false both ways, so that a missing value neither holds nor fails.
        return compare.Relation switch
        {
            Relation.Below => new(
                DayBits.Where(length, day => values[day] < limit - Tolerance),
                DayBits.Where(length, day => values[day] >= limit - Tolerance)),
            Relation.AtMost => new(
                DayBits.Where(length, day => values[day] <= limit + Tolerance),
                DayBits.Where(length, day => values[day] > limit + Tolerance)),
            Relation.AtLeast => new(
                DayBits.Where(length, day => values[day] >= limit - Tolerance),
                DayBits.Where(length, day => values[day] < limit - Tolerance)),
            Relation.Above => new(
                DayBits.Where(length, day => values[day] > limit + Tolerance),
                DayBits.Where(length, day => values[day] <= limit + Tolerance)),
        };
    }
}

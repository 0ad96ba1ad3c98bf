using static System.Math;

namespace WorkWindows.Engine.Phenology;

/// <summary>
/// A day's heat above a base, constant above an upper limit. Sources: docs/rules/degree-days.md.
/// </summary>
public static class DegreeDays
{
    /// <summary>The heat of a day by one of the methods.</summary>
    /// <param name="method">The method that the requirement was fitted with.</param>
    /// <param name="min">The day's minimum temperature; all temperatures in the same unit, °C or °F.</param>
    /// <param name="max">The day's maximum temperature.</param>
    /// <param name="nextMin">
    /// The minimum of the day after, which the double methods alone look at. One above the maximum stands for a night
    /// in which it grew warmer.
    /// </param>
    /// <param name="lower">The base.</param>
    /// <param name="upper">The limit above which more heat counts no more.</param>
    /// <returns>
    /// Degree-days of the unit given, from 0 to <paramref name="upper"/> less <paramref name="lower"/>; NaN when a
    /// temperature that the method looks at is NaN.
    /// </returns>
    /// <exception cref="ArgumentException">The minimum is above the maximum, or the base above the limit.</exception>
    public static double Of(
        DegreeDayMethod method, double min, double max, double nextMin, double lower,
        double upper = double.PositiveInfinity)
    {
        if (min > max)
            throw new ArgumentException($"The minimum {min} is above the maximum {max}.", nameof(min));
        if (lower > upper)
            throw new ArgumentException($"The base {lower} is above the limit {upper}.", nameof(lower));
        return method switch
        {
            DegreeDayMethod.SimpleAverage => Clamp((min + max) / 2, lower, upper) - lower,
            DegreeDayMethod.ClippedAverage => (Clamp(min, lower, upper) + Clamp(max, lower, upper)) / 2 - lower,
            DegreeDayMethod.SingleTriangle => Triangle(min, max, lower, upper),
            DegreeDayMethod.DoubleTriangle =>
                (Triangle(min, max, lower, upper) + Triangle(nextMin, max, lower, upper)) / 2,
            DegreeDayMethod.SingleSine => Sine(min, max, lower, upper),
            DegreeDayMethod.DoubleSine => (Sine(min, max, lower, upper) + Sine(nextMin, max, lower, upper)) / 2,
        };
    }

    /// <summary>
    /// The simple average, method 1, which the thermal-time models of this engine were fitted with.
    /// </summary>
    /// <inheritdoc cref="Of" path="/param"/>
    /// <inheritdoc cref="Of" path="/returns"/>
    /// <inheritdoc cref="Of" path="/exception"/>
    public static double SimpleAverage(double min, double max, double lower, double upper = double.PositiveInfinity) =>
        Of(DegreeDayMethod.SimpleAverage, min, max, min, lower, upper);

    private static double Triangle(double start, double end, double lower, double upper)
    {
        var (min, max) = (Min(start, end), Max(start, end));
        if (IsFlat(min, max, lower, upper))
            return Clamp((min + max) / 2, lower, upper) - lower;
        var aboveUpper = max > upper ? Square(max - upper) : 0;
        return min >= lower
            ? (min + max) / 2 - lower - aboveUpper / (2 * (max - min))
            : (Square(max - lower) - aboveUpper) / (2 * (max - min));
    }

    private static double Sine(double start, double end, double lower, double upper)
    {
        var (min, max) = (Min(start, end), Max(start, end));
        var mean = (min + max) / 2;
        if (IsFlat(min, max, lower, upper))
            return Clamp(mean, lower, upper) - lower;
        var amplitude = (max - min) / 2;
        // The wave's phases at which it crosses the base and the upper limit, or its foot and its crest.
        var atLower = min >= lower ? -PI / 2 : Asin((lower - mean) / amplitude);
        var atUpper = max <= upper ? PI / 2 : Asin((upper - mean) / amplitude);
        var between = (mean - lower) * (atUpper - atLower) + amplitude * (Cos(atLower) - Cos(atUpper));
        var above = max <= upper ? 0 : (upper - lower) * (PI / 2 - atUpper);
        return (between + above) / PI;
    }

    // The whole wave lies below the base, above the limit or between the two: its mean tells all. So it does of NaN.
    private static bool IsFlat(double min, double max, double lower, double upper) =>
        double.IsNaN(min + max) || min >= upper || max <= lower || (min >= lower && max <= upper);

    private static double Square(double value) => value * value;
}

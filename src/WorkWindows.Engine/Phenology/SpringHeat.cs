using static System.Math;

namespace WorkWindows.Engine.Phenology;

/// <summary>Growing degree-hours of a day above 31 °F, as the Extended Spring Index reckons them.</summary>
/// <remarks>Source: docs/rules/spring-index.md.</remarks>
public static class SpringHeat
{
    /// <summary>The temperature above which an hour's heat counts.</summary>
    public const double BaseF = 31;

    /// <summary>The index's own approximation of the length of a day.</summary>
    /// <returns>Hours, 1 to 23.</returns>
    public static double DayLengthHours(int dayOfYear, double latitudeDeg)
    {
        // Days are counted from 1 March, so that the year's odd day comes last.
        var sinceMarch = dayOfYear <= 60 ? dayOfYear + 306 : dayOfYear - 60;
        var season = Cos(0.0172 * sinceMarch - 1.95);
        var tangent = Tan(latitudeDeg * PI / 180);
        var hours = latitudeDeg < 40
            ? 12.14 + 3.34 * tangent * season
            : 12.25 + (1.6164 + 1.7643 * tangent * tangent) * season;
        return Clamp(hours, 1, 23);
    }

    /// <summary>
    /// The heat of the 24 hours from sunrise, °F hours: a sine wave by day and a logarithmic fall by night.
    /// </summary>
    /// <returns>Not negative; NaN when a temperature is NaN.</returns>
    public static double DegreeHoursF(double maxF, double minF, double dayLengthHours)
    {
        // As published: the procedure steps around a minimum of nothing and a day without any range.
        if (minF == 0)
            minF = 0.01;
        if (maxF == minF)
            maxF += 0.01;
        var rangeF = maxF - minF;
        var sunHours = (int)dayLengthHours;

        var sum = Max(0, minF - BaseF);
        for (var hour = 1; hour <= sunHours; hour++)
            sum += Max(0, minF + rangeF * Sin(PI * hour / (dayLengthHours + 4)) - BaseF);
        var sunsetF = minF + rangeF * Sin(PI * dayLengthHours / (dayLengthHours + 4));
        if (sunsetF <= 0)
            sunsetF = 0.01;
        for (var hour = 1; hour <= 23 - sunHours; hour++)
            sum += Max(0, sunsetF - (sunsetF - minF) * Log(hour) / Log(24 - dayLengthHours) - BaseF);
        return sum;
    }

    /// <summary>
    /// The heat of each day from 1 January to the last one before a missing value, at most
    /// <see cref="SpringIndex.Days"/>; null for a day that the variant leaves out.
    /// </summary>
    internal static double?[] Daily(
        ReadOnlySpan<double> maxF, ReadOnlySpan<double> minF, double latitudeDeg, SpringIndexVariant variant)
    {
        var heat = new List<double?>(SpringIndex.Days);
        var (maxBefore, minBefore) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var day = 0; day < Min(maxF.Length, SpringIndex.Days); day++)
        {
            if (double.IsNaN(maxF[day] + minF[day]))
                break;
            // Stations that read in the morning book a maximum to the wrong day: no day passes by the one before.
            var max = Max(maxF[day], minBefore);
            var min = Min(minF[day], maxBefore);
            (maxBefore, minBefore) = (max, min);
            var isLeftOut = variant == SpringIndexVariant.Toolbox2015 && max < BaseF;
            heat.Add(isLeftOut ? null : DegreeHoursF(max, min, DayLengthHours(day + 1, latitudeDeg)));
        }
        return [.. heat];
    }
}

namespace WorkWindows.Engine.Weather.Quality;

/// <summary>
/// Finds temperatures that no station around has anything like, on the day, the day before or the day after. Source:
/// Durre et al. 2010, the spatial corroboration check of GHCN-Daily, from memory; docs/rules/weather-quality.md.
/// </summary>
internal static class UnlikeNeighbours
{
    /// <summary>The difference from the nearest of the values around, each moved by its usual difference, °C.</summary>
    public const double LimitC = 10;

    /// <summary>Stations further away are not asked.</summary>
    public const double MaxDistanceM = 150_000;

    /// <summary>As many stations around must have a value on the three days.</summary>
    public const int MinStations = 2;

    /// <summary>Days of a station whose values are to be rejected.</summary>
    /// <param name="station">The station among the others.</param>
    /// <param name="values">For each station one value a day, NaN where there is none.</param>
    /// <param name="near">The stations around.</param>
    /// <param name="usualC">
    /// How much warmer the station is than another one in a month, 0 to 11; NaN where not known.
    /// </param>
    /// <param name="months">The month of each day, 0 to 11.</param>
    public static IEnumerable<int> Days(
        int station, double[][] values, IReadOnlyList<int> near, Func<int, int, double> usualC, byte[] months)
    {
        for (var day = 1; day < months.Length - 1; day++)
        {
            if (double.IsNaN(values[station][day]))
                continue;
            var (asked, nearest) = (0, double.PositiveInfinity);
            foreach (var other in near)
            {
                var difference = Nearest(values[station][day] - usualC(other, months[day]), values[other], day);
                if (double.IsNaN(difference))
                    continue;
                asked++;
                nearest = Math.Min(nearest, difference);
            }
            if (asked >= MinStations && nearest > LimitC)
                yield return day;
        }
    }

    private static double Nearest(double expected, double[] values, int day)
    {
        var nearest = double.NaN;
        for (var around = day - 1; around <= day + 1; around++)
        {
            var difference = Math.Abs(values[around] - expected);
            if (!(difference >= nearest) && !double.IsNaN(difference))
                nearest = difference;
        }
        return nearest;
    }
}

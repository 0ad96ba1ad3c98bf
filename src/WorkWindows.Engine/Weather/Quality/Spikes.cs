namespace WorkWindows.Engine.Weather.Quality;

/// <summary>
/// Finds a temperature that leaps from the day before and back on the day after, further than its season knows.
/// </summary>
internal static class Spikes
{
    /// <summary>
    /// Rejected is a leap this many times as high as nine in ten of its season; chosen on 16 stations
    /// (docs/rules/weather-quality.md).
    /// </summary>
    public const double Times = 4;

    /// <summary>No leap below this is rejected: fronts make such ones, °C.</summary>
    public const double LeastC = 15;

    /// <summary>Without enough days to know the season. Source: Durre et al. 2010, from memory.</summary>
    public const double UnknownSeasonC = 25;

    /// <summary>The days of a month and the two beside it, over all years, that it takes to know a season.</summary>
    public const int MinDays = 300;

    private const double Share = 0.9;

    private const int Months = 12;

    public static void Check(CheckedColumn column, DayAxis axis)
    {
        var leaps = new double[column.Values.Length];
        var ofMonth = Enumerable.Range(0, Months).Select(_ => new List<double>()).ToArray();
        for (var day = 0; day < leaps.Length; day++)
        {
            leaps[day] = LeapC(column.Values, day);
            if (!double.IsNaN(leaps[day]))
                ofMonth[axis.Months[day]].Add(leaps[day]);
        }
        double[] limits = [.. Enumerable.Range(0, Months).Select(month => LimitC(
            [.. ofMonth[(month + Months - 1) % Months], .. ofMonth[month], .. ofMonth[(month + 1) % Months]]))];
        for (var day = 0; day < leaps.Length; day++)
        {
            if (leaps[day] > limits[axis.Months[day]])
                column.Reject(day, RejectionReason.Spike);
        }
    }

    /// <summary>
    /// The smaller of the differences from the day before and the day after when both have the same sign, else 0; NaN
    /// when one of the three is not known.
    /// </summary>
    private static double LeapC(double[] values, int day)
    {
        if (day == 0 || day == values.Length - 1)
            return double.NaN;
        var (before, after) = (values[day] - values[day - 1], values[day] - values[day + 1]);
        return double.IsNaN(before + after) ? double.NaN
            : before > 0 == after > 0 ? Math.Min(Math.Abs(before), Math.Abs(after))
            : 0;
    }

    private static double LimitC(double[] leaps)
    {
        if (leaps.Length < MinDays)
            return UnknownSeasonC;
        Array.Sort(leaps);
        return Math.Max(LeastC, Times * leaps[(int)(Share * (leaps.Length - 1))]);
    }
}

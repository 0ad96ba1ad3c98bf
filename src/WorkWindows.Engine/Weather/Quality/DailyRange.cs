using NodaTime;

namespace WorkWindows.Engine.Weather.Quality;

/// <summary>Compares the two extremes of a day with each other and with those of the days beside it.</summary>
internal static class DailyRange
{
    /// <summary>
    /// A maximum that lies further above the warmest minimum of its day and the two beside it, or a minimum that lies
    /// further below the coldest maximum. Source: Durre et al. 2010, the lagged range check of GHCN-Daily, from memory.
    /// </summary>
    public const double LimitC = 40;

    public static void RejectCrossed(CheckedColumn min, CheckedColumn max)
    {
        var offset = Period.DaysBetween(min.First, max.First);
        for (var day = 0; day < min.Values.Length; day++)
        {
            if (!(min.Values[day] > At(max, day - offset)))
                continue;
            min.Reject(day, RejectionReason.MinimumAboveMaximum);
            max.Reject(day - offset, RejectionReason.MinimumAboveMaximum);
        }
    }

    public static void Check(CheckedColumn min, CheckedColumn max)
    {
        var offset = Period.DaysBetween(min.First, max.First);
        // Both are compared with what is left of the other before either loses a value.
        var tooLow = Days(min, day => Extreme(max, day - offset, Math.Min) - min.Values[day] > LimitC);
        var tooHigh = Days(max, day => max.Values[day] - Extreme(min, day + offset, Math.Max) > LimitC);
        tooLow.ForEach(day => min.Reject(day, RejectionReason.DailyRange));
        tooHigh.ForEach(day => max.Reject(day, RejectionReason.DailyRange));
    }

    private static List<int> Days(CheckedColumn column, Func<int, bool> isFar) =>
        [.. Enumerable.Range(0, column.Values.Length).Where(isFar)];

    /// <summary>Of three days; NaN, which compares as false, when one has no value.</summary>
    private static double Extreme(CheckedColumn column, int day, Func<double, double, double> extreme) =>
        extreme(extreme(At(column, day - 1), At(column, day)), At(column, day + 1));

    private static double At(CheckedColumn column, int day) =>
        day >= 0 && day < column.Values.Length ? column.Values[day] : double.NaN;
}

namespace WorkWindows.Engine.Weather.Quality;

/// <summary>
/// Finds the years in which a station's readings stand a day early or late, from the day-to-day changes at the stations
/// around: those of the same weather go together on the same day.
/// </summary>
/// <remarks>
/// Two stations only tell that they differ. So each year's lags are sought for all stations together: beginning with
/// none, the one that brings most agreement is taken, again and again. Source: docs/rules/weather-quality.md.
/// </remarks>
internal static class DayLags
{
    /// <summary>Stations further apart see fronts a day apart.</summary>
    public const double MaxDistanceM = 250_000;

    /// <summary>A station that fewer others can be compared with is left as it is.</summary>
    public const int MinOthers = 2;

    /// <summary>By how much a lag must raise the mean correlation with the others, 0 to 1.</summary>
    public const double Margin = 0.3;

    /// <summary>A year with fewer comparisons of two stations says too little.</summary>
    public const int MinDays = 200;

    private const int LongestLag = 1;

    /// <param name="values">For each station one value a day, NaN where there is none; all of the same days.</param>
    /// <param name="isNear">Whether two stations may be compared.</param>
    /// <param name="years">For each year the first day and the day after the last.</param>
    /// <returns>
    /// For each station and year how many days late its values stand: -1, 0 or 1. A year that cannot be told takes the
    /// lag of the year before it.
    /// </returns>
    public static sbyte[][] Find(
        double[][] values, Func<int, int, bool> isNear, IReadOnlyList<(int First, int End)> years)
    {
        var lags = values.Select(_ => new sbyte[years.Count]).ToArray();
        var changes = values.Select(Changes).ToArray();
        for (var year = 0; year < years.Count; year++)
        {
            var agreement = Agreement.Of(changes, isNear, years[year]);
            var found = agreement.BestLags();
            for (var station = 0; station < values.Length; station++)
            {
                lags[station][year] = agreement.Others(station) >= MinOthers ? found[station]
                    : year > 0 && years[year].End == changes[station].Length ? lags[station][year - 1]
                    : (sbyte)0;
            }
        }
        return lags;
    }

    private static double[] Changes(double[] values)
    {
        var changes = new double[values.Length];
        changes[0] = double.NaN;
        for (var day = 1; day < values.Length; day++)
            changes[day] = values[day] - values[day - 1];
        return changes;
    }

    /// <summary>How well the stations of one year go together at each lag between two of them.</summary>
    private sealed class Agreement(int count)
    {
        /// <summary>Correlations of a station with another by how much later the other stands, -2 to 2.</summary>
        private readonly double[]?[,] correlations = new double[]?[count, count];

        public static Agreement Of(double[][] changes, Func<int, int, bool> isNear, (int First, int End) year)
        {
            var agreement = new Agreement(changes.Length);
            for (var one = 0; one < changes.Length; one++)
            {
                for (var other = 0; other < one; other++)
                {
                    if (!isNear(one, other))
                        continue;
                    var byLag = new double[4 * LongestLag + 1];
                    for (var lag = -2 * LongestLag; lag <= 2 * LongestLag; lag++)
                        byLag[lag + 2 * LongestLag] = Correlation(changes[one], changes[other], year, lag);
                    if (byLag.Any(double.IsNaN))
                        continue;
                    agreement.correlations[one, other] = byLag;
                    agreement.correlations[other, one] = [.. byLag.Reverse()];
                }
            }
            return agreement;
        }

        public int Others(int station) =>
            Enumerable.Range(0, count).Count(other => correlations[station, other] is not null);

        public sbyte[] BestLags()
        {
            var lags = new sbyte[count];
            // Each step raises the agreement, and there are few: it ends.
            while (BestStep(lags) is { } step)
                lags[step.Station] = step.Lag;
            return lags;
        }

        private (int Station, sbyte Lag)? BestStep(sbyte[] lags)
        {
            (int Station, sbyte Lag)? best = null;
            var most = LeastGain;
            for (var station = 0; station < count; station++)
            {
                if (Others(station) < MinOthers)
                    continue;
                var now = Score(station, lags[station], lags);
                for (var lag = -LongestLag; lag <= LongestLag; lag++)
                {
                    var gain = Score(station, lag, lags) - now;
                    if (gain > most)
                        (best, most) = ((station, (sbyte)lag), gain);
                }
            }
            return best;
        }

        private double Score(int station, int lag, sbyte[] lags)
        {
            var (sum, others) = (0.0, 0);
            for (var other = 0; other < count; other++)
            {
                if (correlations[station, other] is not { } byLag)
                    continue;
                sum += byLag[lags[other] - lag + 2 * LongestLag];
                others++;
            }
            return sum / others - (lag == 0 ? 0 : Margin);
        }
    }

    /// <summary>A step that changes nothing must not be taken for one that raises the agreement.</summary>
    private const double LeastGain = 1e-9;

    private static double Correlation(double[] one, double[] other, (int First, int End) year, int lag)
    {
        var sums = new PairSums();
        var first = Math.Max(year.First, -lag);
        var end = Math.Min(year.End, other.Length - lag);
        for (var day = first; day < end; day++)
        {
            if (!double.IsNaN(one[day]) && !double.IsNaN(other[day + lag]))
                sums.Add(one[day], other[day + lag]);
        }
        return sums.Count < MinDays ? double.NaN : sums.Correlation;
    }
}

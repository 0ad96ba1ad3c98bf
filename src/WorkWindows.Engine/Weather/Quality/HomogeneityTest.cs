namespace WorkWindows.Engine.Weather.Quality;

/// <summary>
/// The standard normal homogeneity test: finds where the mean of a series jumps. Source: Alexandersson 1986, J.
/// Climatol. 6, 661-675; the formula is from memory.
/// </summary>
internal static class HomogeneityTest
{
    /// <summary>
    /// A statistic above this is a break. For independent values one series in twenty exceeds 9.2 with 100 values and
    /// about 10 with several hundred (from memory); four times as much, because months that follow each other are alike
    /// and a finding shall be rather right than early.
    /// </summary>
    public const double Limit = 40;

    /// <summary>As many values must lie on either side of a break: two years of months.</summary>
    public const int MinValues = 24;

    /// <summary>Splits a series at its strongest break, and the parts again, while there are any.</summary>
    /// <param name="values">In the order of time, without gaps.</param>
    /// <returns>
    /// Ascending, the index of the first value after each break and by how much the mean from there to the next break
    /// lies above that since the one before, in the unit of the values.
    /// </returns>
    public static IReadOnlyList<(int At, double Size)> Breaks(double[] values)
    {
        var found = new List<int>();
        Split(values, 0, values.Length, found);
        int[] edges = [0, .. found.Order(), values.Length];
        return
        [
            .. Enumerable.Range(1, found.Count).Select(i => (
                edges[i],
                values[edges[i]..edges[i + 1]].Average() - values[edges[i - 1]..edges[i]].Average())),
        ];
    }

    private static void Split(double[] values, int first, int end, List<int> found)
    {
        var count = end - first;
        if (count < 2 * MinValues)
            return;
        var part = values.AsSpan(first, count);
        double sum = 0, squares = 0;
        foreach (var value in part)
            sum += value;
        var mean = sum / count;
        foreach (var value in part)
            squares += (value - mean) * (value - mean);
        var (at, most, before) = (0, Limit, 0.0);
        for (var i = 1; i <= count - MinValues; i++)
        {
            before += part[i - 1] - mean;
            // The sums of deviations before and after are opposite: k z1^2 + (n - k) z2^2, with z in deviations.
            var statistic = before * before * (1.0 / i + 1.0 / (count - i)) / (squares / (count - 1));
            // A series that does not vary gives NaN, which compares as false.
            if (i >= MinValues && statistic > most)
                (at, most) = (first + i, statistic);
        }
        if (at == 0)
            return;
        found.Add(at);
        Split(values, first, at, found);
        Split(values, at, end, found);
    }
}

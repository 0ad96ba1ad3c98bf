namespace WorkWindows.Engine.Weather.Quality;

/// <summary>
/// Centre and spread that single wild values hardly move. Source: Lanzante 1996, Int. J. Climatol. 16, 1197-1226, as
/// used by Durre et al. 2010; the formulas are from memory.
/// </summary>
internal static class Biweight
{
    /// <summary>Values further from the median than this many median deviations have no weight.</summary>
    private const double Cut = 7.5;

    /// <param name="sorted">Ascending, at least one.</param>
    /// <returns>In the unit of the values; the spread is 0 when half of the values are equal.</returns>
    public static (double Mean, double Deviation) Of(ReadOnlySpan<double> sorted)
    {
        var median = Median(sorted);
        var deviations = new double[sorted.Length];
        for (var i = 0; i < deviations.Length; i++)
            deviations[i] = Math.Abs(sorted[i] - median);
        Array.Sort(deviations);
        var medianDeviation = Median(deviations);
        if (medianDeviation == 0)
            return (median, 0);
        double weights = 0, shift = 0, squares = 0, slopes = 0;
        foreach (var value in sorted)
        {
            var u = (value - median) / (Cut * medianDeviation);
            if (Math.Abs(u) >= 1)
                continue;
            var rest = 1 - u * u;
            weights += rest * rest;
            shift += (value - median) * rest * rest;
            squares += (value - median) * (value - median) * rest * rest * rest * rest;
            slopes += rest * (1 - 5 * u * u);
        }
        return (median + shift / weights, Math.Sqrt(sorted.Length * squares) / Math.Abs(slopes));
    }

    public static double Median(ReadOnlySpan<double> sorted) =>
        (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
}

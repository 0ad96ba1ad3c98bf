namespace WorkWindows.Engine.Climatology;

/// <summary>Quantiles of a few values, such as the dates of thirty springs.</summary>
public static class Quantile
{
    /// <summary>
    /// The quantile of type 8 of Hyndman and Fan 1996 (Am. Stat. 50:361), which does not depend on the distribution.
    /// </summary>
    /// <param name="values">At least one, in any order.</param>
    /// <param name="share">The share of values that lie below it, 0 to 1.</param>
    /// <returns>A value between the smallest and the largest.</returns>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The share is not 0 to 1.</exception>
    public static double Of(IEnumerable<double> values, double share)
    {
        if (share is not (>= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share from 0 to 1.");
        double[] sorted = [.. values.Order()];
        if (sorted.Length == 0)
            throw new ArgumentException("There is no value.", nameof(values));
        var position = sorted.Length * share + (share + 1) / 3;
        var below = (int)Math.Floor(position);
        return below < 1 ? sorted[0]
            : below >= sorted.Length ? sorted[^1]
            : sorted[below - 1] + (position - below) * (sorted[below] - sorted[below - 1]);
    }
}

namespace WorkWindows.Engine.Phenology;

/// <summary>
/// Fills the gaps of a year's temperatures as the Extended Spring Index does. Source: docs/rules/spring-index.md.
/// </summary>
public static class SpringGaps
{
    /// <summary>Days are looked at in blocks of this length from 1 January.</summary>
    public const int BlockDays = 30;

    /// <summary>A block with fewer values than this voids its year.</summary>
    public const int MinValues = 20;

    /// <summary>A block with more readings of exactly 0 °F than this, gaps written as zero, voids its year.</summary>
    public const int MaxZeros = 10;

    /// <summary>Gives each missing day the mean of its block.</summary>
    /// <param name="dailyF">Daily maxima or minima in °F from 1 January on, NaN for a day without.</param>
    /// <returns>
    /// <see cref="SpringIndex.Days"/> values without a gap, or null for a void year, as one is that ends before.
    /// </returns>
    public static double[]? Filled(ReadOnlySpan<double> dailyF)
    {
        if (dailyF.Length < SpringIndex.Days)
            return null;
        double[] filled = [.. dailyF[..SpringIndex.Days]];
        for (var first = 0; first < filled.Length; first += BlockDays)
        {
            var block = filled.AsSpan(first, BlockDays);
            var (sum, values, zeros) = (0.0, 0, 0);
            foreach (var value in block)
            {
                if (double.IsNaN(value))
                    continue;
                sum += value;
                values++;
                if (value == 0)
                    zeros++;
            }
            if (values < MinValues || zeros > MaxZeros)
                return null;
            block.Replace(double.NaN, sum / values);
        }
        return filled;
    }
}

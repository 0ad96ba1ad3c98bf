namespace WorkWindows.Engine.Ground;

/// <summary>The cold of a winter as sums of degree-days. Sources: docs/rules/frozen-ground.md.</summary>
/// <remarks>
/// Daily mean temperatures in °C, in order and without gaps; a day without a value is NaN and makes the sums NaN. One
/// °C-day is 1.8 °F-days.
/// </remarks>
public static class FreezingIndex
{
    /// <summary>Freezing degree-days of one day, °C: how far its mean lies below freezing, 0 above.</summary>
    public static double DegreeDaysC(double meanC) => Math.Max(0, -meanC);

    /// <summary>
    /// The seasonal index, °C-days: the running sum of daily means falls from its highest point in autumn to its lowest
    /// in spring, and this is how far. Thaws in between take away.
    /// </summary>
    /// <param name="dailyMeansC">
    /// A winter with its autumn and spring. The low point is looked for after the high one, so that a summer at the end
    /// does not count.
    /// </param>
    public static double SeasonalCDays(ReadOnlySpan<double> dailyMeansC)
    {
        var (sum, highest, deepest) = (0.0, 0.0, 0.0);
        foreach (var meanC in dailyMeansC)
        {
            sum += meanC;
            highest = Math.Max(highest, sum);
            deepest = Math.Max(deepest, highest - sum);
        }
        return deepest;
    }

    /// <summary>The annual index, °C-days: every day below freezing counts, and no thaw takes away.</summary>
    public static double AnnualCDays(ReadOnlySpan<double> dailyMeansC)
    {
        var sum = 0.0;
        foreach (var meanC in dailyMeansC)
            sum += DegreeDaysC(meanC);
        return sum;
    }
}

namespace WorkWindows.Engine.Phenology;

/// <summary>Sums of daily rates, at an amount of which something happens.</summary>
internal static class Forcing
{
    /// <summary>A rate between 0 and 1: half where the exponent is 0, more where it is below.</summary>
    public static double Sigmoid(double exponent) => 1 / (1 + Math.Exp(exponent));

    /// <summary>The first day on which the sum of rates reaches what is needed.</summary>
    /// <returns>Its index, or null when the days do not suffice or a day without a rate (NaN) comes first.</returns>
    public static int? ReachedAt(ReadOnlySpan<double> days, Func<double, double> rateOf, double needed)
    {
        var sum = 0.0;
        for (var day = 0; day < days.Length; day++)
        {
            sum += rateOf(days[day]);
            if (double.IsNaN(sum))
                return null;
            if (sum >= needed)
                return day;
        }
        return null;
    }
}

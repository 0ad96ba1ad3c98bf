namespace WorkWindows.Engine.Climatology;

/// <summary>Quantiles of a few values, such as the dates of thirty springs.</summary>
public static class Quantile
{
    // A rank that is whole on paper may be off by a bit in binary.
    private const double Tolerance = 1e-9;

    /// <param name="values">At least one, in any order.</param>
    /// <param name="share">The share of values that lie below it, 0 to 1.</param>
    /// <param name="type">Which definition.</param>
    /// <returns>A value between the smallest and the largest.</returns>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The share is not 0 to 1.</exception>
    public static double Of(
        IEnumerable<double> values, double share, QuantileType type = QuantileType.MedianUnbiased)
    {
        if (share is not (>= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share from 0 to 1.");
        double[] sorted = [.. values.Order()];
        if (sorted.Length == 0)
            throw new ArgumentException("There is no value.", nameof(values));

        var rank = sorted.Length * share + Shift(type, share);
        var below = (int)Math.Floor(rank + Tolerance);
        var between = Math.Max(0, rank - below);
        var weight = type switch
        {
            QuantileType.InverseOfDistribution => between > Tolerance ? 1 : 0,
            QuantileType.AveragedInverse => between > Tolerance ? 1 : 0.5,
            QuantileType.NearestEvenRank => between <= Tolerance && int.IsEvenInteger(below) ? 0 : 1,
            _ => between,
        };
        var (low, high) = (Ranked(below), Ranked(below + 1));
        // A rounded sum may lie a bit past the value that it aims at.
        return Math.Clamp(low + weight * (high - low), low, high);

        double Ranked(int number) => sorted[Math.Clamp(number, 1, sorted.Length) - 1];
    }

    private static double Shift(QuantileType type, double share) => type switch
    {
        QuantileType.InverseOfDistribution or QuantileType.AveragedInverse or QuantileType.LinearOfDistribution => 0,
        QuantileType.NearestEvenRank => -0.5,
        QuantileType.MiddleOfSteps => 0.5,
        QuantileType.Weibull => share,
        QuantileType.Linear => 1 - share,
        QuantileType.MedianUnbiased => (share + 1) / 3,
        QuantileType.NormalUnbiased => share / 4 + 3.0 / 8,
    };
}

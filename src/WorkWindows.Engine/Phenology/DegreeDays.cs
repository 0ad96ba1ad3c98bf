namespace WorkWindows.Engine.Phenology;

/// <summary>Heat above a base. Source: McMaster and Wilhelm 1997, doi:10.1016/S0168-1923(97)00027-0.</summary>
public static class DegreeDays
{
    /// <summary>
    /// The simple average, method 1: the mean of the day's minimum and maximum, held between base and upper limit,
    /// less the base. A model's requirement is valid only with the method that it was fitted with.
    /// </summary>
    /// <param name="min">The day's minimum temperature; all four in the same unit, °C or °F.</param>
    /// <param name="max">The day's maximum temperature.</param>
    /// <param name="lower">The base.</param>
    /// <param name="upper">The limit above which more heat counts no more.</param>
    /// <returns>Degree-days of the unit given, never negative; NaN when the minimum or the maximum is NaN.</returns>
    /// <exception cref="ArgumentException">The minimum is above the maximum, or the base above the limit.</exception>
    public static double SimpleAverage(double min, double max, double lower, double upper = double.PositiveInfinity)
    {
        if (min > max)
            throw new ArgumentException($"The minimum {min} is above the maximum {max}.", nameof(min));
        return Math.Clamp((min + max) / 2, lower, upper) - lower;
    }
}

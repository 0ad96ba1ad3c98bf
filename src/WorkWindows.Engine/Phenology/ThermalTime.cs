using NodaTime;

namespace WorkWindows.Engine.Phenology;

/// <summary>A thermal-time model: an event comes when the heat since a date reaches what it needs.</summary>
/// <param name="Start">The first day whose heat counts.</param>
/// <param name="BaseC">The daily mean above which heat counts, °C.</param>
/// <param name="RequiredDegreeDaysC">The heat needed, degree-days in °C.</param>
/// <remarks>Source: docs/rules/leaf-out.md.</remarks>
public sealed record ThermalTime(AnnualDate Start, double BaseC, double RequiredDegreeDaysC)
{
    /// <summary>The heat of one day, degree-days in °C; NaN when its mean is NaN.</summary>
    /// <param name="meanC">The day's mean temperature, °C.</param>
    public double HeatOf(double meanC) => Math.Max(0, meanC - BaseC);

    /// <summary>The day on which the sum of heat reaches what is needed.</summary>
    /// <param name="dailyMeansC">Daily mean temperatures from the start on, °C, NaN for a day without.</param>
    /// <returns>
    /// Its index, or null when the days do not suffice or when a day without a value comes first: a missing day is not
    /// a day without heat.
    /// </returns>
    public int? ReachedAt(ReadOnlySpan<double> dailyMeansC) =>
        Forcing.ReachedAt(dailyMeansC, HeatOf, RequiredDegreeDaysC);
}

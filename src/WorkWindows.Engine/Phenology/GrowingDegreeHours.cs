using static System.Math;

namespace WorkWindows.Engine.Phenology;

/// <summary>
/// Growing degree-hours after Anderson: heat that rises along a cosine from 4 to 25 °C and falls to nothing at 36 °C.
/// Source: docs/rules/degree-days.md.
/// </summary>
public static class GrowingDegreeHours
{
    private const double BaseC = 4;
    private const double OptimumC = 25;
    private const double CriticalC = 36;

    /// <summary>The sum over hours.</summary>
    /// <param name="hourlyC">Temperatures in °C; NaN for an hour without, which makes the sum NaN.</param>
    public static double Sum(ReadOnlySpan<double> hourlyC)
    {
        var sum = 0.0;
        foreach (var airC in hourlyC)
            sum += Of(airC);
        return sum;
    }

    private static double Of(double airC)
    {
        const double Span = OptimumC - BaseC;
        return airC switch
        {
            double.NaN => double.NaN,
            < BaseC or > CriticalC => 0,
            <= OptimumC => Span / 2 * (1 + Cos(PI + PI * (airC - BaseC) / Span)),
            _ => Span * (1 + Cos(PI / 2 + PI / 2 * (airC - OptimumC) / (CriticalC - OptimumC))),
        };
    }
}

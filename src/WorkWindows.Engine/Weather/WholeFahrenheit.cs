using UnitsNet;

namespace WorkWindows.Engine.Weather;

/// <summary>
/// Undoes the rounding of temperatures that were read in whole °F and are kept in tenths of °C, so that a limit in °F
/// is compared with what was read: 20 °F is kept as -6.7 °C, which is 19.94 °F.
/// </summary>
public static class WholeFahrenheit
{
    // Tenths of °C in binary are off by far less, and neighbouring whole °F lie more than five tenths of °C apart.
    private const double ToleranceC = 1e-6;

    /// <param name="tenthsC">A finite temperature in °C, rounded to a tenth.</param>
    /// <returns>
    /// The °C of the whole °F whose rounding the value is, equal to what a limit of as many °F converts to; the value
    /// itself when it is the rounding of none.
    /// </returns>
    /// <exception cref="ArgumentException">The value is not finite.</exception>
    public static double Restore(double tenthsC)
    {
        var readC = Temperature.FromDegreesFahrenheit(Math.Round(tenthsC * 1.8 + 32)).DegreesCelsius;
        return Math.Abs(Math.Round(readC, 1) - tenthsC) < ToleranceC ? readC : tenthsC;
    }
}

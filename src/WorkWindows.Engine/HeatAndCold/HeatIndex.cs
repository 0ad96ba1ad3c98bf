using static System.Math;

namespace WorkWindows.Engine.HeatAndCold;

/// <summary>How hot it feels in the shade: the heat index of the US National Weather Service, °F.</summary>
/// <remarks>
/// Two published variants differ by up to 2 °F. The engine uses <see cref="OfF"/>, the whole procedure with its
/// adjustments; the printed charts hold <see cref="RegressionF"/>. Source: docs/rules/heat-and-cold.md.
/// </remarks>
public static class HeatIndex
{
    // Below this average of simple value and temperature the regression does not hold.
    private const double RegressionFromF = 80;

    /// <summary>
    /// The whole procedure: the simple value averaged with the temperature while that is below 80 °F, otherwise the
    /// regression, adjusted in very dry and very humid air.
    /// </summary>
    /// <param name="tempF">Air temperature in the shade, °F.</param>
    /// <param name="relativeHumidityPercent">0 to 100.</param>
    /// <returns>NaN when either is NaN.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The humidity is not from 0 to 100.</exception>
    public static double OfF(double tempF, double relativeHumidityPercent)
    {
        if (relativeHumidityPercent is < 0 or > 100)
        {
            throw new ArgumentOutOfRangeException(
                nameof(relativeHumidityPercent), relativeHumidityPercent, "Not a relative humidity.");
        }
        var averageF = (SimpleF(tempF, relativeHumidityPercent) + tempF) / 2;
        return averageF < RegressionFromF
            ? averageF
            : RegressionF(tempF, relativeHumidityPercent) + AdjustmentF(tempF, relativeHumidityPercent);
    }

    /// <summary>The simple value alone, which the procedure averages with the temperature once more.</summary>
    /// <inheritdoc cref="OfF" path="/param"/>
    public static double SimpleF(double tempF, double relativeHumidityPercent) =>
        0.5 * (tempF + 61 + 1.2 * (tempF - 68) + 0.094 * relativeHumidityPercent);

    /// <summary>The regression alone, which printed charts from 80 °F and 40 % on are made of.</summary>
    /// <inheritdoc cref="OfF" path="/param"/>
    public static double RegressionF(double tempF, double relativeHumidityPercent)
    {
        var (t, r) = (tempF, relativeHumidityPercent);
        return -42.379 + 2.04901523 * t + 10.14333127 * r - 0.22475541 * t * r - 0.00683783 * t * t
            - 0.05481717 * r * r + 0.00122874 * t * t * r + 0.00085282 * t * r * r - 0.00000199 * t * t * r * r;
    }

    private static double AdjustmentF(double tempF, double relativeHumidityPercent)
    {
        if (relativeHumidityPercent < 13 && tempF is >= 80 and <= 112)
            return -(13 - relativeHumidityPercent) / 4 * Sqrt((17 - Abs(tempF - 95)) / 17);
        if (relativeHumidityPercent > 85 && tempF is >= 80 and <= 87)
            return (relativeHumidityPercent - 85) / 10 * ((87 - tempF) / 5);
        return 0;
    }
}

namespace WorkWindows.Engine.HeatAndCold;

/// <summary>How cold wind makes bare skin: the wind chill of the US National Weather Service, 2001, °F.</summary>
/// <remarks>Source: docs/rules/heat-and-cold.md.</remarks>
public static class WindChill
{
    /// <summary>Above this temperature there is no wind chill.</summary>
    public const double MaxTempF = 50;

    /// <summary>At or below this wind there is none either.</summary>
    public const double CalmMph = 3;

    /// <param name="tempF">Air temperature, °F.</param>
    /// <param name="windMph">Sustained wind as the weather service reports it, mph.</param>
    /// <returns>
    /// The air temperature where the formula does not hold; NaN when a value that matters is NaN.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The wind is negative.</exception>
    public static double OfF(double tempF, double windMph)
    {
        if (windMph < 0)
            throw new ArgumentOutOfRangeException(nameof(windMph), windMph, "A wind speed below nothing.");
        if (tempF > MaxTempF || windMph <= CalmMph)
            return tempF;
        var wind = Math.Pow(windMph, 0.16);
        return 35.74 + 0.6215 * tempF - 35.75 * wind + 0.4275 * tempF * wind;
    }
}

namespace WorkWindows.Engine.HeatAndCold;

/// <summary>
/// Wet bulb globe temperature, estimated, and the limits that go with it. All formulas here are from memory and stand
/// to be checked against their documents. Source: docs/rules/heat-and-cold.md.
/// </summary>
public static class WetBulbGlobe
{
    /// <summary>
    /// An estimate from temperature and humidity alone, °C (Australian Bureau of Meteorology): it knows neither sun nor
    /// wind.
    /// </summary>
    /// <param name="airC">Air temperature in the shade, °C.</param>
    /// <param name="relativeHumidityPercent">0 to 100.</param>
    /// <returns>NaN when either is NaN.</returns>
    public static double ApproximateC(double airC, double relativeHumidityPercent)
    {
        var vapourHPa = relativeHumidityPercent / 100 * 6.105 * Math.Exp(17.27 * airC / (237.7 + airC));
        return 0.567 * airC + 0.393 * vapourHPa + 3.94;
    }

    /// <summary>
    /// NIOSH 2016-106: the alert limit, °C, for people who are not used to heat.
    /// </summary>
    /// <param name="metabolicW">The heat that the work sets free in the body, W.</param>
    public static double AlertLimitC(double metabolicW) => 59.9 - 14.1 * Math.Log10(metabolicW);

    /// <summary>NIOSH 2016-106: the exposure limit, °C, for people who are used to heat.</summary>
    /// <inheritdoc cref="AlertLimitC" path="/param"/>
    public static double ExposureLimitC(double metabolicW) => 56.7 - 11.5 * Math.Log10(metabolicW);
}

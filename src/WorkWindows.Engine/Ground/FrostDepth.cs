using static System.Math;

namespace WorkWindows.Engine.Ground;

/// <summary>
/// How deep frost goes. Indices are those of the ground's surface: the air's times a factor, about 1 under snow, 0.7 on
/// bare soil and 0.5 under turf (from memory). Sources: docs/rules/frozen-ground.md.
/// </summary>
public static class FrostDepth
{
    private const double FreezingF = 32;
    private const double SecondsPerDay = 86400;

    /// <summary>
    /// Stefan's formula, m. It leaves out the heat of the soil, so that it goes too deep in temperate places.
    /// </summary>
    /// <param name="freezingIndexCDays">Freezing index of the surface, °C-days.</param>
    /// <param name="soil">The soil.</param>
    /// <returns>NaN when the index is NaN.</returns>
    public static double StefanM(double freezingIndexCDays, GroundSoil soil) =>
        Sqrt(2 * SecondsPerDay * soil.ConductivityWPerMK * freezingIndexCDays / soil.LatentHeatJPerM3);

    /// <summary>Stefan's formula in the units of the US manuals, ft.</summary>
    /// <param name="freezingIndexFDays">Freezing index of the surface, °F-days.</param>
    /// <param name="soil">The soil.</param>
    public static double StefanFt(double freezingIndexFDays, GroundSoilUs soil) =>
        Sqrt(48 * soil.ConductivityBtuPerHourFtF * freezingIndexFDays / soil.LatentHeatBtuPerFt3);

    /// <summary>The modified Berggren formula, ft: Stefan's depth times one for the heat of the soil.</summary>
    /// <param name="freezingIndexFDays">Freezing index of the surface, °F-days.</param>
    /// <param name="soil">The soil.</param>
    /// <param name="meanAnnualF">Mean annual temperature, °F.</param>
    /// <param name="seasonDays">Length of the freezing season, days.</param>
    public static double ModifiedBerggrenFt(
        double freezingIndexFDays, GroundSoilUs soil, double meanAnnualF, double seasonDays) =>
        BerggrenCoefficient(freezingIndexFDays, soil, meanAnnualF, seasonDays) * StefanFt(freezingIndexFDays, soil);

    /// <summary>
    /// The coefficient of the modified Berggren formula, 0 to 1, in the closed form of Aldrich and Paynter 1953, which
    /// serves cold regions best; 0.707 of it is a low bound in milder places.
    /// </summary>
    /// <inheritdoc cref="ModifiedBerggrenFt" path="/param"/>
    public static double BerggrenCoefficient(
        double freezingIndexFDays, GroundSoilUs soil, double meanAnnualF, double seasonDays)
    {
        var frostF = freezingIndexFDays / seasonDays;
        var thermalRatio = Abs(meanAnnualF - FreezingF) / frostF;
        var fusion = soil.HeatCapacityBtuPerFt3F * frostF / soil.LatentHeatBtuPerFt3;
        return 1 / Sqrt(1 + fusion * (thermalRatio + 0.5));
    }
}

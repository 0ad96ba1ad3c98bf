namespace WorkWindows.Engine.Ground;

/// <summary>What of a soil decides how deep frost goes into it.</summary>
/// <param name="ConductivityWPerMK">Mean thermal conductivity of the frozen and the thawed soil, W/(m K).</param>
/// <param name="LatentHeatJPerM3">Heat that freezing a volume of it sets free, J/m³.</param>
public sealed record GroundSoil(double ConductivityWPerMK, double LatentHeatJPerM3)
{
    private const double LatentHeatOfWaterJPerKg = 3.34e5;

    /// <summary>A soil by its density and water.</summary>
    /// <param name="conductivityWPerMK">Mean thermal conductivity, W/(m K).</param>
    /// <param name="dryDensityKgPerM3">Dry mass of a volume, kg/m³.</param>
    /// <param name="waterPercent">Water, % of the dry mass.</param>
    public static GroundSoil Of(double conductivityWPerMK, double dryDensityKgPerM3, double waterPercent) =>
        new(conductivityWPerMK, LatentHeatOfWaterJPerKg * dryDensityKgPerM3 * waterPercent / 100);
}

/// <summary>The same in the units of the US manuals.</summary>
/// <param name="ConductivityBtuPerHourFtF">Mean thermal conductivity, BTU/(h ft °F).</param>
/// <param name="DryWeightLbPerFt3">Dry unit weight, lb/ft³.</param>
/// <param name="WaterPercent">Water, % of the dry weight.</param>
/// <remarks>Source: UFC 3-130-06, 2004, as coded in an open module; docs/rules/frozen-ground.md.</remarks>
public sealed record GroundSoilUs(double ConductivityBtuPerHourFtF, double DryWeightLbPerFt3, double WaterPercent)
{
    /// <summary>Heat that freezing a cubic foot sets free, BTU.</summary>
    public double LatentHeatBtuPerFt3 => 144 * DryWeightLbPerFt3 * WaterPercent / 100;

    /// <summary>Heat that warms a cubic foot by 1 °F, the mean of frozen and thawed, BTU.</summary>
    public double HeatCapacityBtuPerFt3F => DryWeightLbPerFt3 * (0.17 + 0.75 * WaterPercent / 100);
}

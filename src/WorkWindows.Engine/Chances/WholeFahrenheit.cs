using UnitsNet;

namespace WorkWindows.Engine.Chances;

/// <summary>The temperatures that a station which reads whole °F can report.</summary>
internal static class WholeFahrenheit
{
    private const int LowestF = -100, HighestF = 150;
    private const double DegFPerDegC = 1.8, FreezingF = 32;

    // Equal to the last bit to what limits of as many °F convert to.
    private static readonly double[] InC =
        [.. Enumerable.Range(LowestF, HighestF - LowestF + 1).Select(f => Temperature.FromDegreesFahrenheit(f).DegreesCelsius)];

    /// <summary>The nearest of them, °C.</summary>
    public static double NearestC(double tempC) =>
        InC[(int)Math.Round(Math.Clamp(tempC * DegFPerDegC + FreezingF, LowestF, HighestF)) - LowestF];
}

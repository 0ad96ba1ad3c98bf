using System.Collections.Immutable;
using UnitsNet;

namespace WorkWindows.Engine.Weather;

/// <summary>
/// Undoes the rounding of what United States stations read in whole °F, whole mph, hundredths of an inch of water and
/// whole inches of snow and keep in tenths of °C, m/s, mm and cm, so that a limit is compared with what was read: 20 °F
/// is kept as -6.7 °C, which is 19.94 °F, and 32 mph as 14.3 m/s, which is 31.99 mph.
/// </summary>
public static class AsRead
{
    private const double Tenth = 0.1;
    private const double HundredthsOfAnInch = 100;

    /// <summary>Colder and hotter than any place on earth.</summary>
    private const int LowestF = -148, HighestF = 212;

    private const double LowestC = -100, HighestC = 100;

    private static readonly ImmutableArray<double> WholeFahrenheit =
        [.. Enumerable.Range(LowestF, HighestF - LowestF + 1).Select(
            degF => Temperature.FromDegreesFahrenheit(degF).DegreesCelsius)];

    // Tenths in binary are off by far less, and no two steps of what is read are as near to one tenth.
    private const double Tolerance = 1e-6;

    /// <param name="element">What was read.</param>
    /// <param name="kept">A finite value in the unit of the element, rounded to a tenth.</param>
    /// <returns>
    /// The reading whose rounding the value is, equal to what a limit of as many °F, mph or inches converts to; the
    /// value itself when it is the rounding of none, or of an element that is kept as it was read.
    /// </returns>
    /// <exception cref="ArgumentException">The value is not finite.</exception>
    public static double Restore(DailyElement element, double kept)
    {
        var read = element switch
        {
            DailyElement.MinTemperatureC or DailyElement.MaxTemperatureC => WholeFahrenheitC(kept),
            DailyElement.WindMps or DailyElement.GustMps => Speed
                .FromMilesPerHour(Math.Round(Speed.FromMetersPerSecond(kept).MilesPerHour)).MetersPerSecond,
            DailyElement.PrecipitationMm => Length
                .FromInches(Math.Round(Length.FromMillimeters(kept).Inches * HundredthsOfAnInch) / HundredthsOfAnInch)
                .Millimeters,
            DailyElement.SnowDepthCm => Length
                .FromInches(Math.Round(Length.FromCentimeters(kept).Inches)).Centimeters,
            DailyElement.MinHumidityPercent or DailyElement.ThunderChancePercent => kept,
        };
        return Math.Abs(read - kept) <= Tenth / 2 + Tolerance ? read : kept;
    }

    /// <summary>The nearest whole °F in °C, looked up: records are long, and temperatures are most of them.</summary>
    internal static double WholeFahrenheitC(double keptC)
    {
        var degF = (int)Math.Round(Math.Clamp(keptC, LowestC, HighestC) * 1.8 + 32);
        return WholeFahrenheit[degF - LowestF];
    }
}

using static System.Math;

namespace WorkWindows.Engine.Daylight;

/// <summary>Where the sun stands at an instant, by the low-accuracy equations of Meeus as NOAA uses them.</summary>
/// <param name="MeanLongitudeDeg">Geometric mean longitude, degrees, 0 up to 360.</param>
/// <param name="EquationOfCenterDeg">True minus mean longitude, degrees.</param>
/// <param name="Eccentricity">Eccentricity of the earth's orbit.</param>
/// <param name="ApparentLongitudeDeg">Longitude with nutation and aberration, degrees, 0 up to 360.</param>
/// <param name="ObliquityDeg">Tilt of the earth's axis, corrected for nutation, degrees.</param>
/// <param name="DeclinationDeg">Degrees north of the equator.</param>
/// <param name="EquationOfTimeMin">Sundial time minus clock time, minutes.</param>
/// <remarks>Source: docs/rules/daylight.md.</remarks>
public readonly record struct SunPosition(
    double MeanLongitudeDeg,
    double EquationOfCenterDeg,
    double Eccentricity,
    double ApparentLongitudeDeg,
    double ObliquityDeg,
    double DeclinationDeg,
    double EquationOfTimeMin)
{
    internal const double RadiansPerDegree = PI / 180;

    /// <param name="julianCenturies">Centuries of 36,525 days since 1 January 2000, 12:00 UTC.</param>
    public static SunPosition At(double julianCenturies)
    {
        var t = julianCenturies;
        var meanLongitude = Turn(280.46646 + t * (36000.76983 + 0.0003032 * t));
        var anomaly = RadiansPerDegree * (357.52911 + t * (35999.05029 - 0.0001537 * t));
        var eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t);
        var center = Sin(anomaly) * (1.914602 - t * (0.004817 + 0.000014 * t))
            + Sin(2 * anomaly) * (0.019993 - 0.000101 * t) + 0.000289 * Sin(3 * anomaly);

        var node = RadiansPerDegree * (125.04 - 1934.136 * t);
        var apparent = Turn(meanLongitude + center - 0.00569 - 0.00478 * Sin(node));
        var meanObliquity = 23 + (26 + (21.448 - t * (46.815 + t * (0.00059 - 0.001813 * t))) / 60) / 60;
        var obliquity = meanObliquity + 0.00256 * Cos(node);
        var declination = Asin(Sin(RadiansPerDegree * obliquity) * Sin(RadiansPerDegree * apparent));

        var y = Pow(Tan(RadiansPerDegree * obliquity / 2), 2);
        var (sin2L, cos2L) = SinCos(2 * RadiansPerDegree * meanLongitude);
        var equationOfTime = y * sin2L - 2 * eccentricity * Sin(anomaly)
            + 4 * eccentricity * y * Sin(anomaly) * cos2L
            - y * y * sin2L * cos2L
            - 1.25 * eccentricity * eccentricity * Sin(2 * anomaly);
        return new(meanLongitude, center, eccentricity, apparent, obliquity,
            declination / RadiansPerDegree, 4 * equationOfTime / RadiansPerDegree);
    }

    private static double Turn(double degrees) => degrees - 360 * Floor(degrees / 360);
}

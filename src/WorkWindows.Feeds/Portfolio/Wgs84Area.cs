using NetTopologySuite.Geometries;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>The area of a boundary on the WGS 84 ellipsoid.</summary>
public static class Wgs84Area
{
    private const double SemiMajorAxisM = 6378137;
    private const double Flattening = 1 / 298.257223563;
    private const double DegreesToRadians = Math.PI / 180;

    private static readonly double Eccentricity = Math.Sqrt(Flattening * (2 - Flattening));

    /// <summary>Half the square of the semi-minor axis, m².</summary>
    private static readonly double Scale = Math.Pow(SemiMajorAxisM * (1 - Flattening), 2) / 2;

    /// <summary>Gauss–Legendre nodes on 0 to 1 and their weights.</summary>
    private static readonly (double At, double Weight)[] Nodes =
    [
        (0.5, 64 / 225.0),
        (0.5 - 0.538469310105683 / 2, 0.478628670499366 / 2),
        (0.5 + 0.538469310105683 / 2, 0.478628670499366 / 2),
        (0.5 - 0.906179845938664 / 2, 0.236926885056189 / 2),
        (0.5 + 0.906179845938664 / 2, 0.236926885056189 / 2),
    ];

    /// <summary>
    /// Adds up the strips between the edges and the equator, each known in closed form. An edge is straight in
    /// longitude and latitude, as RFC 7946 (3.1.1) has it; a geodesic edge of 1 km at 45° would differ by 13 m².
    /// </summary>
    /// <param name="area">Polygons with longitude and latitude in degrees; holes are taken off.</param>
    /// <returns>Square metres; 0 for points and lines.</returns>
    /// <remarks>Source: J. P. Snyder, Map Projections: A Working Manual, USGS 1987, equation 3-12.</remarks>
    public static double SquareMetres(Geometry area)
    {
        ArgumentNullException.ThrowIfNull(area);
        return area switch
        {
            Polygon polygon => Ring(polygon.ExteriorRing) - polygon.InteriorRings.Sum(Ring),
            GeometryCollection parts => parts.Sum(SquareMetres),
            _ => 0,
        };
    }

    private static double Ring(LineString ring)
    {
        var positions = ring.Coordinates;
        var sum = 0.0;
        for (var i = 1; i < positions.Length; i++)
            sum += Strip(positions[i - 1], positions[i]);
        return Math.Abs(sum);
    }

    private static double Strip(Coordinate from, Coordinate to)
    {
        var meanFromEquator = 0.0;
        foreach (var (at, weight) in Nodes)
            meanFromEquator += weight * FromEquator(from.Y + at * (to.Y - from.Y));
        return (to.X - from.X) * DegreesToRadians * meanFromEquator;
    }

    /// <summary>The area between the equator and a parallel for one radian of longitude, m².</summary>
    private static double FromEquator(double latitudeDeg)
    {
        var sine = Math.Sin(latitudeDeg * DegreesToRadians);
        var scaled = Eccentricity * sine;
        return Scale * (sine / (1 - scaled * scaled) + Math.Atanh(scaled) / Eccentricity);
    }
}

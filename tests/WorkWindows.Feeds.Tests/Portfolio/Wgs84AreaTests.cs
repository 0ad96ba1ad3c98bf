using NetTopologySuite.IO;
using WorkWindows.Feeds.Portfolio;

namespace WorkWindows.Feeds.Tests.Portfolio;

public class Wgs84AreaTests
{
    /// <summary>
    /// The first three are bounded by meridians and the equator, which are straight both as geodesics and in
    /// longitude and latitude. The others were computed with the JavaScript edition of GeographicLib (2.x, Planimeter)
    /// after cutting each straight edge into 20,000 geodesic pieces.
    /// </summary>
    [Theory]
    // GeographicLib, tests, Planimeter3: an eighth of the ellipsoid is 63758202715511 m².
    [InlineData("POLYGON ((0 0, 90 0, 90 90, 0 90, 0 0))", 63758202715511.0, 1e-13)]
    // The whole ellipsoid: a sphere of radius 6371007.1809 m (NIMA TR8350.2, table 3.3; from memory).
    [InlineData("POLYGON ((-180 -90, 180 -90, 180 90, -180 90, -180 -90))", 5.1006562172e14, 1e-10)]
    [InlineData("POLYGON ((-90 45, -89 45, -89 46, -90 46, -90 45))", 8686494956.67, 1e-11)]
    [InlineData("POLYGON ((-90 46, -89.3 46.05, -89.1 46.6, -90.1 46.7, -90 46))", 4555586363.03, 1e-10)]
    [InlineData("POLYGON ((-77.9 40.8, -77.89 40.8, -77.888 40.806, -77.899 40.807, -77.9 40.8))", 646594.849, 1e-8)]
    public void SquareMetres_AgreesWithPublishedAndIndependentAreas(
        string shape, double areaM2, double relativeError) =>
        Assert.InRange(SquareMetres(shape) / areaM2, 1 - relativeError, 1 + relativeError);

    /// <summary>
    /// GeographicLib, tests, Planimeter2, gives 24619419146 m² for geodesic edges, here 157 km long. Cut as above, the
    /// straight ones enclose 24617535971 m².
    /// </summary>
    [Fact]
    public void SquareMetres_TakesEdgesStraightInLongitudeAndLatitude()
    {
        var areaM2 = SquareMetres("POLYGON ((0 -1, 1 0, 0 1, -1 0, 0 -1))");
        Assert.InRange(areaM2 / 24617535971, 1 - 1e-9, 1 + 1e-9);
        Assert.InRange(areaM2 / 24619419146, 1 - 8e-5, 1);
    }

    [Fact]
    public void SquareMetres_TakesHolesOff_AndAddsParts()
    {
        const string Outer = "(-90 45, -89 45, -89 46, -90 46, -90 45)";
        const string Inner = "(-89.6 45.4, -89.4 45.4, -89.4 45.6, -89.6 45.6, -89.6 45.4)";
        const string Apart = "(-88 45, -87 45, -87 46, -88 46, -88 45)";
        var outer = SquareMetres($"POLYGON ({Outer})");
        var inner = SquareMetres($"POLYGON ({Inner})");
        Assert.Equal(outer - inner, SquareMetres($"POLYGON ({Outer}, {Inner})"), 1e-3);
        Assert.Equal(2 * outer, SquareMetres($"MULTIPOLYGON (({Outer}), ({Apart}))"), 1e-3);
    }

    [Theory]
    [InlineData("POLYGON ((-77.9 40.8, -77.899 40.807, -77.888 40.806, -77.89 40.8, -77.9 40.8))", 646594.849)]
    [InlineData("POINT (-77.9 40.8)", 0)]
    public void SquareMetres_IsNotNegative_AndZeroForAPoint(string shape, double areaM2) =>
        Assert.Equal(areaM2, SquareMetres(shape), 0.01);

    private static double SquareMetres(string shape) => Wgs84Area.SquareMetres(new WKTReader().Read(shape));
}

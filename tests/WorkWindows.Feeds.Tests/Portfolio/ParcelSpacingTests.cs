using System.Globalization;
using Shouldly;
using WorkWindows.Feeds.Portfolio;

namespace WorkWindows.Feeds.Tests.Portfolio;

public sealed class ParcelSpacingTests
{
    /// <summary>
    /// At 45° a minute of latitude is 1852.2 m and one of longitude 1314.2 m (111,132 m and 78,847 m a degree; Snyder, Map
    /// Projections: A Working Manual, USGS 1987, table 3, from memory).
    /// </summary>
    [Theory]
    [InlineData(0.001, 0, 111.13)]
    [InlineData(0, 0.001, 78.85)]
    public void CloserThan_MeasuresAcrossDegrees(double north, double east, double metres)
    {
        ParcelExtent[] parcels = [Point(45, -85), Point(45 + north, -85 + east)];

        ParcelSpacing.CloserThan(parcels, metres * 1.01).ShouldBe([(0, 1)]);
        ParcelSpacing.CloserThan(parcels, metres * 0.99).ShouldBeEmpty();
    }

    [Fact]
    public void CloserThan_MeasuresFromBoundaryToBoundary()
    {
        // Two squares of 0.002° with a gap of 0.001° between them, and a third that touches the second.
        ParcelExtent[] parcels = [Square(45, -85), Square(45, -84.997), Square(45, -84.995)];

        ParcelSpacing.CloserThan(parcels, 80).ShouldBe([(0, 1), (1, 2)]);
        ParcelSpacing.CloserThan(parcels, 1).ShouldBe([(1, 2)]);
        ParcelSpacing.CloserThan(parcels, 300).ShouldBe([(0, 1), (0, 2), (1, 2)]);
    }

    private static ParcelExtent Point(double latitude, double longitude) => new(latitude, longitude, null);

    private static ParcelExtent Square(double latitude, double longitude)
    {
        var (west, south, east, north) = (Text(longitude), Text(latitude), Text(longitude + 0.002), Text(latitude + 0.002));
        return new(latitude, longitude, $$"""
            {"type":"Polygon","coordinates":[[[{{west}},{{south}}],[{{east}},{{south}}],[{{east}},{{north}}],[{{west}},{{north}}],[{{west}},{{south}}]]]}
            """);

        static string Text(double degrees) => degrees.ToString(CultureInfo.InvariantCulture);
    }
}

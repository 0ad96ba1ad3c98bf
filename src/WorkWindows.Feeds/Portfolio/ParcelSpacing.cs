using System.Text.Json;
using NetTopologySuite.Geometries;
using NetTopologySuite.IO.Converters;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>Where a parcel lies, for telling how far it is from another.</summary>
/// <param name="LatitudeDeg">Degrees north of a point inside it.</param>
/// <param name="LongitudeDeg">Degrees east.</param>
/// <param name="BoundaryGeoJson">Its boundary in WGS 84, or null where only the point is known.</param>
public sealed record ParcelExtent(double LatitudeDeg, double LongitudeDeg, string? BoundaryGeoJson);

/// <summary>Finds parcels that lie close to each other.</summary>
public static class ParcelSpacing
{
    private const double MetresPerDegree = 111_320;
    private const double DegreesToRadians = Math.PI / 180;
    private static readonly GeometryFactory Wgs84 = new(new PrecisionModel(), 4326);
    private static readonly JsonSerializerOptions GeoJson = new() { Converters = { new GeoJsonConverterFactory(Wgs84) } };

    /// <summary>The pairs of parcels whose boundaries come closer than a distance.</summary>
    /// <remarks>
    /// On a plane that touches the middle between the two, degrees of longitude shortened by the cosine of the latitude:
    /// within a kilometre the error is below half of a hundredth.
    /// </remarks>
    /// <param name="parcels">In any order.</param>
    /// <param name="metres">The distance, metres; at exactly that distance two are not close.</param>
    /// <returns>Pairs of places in the list, the lower first.</returns>
    public static IReadOnlyList<(int First, int Second)> CloserThan(IReadOnlyList<ParcelExtent> parcels, double metres)
    {
        ArgumentNullException.ThrowIfNull(parcels);
        var shapes = parcels.Select(Shape).ToArray();
        var pairs = new List<(int, int)>();
        for (var first = 0; first < shapes.Length; first++)
        {
            for (var second = first + 1; second < shapes.Length; second++)
            {
                if (IsCloser(shapes[first], shapes[second], metres))
                    pairs.Add((first, second));
            }
        }
        return pairs;
    }

    private static bool IsCloser(Geometry first, Geometry second, double metres)
    {
        var (a, b) = (first.EnvelopeInternal, second.EnvelopeInternal);
        var latitude = (a.Centre.Y + b.Centre.Y) / 2;
        var shortened = Math.Cos(latitude * DegreesToRadians);
        // Boxes that lie apart spare the exact distance.
        var apartDeg = metres / MetresPerDegree;
        if (b.MinY - a.MaxY >= apartDeg || a.MinY - b.MaxY >= apartDeg
            || (b.MinX - a.MaxX) * shortened >= apartDeg || (a.MinX - b.MaxX) * shortened >= apartDeg)
        {
            return false;
        }
        return OnPlane(first, shortened).Distance(OnPlane(second, shortened)) < metres;
    }

    private static Geometry OnPlane(Geometry shape, double shortened)
    {
        var plane = shape.Copy();
        plane.Apply(new ToMetres(shortened));
        plane.GeometryChanged();
        return plane;
    }

    private static Geometry Shape(ParcelExtent parcel) => parcel.BoundaryGeoJson is { } boundary
        ? JsonSerializer.Deserialize<Geometry>(boundary, GeoJson)!
        : Wgs84.CreatePoint(new Coordinate(parcel.LongitudeDeg, parcel.LatitudeDeg));

    private sealed class ToMetres(double shortened) : ICoordinateFilter
    {
        public void Filter(Coordinate coord)
        {
            coord.X *= MetresPerDegree * shortened;
            coord.Y *= MetresPerDegree;
        }
    }
}

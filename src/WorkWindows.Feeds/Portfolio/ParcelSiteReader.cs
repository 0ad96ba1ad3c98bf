using System.Text.Json;
using NetTopologySuite.Geometries;
using NetTopologySuite.IO.Converters;
using NetTopologySuite.Operation.Valid;
using WorkWindows.Feeds.TimeZones;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>Reads and checks the geometry of a feature.</summary>
internal static class ParcelSiteReader
{
    private const string Field = "geometry";

    private const string Shapes = "a Polygon, MultiPolygon or Point in WGS 84, longitude before latitude; each ring of "
        + "at least four positions, the last like the first";

    private static readonly GeometryFactory Wgs84 = new(new PrecisionModel(), 4326);

    private static readonly JsonSerializerOptions GeoJson = new()
    {
        Converters = { new GeoJsonConverterFactory(Wgs84) },
    };

    public static string Write(MultiPolygon boundary) => JsonSerializer.Serialize<Geometry>(boundary, GeoJson);

    /// <returns>The site and the IANA zone of its position, or null with a fault.</returns>
    public static (ParcelSite Site, string TimeZone)? Read(JsonElement feature, FeatureFields fields)
    {
        if (Parse(feature, fields) is not { } geometry || !IsOnGlobe(geometry, fields) || !IsSimple(geometry, fields))
            return null;
        var point = geometry as Point ?? geometry.InteriorPoint;
        if (UsTimeZone.Find(point.Y, point.X) is not { } zone)
        {
            var there = TimeZoneLookup.Find(point.Y, point.X);
            var where = there.StartsWith("Etc/", StringComparison.Ordinal) ? "in the sea" : $"in the zone {there}";
            fields.Fault(Field, $"{point.X} {point.Y}", $"a place in the United States; this one lies {where}");
            return null;
        }
        var boundary = geometry switch
        {
            Polygon polygon => Wgs84.CreateMultiPolygon([polygon]),
            MultiPolygon several => several,
            _ => null,
        };
        double? areaM2 = boundary is null ? null : Wgs84Area.SquareMetres(boundary);
        return (new(boundary, point.Y, point.X, areaM2), zone);
    }

    private static Geometry? Parse(JsonElement feature, FeatureFields fields)
    {
        var element = feature.Member(Field);
        var type = element?.Member("type")?.ToString();
        if (element is null || type is not ("Polygon" or "MultiPolygon" or "Point"))
        {
            fields.Fault(Field, type ?? "absent", Shapes);
            return null;
        }
        try
        {
            if (element.Value.Deserialize<Geometry>(GeoJson) is { IsEmpty: false } geometry)
                return geometry;
            fields.Fault(Field, "no positions", Shapes);
        }
        catch (Exception fault) when (fault is JsonException or ArgumentException)
        {
            fields.Fault(Field, fault.Message, Shapes);
        }
        return null;
    }

    private static bool IsOnGlobe(Geometry geometry, FeatureFields fields)
    {
        foreach (var position in geometry.Coordinates)
        {
            // The United States lie between 15 and 75° north and between 65 and 180° west.
            var isSwapped = position is { X: > 15 and < 75, Y: < -65 and >= -180 };
            if (!isSwapped && position is { X: >= -180 and <= 180, Y: >= -90 and <= 90 })
                continue;
            fields.Fault(Field, $"{position.X} {position.Y}", isSwapped
                ? "longitude before latitude: these look swapped"
                : "longitude from -180 to 180, then latitude from -90 to 90");
            return false;
        }
        return true;
    }

    private static bool IsSimple(Geometry geometry, FeatureFields fields)
    {
        if (new IsValidOp(geometry).ValidationError is not { } error)
            return true;
        if (error.ErrorType is TopologyValidationErrors.TooFewPoints or TopologyValidationErrors.RingNotClosed)
            fields.Fault(Field, error.Message, Shapes);
        else
        {
            // Seven decimals are a centimetre; more would show how the crossing was computed.
            fields.Fault(Field, $"{error.Coordinate.X:0.#######} {error.Coordinate.Y:0.#######}",
                $"a boundary that neither crosses nor overlaps itself ({error.Message} at this place)");
        }
        return false;
    }
}

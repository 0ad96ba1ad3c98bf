using System.Text;
using System.Text.Json.Nodes;
using WorkWindows.Feeds.Portfolio;

namespace WorkWindows.Feeds.Tests.Portfolio;

/// <summary>Writes parcel files around a feature that is right.</summary>
internal static class ParcelText
{
    private const string Square =
        "[[[-77.90, 40.80], [-77.89, 40.80], [-77.89, 40.81], [-77.90, 40.81], [-77.90, 40.80]]]";

    public static ParcelImport Read(params IEnumerable<JsonObject> features) => ReadText(Collection(features));

    /// <summary>The first feature is on line 3, and each on a line of its own.</summary>
    public static string Collection(params IEnumerable<JsonObject> features)
    {
        var lines = string.Join(",\n", features.Select(feature => feature.ToJsonString()));
        return $"{{\"type\": \"FeatureCollection\",\n\"features\": [\n{lines}\n]}}";
    }

    public static ParcelImport ReadText(string text) => ParcelFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));

    public static JsonObject Feature(string parcel = "north") => JsonNode.Parse($$"""
        {
          "type": "Feature",
          "geometry": {"type": "Polygon", "coordinates": {{Square}}},
          "properties": {"property": "fox-hollow", "parcel": "{{parcel}}", "countyFips": "42027", "state": "PA"}
        }
        """)!.AsObject();

    public static JsonObject With(this JsonObject feature, string property, string json)
    {
        feature["properties"]![property] = JsonNode.Parse(json);
        return feature;
    }

    public static JsonObject Without(this JsonObject feature, string property)
    {
        feature["properties"]!.AsObject().Remove(property);
        return feature;
    }

    public static JsonObject At(this JsonObject feature, string geometry)
    {
        feature["geometry"] = JsonNode.Parse(geometry);
        return feature;
    }
}

using System.Text.Json;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>A feature and the line on which it begins.</summary>
internal readonly record struct LocatedFeature(int Line, JsonElement Feature);

/// <summary>Takes a FeatureCollection apart, keeping the line of each feature.</summary>
internal static class GeoJsonFeatures
{
    private const string Collection =
        "a GeoJSON FeatureCollection: {\"type\": \"FeatureCollection\", \"features\": […]}";

    public static List<LocatedFeature> Read(ReadOnlySpan<byte> json, FaultCollector faults)
    {
        try
        {
            CheckText(json);
            return ReadCollection(json, faults);
        }
        catch (JsonException fault)
        {
            faults.Add((int)(fault.LineNumber ?? 0) + 1, "file", json.IsEmpty ? "empty" : fault.Message, Collection);
        }
        catch (InvalidOperationException fault)
        {
            // Half of a surrogate pair, written as an escape.
            faults.Add(null, "file", fault.Message, "text without broken \\u escapes");
        }
        return [];
    }

    private static void CheckText(ReadOnlySpan<byte> json)
    {
        var reader = new Utf8JsonReader(json);
        while (reader.Read())
        {
            if (reader.TokenType is JsonTokenType.String or JsonTokenType.PropertyName && reader.ValueIsEscaped)
                reader.GetString();
        }
    }

    private static List<LocatedFeature> ReadCollection(ReadOnlySpan<byte> json, FaultCollector faults)
    {
        var features = new List<LocatedFeature>();
        var type = "absent";
        var reader = new Utf8JsonReader(json);
        reader.Read();
        if (reader.TokenType != JsonTokenType.StartObject)
        {
            faults.Add(1, "file", $"{reader.TokenType}", Collection);
            return features;
        }
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var name = reader.GetString();
            reader.Read();
            if (name == "features" && reader.TokenType == JsonTokenType.StartArray)
                ReadFeatures(json, ref reader, features);
            else if (name == "type")
                type = JsonElement.ParseValue(ref reader).ToString();
            else if (name == "crs")
                CheckReferenceSystem(JsonElement.ParseValue(ref reader), faults);
            else
                reader.Skip();
        }
        if (type != "FeatureCollection")
            faults.Add(1, "type", type, Collection);
        else if (features.Count == 0)
            faults.Add(1, "features", "none", "at least one feature");
        return features;
    }

    private static void ReadFeatures(ReadOnlySpan<byte> json, ref Utf8JsonReader reader, List<LocatedFeature> features)
    {
        var (line, counted) = (1, 0);
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            var start = (int)reader.TokenStartIndex;
            line += json[counted..start].Count((byte)'\n');
            counted = start;
            features.Add(new(line, JsonElement.ParseValue(ref reader)));
        }
    }

    /// <summary>Older files may name another reference system, in which the numbers mean other places.</summary>
    private static void CheckReferenceSystem(JsonElement crs, FaultCollector faults)
    {
        var name = crs.Member("properties")?.Member("name")?.ToString() ?? crs.GetRawText();
        if (crs.ValueKind != JsonValueKind.Null && !name.EndsWith("CRS84", StringComparison.Ordinal)
            && !name.EndsWith(":4326", StringComparison.Ordinal))
            faults.Add(null, "crs", name,
                "WGS 84 longitude and latitude (urn:ogc:def:crs:OGC:1.3:CRS84), or no crs at all");
    }
}

using System.Globalization;
using System.Text;
using System.Text.Json;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Maps;

/// <summary>
/// A boundary as people type it: a corner a line, degrees north and then degrees east. An empty line begins another part, a
/// line 'hole' a part that is left out of the one before. One corner alone is a point.
/// </summary>
public static class Corners
{
    private const string Hole = "hole";
    private const string Form = "degrees north, a comma, degrees east, as in 42.61250, -84.40310";
    private const int FewestCorners = 3;

    /// <param name="boundary">A GeoJSON MultiPolygon; null where only the point is known.</param>
    /// <param name="latitude">Degrees north of the point.</param>
    /// <param name="longitude">Degrees east of it.</param>
    public static string Written(string? boundary, double latitude, double longitude)
    {
        if (boundary is null)
            return Line(latitude, longitude);
        var text = new StringBuilder();
        foreach (var part in ParcelShape.Parts(boundary))
        {
            for (var ring = 0; ring < part.Count; ring++)
            {
                if (ring > 0)
                    text.Append(Hole).Append('\n');
                else if (text.Length > 0)
                    text.Append('\n');
                // The last position of a ring is its first.
                foreach (var (north, east) in part[ring].SkipLast(1))
                    text.Append(Line(north, east)).Append('\n');
            }
        }
        return text.ToString().TrimEnd('\n');

        // A centimetre has seven decimals.
        static string Line(double north, double east) => string.Create(CultureInfo.InvariantCulture, $"{north:0.0######}, {east:0.0######}");
    }

    /// <param name="text">What was typed.</param>
    /// <param name="faults">What is wrong with it, by line.</param>
    /// <returns>A GeoJSON Point or MultiPolygon; null where there is a fault.</returns>
    public static JsonElement? Read(string? text, FieldFaults faults)
    {
        var parts = new List<List<List<(double Latitude, double Longitude)>>>();
        var isBegun = false;
        foreach (var (number, line) in (text ?? "").Split('\n').Index().Select(one => (one.Index + 1, one.Item.Trim())))
        {
            if (line.Length == 0)
                isBegun = false;
            else if (line.Equals(Hole, StringComparison.OrdinalIgnoreCase) && parts.Count > 0)
            {
                parts[^1].Add([]);
                isBegun = true;
            }
            else if (Corner(line) is { } corner)
            {
                if (!isBegun)
                    parts.Add([[]]);
                isBegun = true;
                parts[^1][^1].Add(corner);
            }
            else
            {
                faults.Add("corners", line, $"{Form} (line {number})");
                return null;
            }
        }
        if (parts is [[[var only]]])
            return JsonSerializer.SerializeToElement(new { type = "Point", coordinates = new[] { only.Longitude, only.Latitude } });
        if (parts.Count == 0 || parts.Exists(part => part.Exists(ring => ring.Count < FewestCorners)))
        {
            faults.Add("corners", $"{parts.Sum(part => part.Sum(ring => ring.Count))}", "one corner for a point, or three and more for each part and hole");
            return null;
        }
        return JsonSerializer.SerializeToElement(new
        {
            type = "MultiPolygon",
            coordinates = parts.Select(part => part.Select(ring => ring.Append(ring[0]).Select(
                corner => new[] { corner.Longitude, corner.Latitude }))),
        });
    }

    private static (double Latitude, double Longitude)? Corner(string line) =>
        line.Split(',', StringSplitOptions.TrimEntries) is [var north, var east]
        && double.TryParse(north, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var latitude)
        && double.TryParse(east, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var longitude)
            ? (latitude, longitude)
            : null;
}

using System.Globalization;
using System.Text;
using System.Text.Json;

namespace WorkWindows.Service.Maps;

/// <summary>The rings of a boundary: places on the globe, and how they are drawn.</summary>
public static class ParcelShape
{
    /// <param name="boundary">A GeoJSON MultiPolygon.</param>
    /// <returns>For each part its rings, the outer one first; degrees north and east.</returns>
    public static IReadOnlyList<IReadOnlyList<IReadOnlyList<(double Latitude, double Longitude)>>> Parts(string boundary)
    {
        using var json = JsonDocument.Parse(boundary);
        return
        [
            .. json.RootElement.GetProperty("coordinates").EnumerateArray().Select(part =>
                (IReadOnlyList<IReadOnlyList<(double, double)>>)
                [
                    .. part.EnumerateArray().Select(ring => (IReadOnlyList<(double, double)>)
                    [
                        .. ring.EnumerateArray().Select(position => (position[1].GetDouble(), position[0].GetDouble())),
                    ]),
                ]),
        ];
    }

    /// <returns>The corners of its outer rings, else its point; degrees north and east.</returns>
    public static IEnumerable<(double Latitude, double Longitude)> Corners(MappedParcel parcel) => parcel.Boundary is { } boundary
        ? Parts(boundary).SelectMany(part => part[0])
        : [(parcel.Latitude, parcel.Longitude)];

    /// <returns>The data of an SVG path; positions that fall together are left out.</returns>
    public static string Path(MapFrame frame, string boundary)
    {
        var data = new StringBuilder();
        foreach (var ring in Parts(boundary).SelectMany(part => part))
        {
            var last = "";
            foreach (var (latitude, longitude) in ring)
            {
                var (x, y) = frame.Of(latitude, longitude);
                var at = string.Create(CultureInfo.InvariantCulture, $"{x:0.#} {y:0.#}");
                if (at != last)
                    data.Append(last.Length == 0 ? 'M' : 'L').Append(at);
                last = at;
            }
            data.Append('Z');
        }
        return data.ToString();
    }
}

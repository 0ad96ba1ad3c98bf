using System.Globalization;

namespace WorkWindows.Service.Maps;

/// <summary>A place on the drawing, from its upper left corner, in the drawing's own units.</summary>
public readonly record struct MapPoint(double X, double Y);

/// <summary>A square picture of the ground.</summary>
/// <param name="Address">Where it is fetched from.</param>
/// <param name="At">Its upper left corner.</param>
public sealed record MapTile(string Address, MapPoint At);

/// <summary>A line of one latitude or longitude.</summary>
/// <param name="IsLatitude">Which of both: drawn across, or from top to bottom.</param>
/// <param name="At">How far from the top, or from the left.</param>
/// <param name="Says">Its degrees.</param>
public sealed record MapLine(bool IsLatitude, double At, string Says);

/// <summary>
/// What a map shows: a middle and a step of enlargement, each twice as large as the one before. Drawn in the projection that
/// map tiles have (EPSG:3857, WGS 84 / Pseudo-Mercator), so that tiles can lie under it.
/// </summary>
/// <param name="Latitude">Degrees north of the middle.</param>
/// <param name="Longitude">Degrees east of the middle.</param>
/// <param name="Zoom">From 3, a continent, to 19, a few trees.</param>
public sealed record MapFrame(double Latitude, double Longitude, int Zoom)
{
    public const double Width = 960, Height = 600;
    public const int TileSize = 256, LeastZoom = 3, MostZoom = 19;

    /// <summary>Semi-major axis of WGS 84, m.</summary>
    private const double EarthRadiusM = 6_378_137;

    /// <summary>As far north as square tiles of the whole world reach, degrees.</summary>
    private const double HighestLatitude = 85.05;

    /// <summary>Room left free around what is shown.</summary>
    private const double Margin = 40;

    private const int OnePlaceZoom = 15;

    /// <summary>Lines of one kind on a map, and degrees from one to the next.</summary>
    private const double MostLines = 6;

    private static readonly double[] LineSteps =
        [0.0005, 0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20];

    /// <summary>The whole of the United States without Alaska and the islands.</summary>
    public static readonly MapFrame Country = new(39.5, -98, 4);

    public bool MayEnlarge => Zoom < MostZoom;

    public bool MayReduce => Zoom > LeastZoom;

    private MapPoint Corner
    {
        get
        {
            var (x, y) = World(Latitude, Longitude, Zoom);
            return new(x - Width / 2, y - Height / 2);
        }
    }

    /// <summary>The largest frame that holds all places.</summary>
    /// <param name="places">Degrees north and east; none shows the country.</param>
    public static MapFrame Around(IReadOnlyCollection<(double Latitude, double Longitude)> places)
    {
        if (places.Count == 0)
            return Country;
        var (south, north) = (places.Min(place => place.Latitude), places.Max(place => place.Latitude));
        var (west, east) = (places.Min(place => place.Longitude), places.Max(place => place.Longitude));
        var zoom = LeastZoom;
        while (zoom < MostZoom - 1 && Fits(zoom + 1))
            zoom++;
        if (places.Count == 1)
            zoom = Math.Min(zoom, OnePlaceZoom);
        // The middle of the drawing, which is not that of the degrees.
        var ((left, top), (right, bottom)) = (World(north, west, zoom), World(south, east, zoom));
        var (latitude, longitude) = OnGlobe((left + right) / 2, (top + bottom) / 2, zoom);
        return new(latitude, longitude, zoom);

        bool Fits(int step)
        {
            var ((x1, y1), (x2, y2)) = (World(north, west, step), World(south, east, step));
            return x2 - x1 <= Width - 2 * Margin && y2 - y1 <= Height - 2 * Margin;
        }
    }

    /// <param name="text">Degrees north, degrees east and the step of enlargement, between commas.</param>
    /// <returns>Null where it is nothing of the kind.</returns>
    public static MapFrame? Parse(string? text)
    {
        if (text?.Split(',') is [var north, var east, var step]
            && double.TryParse(north, NumberStyles.Float, CultureInfo.InvariantCulture, out var latitude)
            && double.TryParse(east, NumberStyles.Float, CultureInfo.InvariantCulture, out var longitude)
            && int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out var zoom)
            && Math.Abs(latitude) <= HighestLatitude && Math.Abs(longitude) <= 180 && zoom is >= LeastZoom and <= MostZoom)
        {
            return new(latitude, longitude, zoom);
        }
        return null;
    }

    /// <summary>As <see cref="Parse"/> reads it.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Latitude:0.######},{Longitude:0.######},{Zoom}");

    /// <summary>Around the same middle, some steps larger or smaller.</summary>
    public MapFrame Enlarged(int steps) => this with { Zoom = Math.Clamp(Zoom + steps, LeastZoom, MostZoom) };

    /// <summary>Moved by parts of its width and height, to the east and to the south.</summary>
    public MapFrame Moved(double east, double south)
    {
        var (x, y) = World(Latitude, Longitude, Zoom);
        var (latitude, longitude) = OnGlobe(x + east * Width, y + south * Height, Zoom);
        return this with
        {
            Latitude = Math.Clamp(latitude, -HighestLatitude, HighestLatitude),
            Longitude = Math.IEEERemainder(longitude, 360),
        };
    }

    /// <returns>Where a place is drawn.</returns>
    public MapPoint Of(double latitude, double longitude)
    {
        var (x, y) = World(latitude, longitude, Zoom);
        return new(x - Corner.X, y - Corner.Y);
    }

    public bool Shows(MapPoint point) => point is { X: >= 0 and <= Width, Y: >= 0 and <= Height };

    /// <summary>Metres on the ground of one unit of the drawing, in its middle.</summary>
    public double MetresPerUnit =>
        2 * Math.PI * EarthRadiusM * Math.Cos(double.DegreesToRadians(Latitude)) / (TileSize * Math.Pow(2, Zoom));

    /// <summary>Lines of whole degrees or parts of them, so that a map without tiles still says where it is.</summary>
    public IEnumerable<MapLine> Lines()
    {
        var corner = Corner;
        var (north, west) = OnGlobe(corner.X, corner.Y, Zoom);
        var (south, east) = OnGlobe(corner.X + Width, corner.Y + Height, Zoom);
        var step = LineSteps.First(degrees => degrees == LineSteps[^1] || (east - west) / degrees <= MostLines);
        for (var count = Math.Ceiling(west / step); count * step < east; count++)
            yield return new(false, Of(Latitude, count * step).X, Says(count * step, 'E', 'W'));
        for (var count = Math.Ceiling(south / step); count * step < north; count++)
            yield return new(true, Of(count * step, Longitude).Y, Says(count * step, 'N', 'S'));

        static string Says(double degrees, char above, char below) => string.Create(
            CultureInfo.InvariantCulture, $"{Math.Abs(degrees):0.####}° {(degrees < 0 ? below : above)}");
    }

    /// <param name="template">An address with {z}, {x} and {y} in it.</param>
    /// <returns>The tiles that lie under the drawing.</returns>
    public IEnumerable<MapTile> Tiles(string template)
    {
        var count = 1 << Zoom;
        var corner = Corner;
        for (var row = (int)Math.Floor(corner.Y / TileSize); row * TileSize < corner.Y + Height; row++)
        {
            for (var column = (int)Math.Floor(corner.X / TileSize); column * TileSize < corner.X + Width; column++)
            {
                if (row < 0 || row >= count)
                    continue;
                var around = (column % count + count) % count;
                yield return new(
                    template.Replace("{z}", $"{Zoom}", StringComparison.Ordinal).Replace("{x}", $"{around}", StringComparison.Ordinal)
                        .Replace("{y}", $"{row}", StringComparison.Ordinal),
                    new(column * TileSize - corner.X, row * TileSize - corner.Y));
            }
        }
    }

    /// <summary>The place in a drawing of the whole world, which is 256 units wide at step 0.</summary>
    internal static (double X, double Y) World(double latitude, double longitude, int zoom)
    {
        var size = TileSize * Math.Pow(2, zoom);
        var sine = Math.Sin(double.DegreesToRadians(Math.Clamp(latitude, -HighestLatitude, HighestLatitude)));
        return (size * (longitude + 180) / 360, size * (0.5 - Math.Log((1 + sine) / (1 - sine)) / (4 * Math.PI)));
    }

    internal static (double Latitude, double Longitude) OnGlobe(double x, double y, int zoom)
    {
        var size = TileSize * Math.Pow(2, zoom);
        return (
            double.RadiansToDegrees(Math.Atan(Math.Sinh(Math.PI * (1 - 2 * y / size)))),
            x / size * 360 - 180);
    }
}

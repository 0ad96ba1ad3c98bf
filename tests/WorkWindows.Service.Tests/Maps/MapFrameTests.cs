using CsCheck;
using Shouldly;
using WorkWindows.Service.Maps;

namespace WorkWindows.Service.Tests.Maps;

public sealed class MapFrameTests
{
    /// <summary>Half the way around the equator on the sphere of the projection, m: π × 6,378,137.</summary>
    private const double HalfWorldM = 20_037_508.342789244;

    private static readonly Gen<MapFrame> Frames =
        Gen.Select(Gen.Double[-80, 80], Gen.Double[-179, 179], Gen.Int[MapFrame.LeastZoom, MapFrame.MostZoom], (north, east, zoom) => new MapFrame(north, east, zoom));

    /// <summary>
    /// The worked example of IOGP Guidance Note 7-2 for Popular Visualisation Pseudo Mercator (EPSG method 1024), values from
    /// memory: 24°22'54.433"N, 100°20'00.000"W is 11,169,055.58 m west and 2,800,000.00 m north.
    /// </summary>
    [Fact]
    public void World_IsThatOfPseudoMercator()
    {
        var (x, y) = MapFrame.World(24 + 22 / 60.0 + 54.433 / 3600, -(100 + 20 / 60.0), 0);

        ((x / 256 * 2 - 1) * HalfWorldM).ShouldBe(-11_169_055.58, 0.01);
        ((1 - y / 256 * 2) * HalfWorldM).ShouldBe(2_800_000.00, 0.01);
    }

    /// <summary>Resolutions of the WebMercatorQuad in OGC 17-083r2, Two Dimensional Tile Matrix Set, annex D.1, m; from memory.</summary>
    [Theory]
    [InlineData(3, 19567.8792409999)]
    [InlineData(10, 152.874056570411)]
    [InlineData(15, 4.77731426782516)]
    public void MetresPerUnit_AreThoseOfTheTileMatrixSet_AtTheEquator(int zoom, double metres) =>
        new MapFrame(0, 0, zoom).MetresPerUnit.ShouldBe(metres, metres * 1e-9);

    [Fact]
    public void OnGlobe_TurnsWorldBack() => Frames.Sample(frame =>
    {
        var (x, y) = MapFrame.World(frame.Latitude, frame.Longitude, frame.Zoom);
        var (latitude, longitude) = MapFrame.OnGlobe(x, y, frame.Zoom);
        return Math.Abs(latitude - frame.Latitude) < 1e-9 && Math.Abs(longitude - frame.Longitude) < 1e-9;
    });

    [Fact]
    public void Parse_ReadsWhatAFrameWrites() => Frames.Sample(frame =>
        MapFrame.Parse($"{frame}") is { } read && read.Zoom == frame.Zoom && Math.Abs(read.Latitude - frame.Latitude) < 1e-6
            && Math.Abs(read.Longitude - frame.Longitude) < 1e-6);

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("42.6,-84.4")]
    [InlineData("north,-84.4,12")]
    [InlineData("42.6,-184.4,12")]
    [InlineData("42.6,-84.4,40")]
    [InlineData("NaN,-84.4,12")]
    public void Parse_TakesNothingElse(string? text) => MapFrame.Parse(text).ShouldBeNull();

    [Fact]
    public void Around_ShowsEveryPlace_AsLargeAsItCan() =>
        Gen.Select(Gen.Double[25, 49], Gen.Double[-124, -67]).Array[2, 20].Sample(places =>
        {
            var frame = MapFrame.Around(places);
            var larger = frame.Enlarged(2);
            return places.All(place => frame.Shows(frame.Of(place.Item1, place.Item2)))
                && places.Any(place => !larger.Shows(larger.Of(place.Item1, place.Item2)));
        });

    [Fact]
    public void Tiles_CoverTheDrawing_AndAreTheOnesOfTheirPlaces() => Frames.Sample(frame =>
    {
        var tiles = frame.Tiles("{z}/{x}/{y}").ToList();
        var (x, y) = MapFrame.World(frame.Latitude, frame.Longitude, frame.Zoom);
        var middle = $"{frame.Zoom}/{(int)(x / MapFrame.TileSize)}/{(int)(y / MapFrame.TileSize)}";
        return tiles.Exists(tile => tile.Address == middle && Holds(tile.At.X, MapFrame.Width) && Holds(tile.At.Y, MapFrame.Height))
            && tiles.Select(tile => tile.At).Distinct().Count() == tiles.Count;

        static bool Holds(double at, double size) => at <= size / 2 + 1e-6 && at + MapFrame.TileSize >= size / 2 - 1e-6;
    });

    [Fact]
    public void Lines_LieWhereTheirDegreesAre() => Frames.Sample(frame => frame.Lines().All(line =>
        line.At >= -1e-6 && line.At <= (line.IsLatitude ? MapFrame.Height : MapFrame.Width) + 1e-6));
}

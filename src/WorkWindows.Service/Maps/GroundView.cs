using UnitsNet.Units;

namespace WorkWindows.Service.Maps;

/// <summary>What lies under a map: tiles where some are set, and a bar of a round length.</summary>
/// <param name="Frame">What is shown.</param>
/// <param name="Options">The tiles.</param>
/// <param name="Areas">The reader's unit of area, and with it of length.</param>
public sealed record GroundView(MapFrame Frame, MapOptions Options, AreaUnit Areas)
{
    /// <summary>The longest bar, in units of the drawing.</summary>
    private const double LongestBar = 160;

    private const double MetresPerFoot = 0.3048;
    private const double MetresPerMile = 1609.344;
    private const double MetresPerKilometre = 1000;

    private static readonly (double Metres, string Says)[] BarsInFeet =
    [
        .. new[] { 20, 50, 100, 200, 500, 1000, 2000 }.Select(feet => (feet * MetresPerFoot, $"{feet} ft")),
        .. new[] { 1, 2, 5, 10, 20, 50, 100, 200, 500 }.Select(miles => (miles * MetresPerMile, $"{miles} mi")),
    ];

    private static readonly (double Metres, string Says)[] BarsInMetres =
    [
        .. new[] { 5, 10, 20, 50, 100, 200, 500 }.Select(metres => ((double)metres, $"{metres} m")),
        .. new[] { 1, 2, 5, 10, 20, 50, 100, 200, 500 }.Select(km => (km * MetresPerKilometre, $"{km} km")),
    ];

    public IEnumerable<MapTile> Tiles => Options.Tiles is { } template ? Frame.Tiles(template) : [];

    /// <summary>The bar's length in units of the drawing, and on the ground.</summary>
    public (double Width, string Says) Bar
    {
        get
        {
            var bars = Areas == AreaUnit.Hectare ? BarsInMetres : BarsInFeet;
            var (metres, says) = bars.Last(bar => bar == bars[0] || bar.Metres / Frame.MetresPerUnit <= LongestBar);
            return (metres / Frame.MetresPerUnit, says);
        }
    }
}

namespace WorkWindows.Service.Maps;

/// <summary>What lies under a map: tiles where some are set, and a bar of a round length.</summary>
public sealed record GroundView(MapFrame Frame, MapOptions Options)
{
    /// <summary>The longest bar, in units of the drawing.</summary>
    private const double LongestBar = 160;

    private const double MetresPerFoot = 0.3048;
    private const int FeetPerMile = 5280;

    private static readonly (double Feet, string Says)[] Bars =
    [
        .. new[] { 20, 50, 100, 200, 500, 1000, 2000 }.Select(feet => ((double)feet, $"{feet} ft")),
        .. new[] { 1, 2, 5, 10, 20, 50, 100, 200, 500 }.Select(miles => ((double)miles * FeetPerMile, $"{miles} mi")),
    ];

    public IEnumerable<MapTile> Tiles => Options.Tiles is { } template ? Frame.Tiles(template) : [];

    /// <summary>The bar's length in units of the drawing, and on the ground.</summary>
    public (double Width, string Says) Bar
    {
        get
        {
            var (feet, says) = Bars.Last(bar => bar == Bars[0] || bar.Feet * MetresPerFoot / Frame.MetresPerUnit <= LongestBar);
            return (feet * MetresPerFoot / Frame.MetresPerUnit, says);
        }
    }
}

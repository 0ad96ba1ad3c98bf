using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Maps;

/// <summary>A boundary that is being drawn.</summary>
/// <param name="Corners">As typed so far.</param>
/// <param name="Ground">What is shown and lies under it.</param>
/// <param name="Around">Other parcels of the property.</param>
public sealed record DrawingView(string Corners, GroundView Ground, IReadOnlyList<MappedParcel> Around)
{
    public MapFrame Frame => Ground.Frame;

    /// <summary>The shape as the data of an SVG path; null while it is none.</summary>
    public string? Path => Maps.Corners.Read(Corners, new FieldFaults()) is { } geometry
        && geometry.GetProperty("type").ValueEquals("MultiPolygon")
            ? ParcelShape.Path(Frame, geometry.GetRawText())
            : null;
}

/// <summary>What a form that draws a boundary sends.</summary>
public sealed class DrawingEntry
{
    public string? Corners { get; set; }

    /// <summary>What is shown, as a frame writes itself.</summary>
    public string? At { get; set; }

    /// <summary>How the map is to be moved; null to save.</summary>
    public string? Move { get; set; }

    /// <summary>The frame after the move that was asked for.</summary>
    public MapFrame Moved(MapFrame usual)
    {
        var frame = MapFrame.Parse(At) ?? usual;
        return Move switch
        {
            "closer" => frame.Enlarged(1),
            "farther" => frame.Enlarged(-1),
            "north" => frame.Moved(0, -0.5),
            "south" => frame.Moved(0, 0.5),
            "west" => frame.Moved(-0.5, 0),
            "east" => frame.Moved(0.5, 0),
            _ => frame,
        };
    }
}

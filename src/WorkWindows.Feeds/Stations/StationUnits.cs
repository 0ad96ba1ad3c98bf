namespace WorkWindows.Feeds.Stations;

/// <summary>The units of a file or reply that does not name them, as NOAA's services call them.</summary>
public enum StationUnits
{
    /// <summary>As GHCN-Daily keeps them, when none are asked for: tenths of °C, m/s and mm; snow in mm.</summary>
    Tenths,

    /// <summary>°C, m/s, mm; snow in mm.</summary>
    Metric,

    /// <summary>°F, mph, inches.</summary>
    Standard,
}

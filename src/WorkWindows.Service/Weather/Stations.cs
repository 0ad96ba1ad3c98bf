namespace WorkWindows.Service.Weather;

/// <summary>What a station's identifier tells.</summary>
public static class Stations
{
    /// <summary>
    /// Stations of the United States read temperatures in whole °F (NOAA, GHCN-Daily documentation); the first two
    /// characters of the identifier are the country.
    /// </summary>
    public static bool ReadWholeFahrenheit(string ghcnId) => ghcnId.StartsWith("US", StringComparison.Ordinal);
}

namespace WorkWindows.Feeds.Stations;

/// <summary>
/// The GHCN-Daily elements that are used. AWND is left out on purpose: it is the mean wind of a day, and a limit for
/// felling is about the strongest.
/// </summary>
internal enum GhcnElement
{
    /// <summary>Minimum temperature, tenths °C.</summary>
    Tmin,

    /// <summary>Maximum temperature, tenths °C.</summary>
    Tmax,

    /// <summary>Fastest two-minute wind, tenths m/s.</summary>
    Wsf2,

    /// <summary>Fastest five-second wind, tenths m/s.</summary>
    Wsf5,

    /// <summary>Peak gust, tenths m/s.</summary>
    Wsfg,
}

internal static class GhcnElements
{
    public const int Missing = -9999;

    public static GhcnElement? Find(ReadOnlySpan<byte> code) => code switch
    {
        _ when code.SequenceEqual("TMIN"u8) => GhcnElement.Tmin,
        _ when code.SequenceEqual("TMAX"u8) => GhcnElement.Tmax,
        _ when code.SequenceEqual("WSF2"u8) => GhcnElement.Wsf2,
        _ when code.SequenceEqual("WSF5"u8) => GhcnElement.Wsf5,
        _ when code.SequenceEqual("WSFG"u8) => GhcnElement.Wsfg,
        _ => null,
    };

    public static bool IsCode(ReadOnlySpan<byte> code) =>
        code.Length == 4 && code.IndexOfAnyExcept(StationIds.UpperCaseAndDigits) < 0;

    /// <summary>
    /// The bounds are a little beyond the world records (−89.2 °C, 56.7 °C, 113.2 m/s), so that what lies outside
    /// is in another unit and not weather.
    /// </summary>
    public static (int Lowest, int Highest, string Accepted) Bounds(this GhcnElement element) => element switch
    {
        GhcnElement.Tmin or GhcnElement.Tmax => (-900, 600, "tenths of °C from -900 to 600, or -9999 for missing"),
        GhcnElement.Wsf2 or GhcnElement.Wsf5 or GhcnElement.Wsfg =>
            (0, 1200, "tenths of m/s from 0 to 1200, or -9999 for missing"),
    };
}

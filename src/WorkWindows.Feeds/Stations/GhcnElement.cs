using WorkWindows.Engine.Weather;

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

    /// <summary>
    /// Rain and melted snow of one day, tenths mm. Totals of several days (MDPR) are not read: nobody knows on which of
    /// them it rained.
    /// </summary>
    Prcp,

    /// <summary>Depth of the snow on the ground, mm.</summary>
    Snwd,

    /// <summary>Lowest relative humidity of the day, %.</summary>
    Rhmn,
}

internal static class GhcnElements
{
    public const int Missing = -9999;

    /// <summary>
    /// The measurement flag of a zero that nobody wrote down ("missing presumed zero"): it counts as missing.
    /// </summary>
    public const char PresumedZero = 'P';

    public static GhcnElement? Find(ReadOnlySpan<byte> code) => code switch
    {
        _ when code.SequenceEqual("TMIN"u8) => GhcnElement.Tmin,
        _ when code.SequenceEqual("TMAX"u8) => GhcnElement.Tmax,
        _ when code.SequenceEqual("WSF2"u8) => GhcnElement.Wsf2,
        _ when code.SequenceEqual("WSF5"u8) => GhcnElement.Wsf5,
        _ when code.SequenceEqual("WSFG"u8) => GhcnElement.Wsfg,
        _ when code.SequenceEqual("PRCP"u8) => GhcnElement.Prcp,
        _ when code.SequenceEqual("SNWD"u8) => GhcnElement.Snwd,
        _ when code.SequenceEqual("RHMN"u8) => GhcnElement.Rhmn,
        _ => null,
    };

    public static bool IsCode(ReadOnlySpan<byte> code) =>
        code.Length == 4 && code.IndexOfAnyExcept(StationIds.UpperCaseAndDigits) < 0;

    /// <summary>
    /// The bounds are a little beyond the world records (−89.2 °C, 56.7 °C, 113.2 m/s, 1825 mm of rain in a day, 11.8 m
    /// of snow), so that what lies outside is in another unit and not weather.
    /// </summary>
    public static (int Lowest, int Highest, string Accepted) Bounds(this GhcnElement element) => element switch
    {
        GhcnElement.Tmin or GhcnElement.Tmax => (-900, 600, "tenths of °C from -900 to 600, or -9999 for missing"),
        GhcnElement.Wsf2 or GhcnElement.Wsf5 or GhcnElement.Wsfg =>
            (0, 1200, "tenths of m/s from 0 to 1200, or -9999 for missing"),
        GhcnElement.Prcp => (0, 20_000, "tenths of mm from 0 to 20000, or -9999 for missing"),
        GhcnElement.Snwd => (0, 12_000, "mm from 0 to 12000, or -9999 for missing"),
        GhcnElement.Rhmn => (0, 100, "percent from 0 to 100, or -9999 for missing"),
    };

    /// <summary>What a value of the file is called, and how many of its units make one of the reading.</summary>
    public static (DailyElement Element, double FileUnits) Reading(this GhcnElement element) => element switch
    {
        GhcnElement.Tmin => (DailyElement.MinTemperatureC, 10),
        GhcnElement.Tmax => (DailyElement.MaxTemperatureC, 10),
        GhcnElement.Wsf2 => (DailyElement.WindMps, 10),
        GhcnElement.Wsf5 or GhcnElement.Wsfg => (DailyElement.GustMps, 10),
        GhcnElement.Prcp => (DailyElement.PrecipitationMm, 10),
        GhcnElement.Snwd => (DailyElement.SnowDepthCm, 10),
        GhcnElement.Rhmn => (DailyElement.MinHumidityPercent, 1),
    };
}

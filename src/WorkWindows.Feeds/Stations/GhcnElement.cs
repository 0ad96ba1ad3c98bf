using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Stations;

/// <summary>
/// The GHCN-Daily elements that are used. AWND is left out on purpose: it is the mean wind of a day, and a limit for
/// felling is about the strongest.
/// </summary>
internal enum GhcnElement
{
    /// <summary>Minimum temperature.</summary>
    Tmin,

    /// <summary>Maximum temperature.</summary>
    Tmax,

    /// <summary>Fastest two-minute wind.</summary>
    Wsf2,

    /// <summary>Fastest five-second wind.</summary>
    Wsf5,

    /// <summary>Peak gust.</summary>
    Wsfg,

    /// <summary>
    /// Rain and melted snow of one day. Totals of several days (MDPR) are not read: nobody knows on which of them it
    /// rained.
    /// </summary>
    Prcp,

    /// <summary>Depth of the snow on the ground.</summary>
    Snwd,

    /// <summary>Lowest relative humidity of the day.</summary>
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

    public static string Code(this GhcnElement element) => element.ToString().ToUpperInvariant();

    /// <summary>What a value of the element is called here.</summary>
    public static DailyElement Reading(this GhcnElement element) => element switch
    {
        GhcnElement.Tmin => DailyElement.MinTemperatureC,
        GhcnElement.Tmax => DailyElement.MaxTemperatureC,
        GhcnElement.Wsf2 => DailyElement.WindMps,
        GhcnElement.Wsf5 or GhcnElement.Wsfg => DailyElement.GustMps,
        GhcnElement.Prcp => DailyElement.PrecipitationMm,
        GhcnElement.Snwd => DailyElement.SnowDepthCm,
        GhcnElement.Rhmn => DailyElement.MinHumidityPercent,
    };

    public static ElementUnit In(this GhcnElement element, StationUnits units) => (element, units) switch
    {
        (GhcnElement.Tmin or GhcnElement.Tmax, StationUnits.Tenths) => ElementUnit.TenthsCelsius,
        (GhcnElement.Tmin or GhcnElement.Tmax, StationUnits.Metric) => ElementUnit.Celsius,
        (GhcnElement.Tmin or GhcnElement.Tmax, StationUnits.Standard) => ElementUnit.Fahrenheit,
        (GhcnElement.Wsf2 or GhcnElement.Wsf5 or GhcnElement.Wsfg, StationUnits.Tenths) => ElementUnit.TenthsMps,
        (GhcnElement.Wsf2 or GhcnElement.Wsf5 or GhcnElement.Wsfg, StationUnits.Metric) => ElementUnit.Mps,
        (GhcnElement.Wsf2 or GhcnElement.Wsf5 or GhcnElement.Wsfg, StationUnits.Standard) => ElementUnit.Mph,
        (GhcnElement.Prcp, StationUnits.Tenths) => ElementUnit.TenthsMm,
        (GhcnElement.Prcp, StationUnits.Metric) => ElementUnit.Mm,
        (GhcnElement.Prcp, StationUnits.Standard) => ElementUnit.Inches,
        (GhcnElement.Snwd, StationUnits.Tenths or StationUnits.Metric) => ElementUnit.DepthMm,
        (GhcnElement.Snwd, StationUnits.Standard) => ElementUnit.DepthInches,
        (GhcnElement.Rhmn, StationUnits.Tenths or StationUnits.Metric or StationUnits.Standard) => ElementUnit.Percent,
    };
}

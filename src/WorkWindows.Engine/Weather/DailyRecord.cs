using NodaTime;

namespace WorkWindows.Engine.Weather;

/// <summary>The daily values that are kept of a station or of a forecast.</summary>
public enum DailyElement
{
    /// <summary>Minimum temperature, °C.</summary>
    MinTemperatureC,

    /// <summary>Maximum temperature, °C.</summary>
    MaxTemperatureC,

    /// <summary>Highest sustained wind (two-minute mean), m/s.</summary>
    WindMps,

    /// <summary>Highest gust, m/s.</summary>
    GustMps,

    /// <summary>Rain and melted snow, mm of water.</summary>
    PrecipitationMm,

    /// <summary>Depth of the snow on the ground, cm.</summary>
    SnowDepthCm,

    /// <summary>Lowest relative humidity, %.</summary>
    MinHumidityPercent,

    /// <summary>Highest chance of thunder, %; only forecasts have it.</summary>
    ThunderChancePercent,
}

/// <summary>One value of one day.</summary>
/// <param name="Date">The local date that the station books the value to.</param>
/// <param name="Element">What is measured, and in which unit.</param>
/// <param name="Value">The value in the unit of the element.</param>
/// <param name="QualityFlag">
/// The flag of the source that rejects the value, or null for a value that may be used.
/// </param>
public readonly record struct DailyReading(LocalDate Date, DailyElement Element, double Value, char? QualityFlag);

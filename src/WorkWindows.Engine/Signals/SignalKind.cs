namespace WorkWindows.Engine.Signals;

/// <summary>The daily numbers that a rule may compare. Each has one unit, named in its member.</summary>
public enum SignalKind
{
    /// <summary>Minimum air temperature of the day, °C.</summary>
    MinTemperatureC,

    /// <summary>Maximum air temperature of the day, °C.</summary>
    MaxTemperatureC,

    /// <summary>Highest sustained wind of the day, m/s.</summary>
    WindMps,

    /// <summary>Highest gust of the day, m/s.</summary>
    GustMps,

    /// <summary>Minutes of the work shift before sunrise or after sunset.</summary>
    DarkShiftMinutes,

    /// <summary>Minutes of the work shift between sunrise and sunset.</summary>
    LightShiftMinutes,

    /// <summary>Rain and melted snow of the day, mm of water.</summary>
    PrecipitationMm,

    /// <summary>Depth of the snow on the ground, cm.</summary>
    SnowDepthCm,

    /// <summary>Lowest relative humidity of the day, %.</summary>
    MinHumidityPercent,

    /// <summary>Highest chance of thunder of the day, %.</summary>
    ThunderChancePercent,

    /// <summary>Heat index of the day's maximum temperature and minimum humidity, °C.</summary>
    HeatIndexC,

    /// <summary>Wind chill of the day's minimum temperature in its highest sustained wind, °C.</summary>
    WindChillC,

    /// <summary>Continuous frozen ground index, degree-days in °C.</summary>
    FrozenGroundIndexC,

    /// <summary>Depth of frost in the ground, cm.</summary>
    FrostDepthCm,

    /// <summary>1 while a red flag warning or a fire weather watch is in force, else 0.</summary>
    RedFlagAlert,

    /// <summary>1 while a warning, watch or advisory of wind is in force, else 0.</summary>
    WindAlert,

    /// <summary>1 while a warning, watch or advisory of winter weather is in force, else 0.</summary>
    WinterStormAlert,

    /// <summary>1 while a warning or watch of severe thunderstorms or tornadoes is in force, else 0.</summary>
    ThunderstormAlert,
}

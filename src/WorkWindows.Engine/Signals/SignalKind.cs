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
}

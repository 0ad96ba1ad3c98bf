namespace WorkWindows.Engine.Signals;

/// <summary>How a value is known.</summary>
public enum Basis : byte
{
    /// <summary>It is not known.</summary>
    Missing,

    /// <summary>Read at a weather station.</summary>
    Observed,

    /// <summary>Forecast, with the time the forecast was issued.</summary>
    Forecast,

    /// <summary>Expected from past years of the same place, with their number.</summary>
    Climatology,

    /// <summary>Fixed by the calendar or by astronomy.</summary>
    Calendar,

    /// <summary>Seen on the property by a named person.</summary>
    SiteObservation,

    /// <summary>Issued, or not issued, by a weather service.</summary>
    Alert,

    /// <summary>Worked out from what was read at several stations, or at another one than the place's own.</summary>
    Interpolated,
}

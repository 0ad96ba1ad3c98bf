using NodaTime;

namespace WorkWindows.Engine.Signals;

/// <summary>What someone read on the property itself; on its days it takes the place of a signal's own value.</summary>
/// <param name="Kind">What was read.</param>
/// <param name="Value">The reading, in the unit of the signal.</param>
/// <param name="First">The first day it stands for.</param>
/// <param name="Last">The last day, included.</param>
public sealed record SiteReading(SignalKind Kind, double Value, LocalDate First, LocalDate Last);

/// <summary>What may be read on a property.</summary>
public static class SiteReadings
{
    /// <summary>
    /// How long a reading of a signal may stand; null when people cannot read it: alerts are issued, daylight is
    /// reckoned, a chance is forecast and an index is worked out.
    /// </summary>
    public static SiteReadingSpan? SpanOf(SignalKind kind) => kind switch
    {
        SignalKind.SnowDepthCm or SignalKind.FrostDepthCm => SiteReadingSpan.UntilItExpires,
        SignalKind.MinTemperatureC or SignalKind.MaxTemperatureC or SignalKind.WindMps or SignalKind.GustMps
            or SignalKind.PrecipitationMm or SignalKind.MinHumidityPercent => SiteReadingSpan.ItsDay,
        SignalKind.DarkShiftMinutes or SignalKind.LightShiftMinutes or SignalKind.ThunderChancePercent
            or SignalKind.HeatIndexC or SignalKind.WindChillC or SignalKind.FrozenGroundIndexC
            or SignalKind.RedFlagAlert or SignalKind.WindAlert or SignalKind.WinterStormAlert
            or SignalKind.ThunderstormAlert => null,
    };
}

/// <summary>How long a reading may stand in the place of a signal.</summary>
public enum SiteReadingSpan
{
    /// <summary>Weather of a day: it says nothing of the next one.</summary>
    ItsDay,

    /// <summary>Snow and frost lie for days; whoever read them says how long they may be relied on.</summary>
    UntilItExpires,
}

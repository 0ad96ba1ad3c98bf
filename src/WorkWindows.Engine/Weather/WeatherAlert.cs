using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Weather;

/// <summary>The kinds of alert that rules know.</summary>
public enum AlertKind
{
    RedFlag,
    Wind,
    WinterStorm,
    Thunderstorm,
}

/// <summary>A warning, watch or advisory of a weather service, on the local days that it touches.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Event">The service's own name for it, such as Red Flag Warning.</param>
/// <param name="First">The first day that it touches.</param>
/// <param name="Last">The last day that it touches, included.</param>
public sealed record WeatherAlert(AlertKind Kind, string Event, LocalDate First, LocalDate Last);

/// <summary>What is known of alerts over a span of days.</summary>
/// <param name="Alerts">The alerts, in any order.</param>
/// <param name="NotKnown">
/// The days on which nobody can say whether an alert is in force, because the service could not be asked; null when
/// there are none. On every other day an alert that is not listed has not been issued.
/// </param>
public sealed record AlertReport(ImmutableArray<WeatherAlert> Alerts, DaySpan? NotKnown)
{
    /// <summary>No alert and no doubt: for seasons that are over, whose alerts no station record keeps.</summary>
    public static AlertReport None { get; } = new([], null);
}

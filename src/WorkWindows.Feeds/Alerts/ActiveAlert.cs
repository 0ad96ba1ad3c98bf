using NodaTime;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Feeds.Alerts;

/// <summary>An alert that is in force, or has been issued for a time to come.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Event">The service's own name for it, such as Red Flag Warning.</param>
/// <param name="StartsAt">When the hazard begins.</param>
/// <param name="EndsAt">When it ends; not before the start.</param>
public sealed record ActiveAlert(AlertKind Kind, string Event, Instant StartsAt, Instant EndsAt)
{
    /// <summary>The alert on the local days that it touches; one that ends at midnight spares the next day.</summary>
    public WeatherAlert InZone(DateTimeZone zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        var first = StartsAt.InZone(zone).Date;
        var last = (EndsAt - Duration.Epsilon).InZone(zone).Date;
        return new(Kind, Event, first, LocalDate.Max(first, last));
    }
}

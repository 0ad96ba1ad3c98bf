using NodaTime;

namespace WorkWindows.Engine.Daylight;

/// <summary>
/// Dawn, sunrise, sunset and dusk inside one local day, on level ground without hills and trees. Source:
/// docs/rules/daylight.md.
/// </summary>
/// <param name="CivilDawn">The sun's centre rises to 6° below the horizon; null on a day without.</param>
/// <param name="Sunrise">Its centre rises to 50 arc minutes below the horizon; null on a day without.</param>
/// <param name="Sunset">Its centre sinks to 50 arc minutes below the horizon; null on a day without.</param>
/// <param name="CivilDusk">Its centre sinks to 6° below the horizon; null on a day without.</param>
public sealed record SunTimes(Instant? CivilDawn, Instant? Sunrise, Instant? Sunset, Instant? CivilDusk)
{
    /// <summary>
    /// Degrees from the zenith: 34 minutes of refraction and 16 of the sun's radius below the horizon.
    /// </summary>
    public const double HorizonZenithDeg = 90.833;

    public const double CivilZenithDeg = 96;

    public const double NauticalZenithDeg = 102;

    public const double AstronomicalZenithDeg = 108;

    /// <param name="date">
    /// A date in <paramref name="zone"/>: midnight to midnight there, also on a day of 23 or 25 h.
    /// </param>
    /// <param name="zone">The time zone of the place.</param>
    /// <param name="latitudeDeg">WGS 84, north positive, -90 to 90.</param>
    /// <param name="longitudeDeg">WGS 84, east positive, -180 to 180.</param>
    public static SunTimes On(LocalDate date, DateTimeZone zone, double latitudeDeg, double longitudeDeg) => new(
        Rising(date, zone, latitudeDeg, longitudeDeg, CivilZenithDeg),
        Rising(date, zone, latitudeDeg, longitudeDeg, HorizonZenithDeg),
        Setting(date, zone, latitudeDeg, longitudeDeg, HorizonZenithDeg),
        Setting(date, zone, latitudeDeg, longitudeDeg, CivilZenithDeg));

    /// <summary>
    /// The first time in the local day that the sun's centre rises through a zenith distance, or null.
    /// </summary>
    public static Instant? Rising(
        LocalDate date, DateTimeZone zone, double latitudeDeg, double longitudeDeg, double zenithDeg) =>
        Within(date, zone, day => SolarDay.Of(day, latitudeDeg, longitudeDeg, zenithDeg) is { Rises: true } arc
            ? arc.RisesMin
            : null);

    /// <summary>
    /// The first time in the local day that the sun's centre sinks through a zenith distance, or null.
    /// </summary>
    public static Instant? Setting(
        LocalDate date, DateTimeZone zone, double latitudeDeg, double longitudeDeg, double zenithDeg) =>
        Within(date, zone, day => SolarDay.Of(day, latitudeDeg, longitudeDeg, zenithDeg) is { Sets: true } arc
            ? arc.SetsMin
            : null);

    // West of Greenwich an evening falls on the next date of UTC: the solar days before and after are searched too.
    private static Instant? Within(LocalDate date, DateTimeZone zone, Func<LocalDate, double?> minutesUtc)
    {
        var start = zone.AtStartOfDay(date).ToInstant();
        var end = zone.AtStartOfDay(date.PlusDays(1)).ToInstant();
        for (var day = date.PlusDays(-1); day <= date.PlusDays(1); day = day.PlusDays(1))
        {
            if (minutesUtc(day) is { } minutes)
            {
                var at = day.AtMidnight().InUtc().ToInstant() + Duration.FromMinutes(minutes);
                if (at >= start && at < end)
                    return at;
            }
        }
        return null;
    }
}

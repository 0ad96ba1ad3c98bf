using NodaTime;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Daylight;

/// <summary>
/// The minutes of a shift before sunrise or after sunset, and those between. Source: docs/rules/daylight.md.
/// </summary>
/// <param name="LightMinutes">Whole minutes, one value a day of the span.</param>
/// <param name="DarkMinutes">The rest of the minutes that pass during the shift, one value a day of the span.</param>
public sealed record ShiftLight(double[] LightMinutes, double[] DarkMinutes)
{
    /// <param name="span">Local dates.</param>
    /// <param name="shift">
    /// Minutes are those that pass: a shift over a change of clocks is shorter or longer. A start or end that the clock
    /// skips moves on by the length of the gap; one that the clock shows twice is taken the first time.
    /// </param>
    /// <param name="zone">The time zone of the place.</param>
    /// <param name="latitudeDeg">WGS 84, north positive, -90 to 90.</param>
    /// <param name="longitudeDeg">WGS 84, east positive, -180 to 180.</param>
    public static ShiftLight Over(
        DaySpan span, WorkShift shift, DateTimeZone zone, double latitudeDeg, double longitudeDeg)
    {
        var light = new double[span.Count];
        var dark = new double[span.Count];
        var dayBefore = SolarDay.UnixDays(span.First) - 1;
        var suns = new SolarDay[span.Count + 2];
        for (var i = 0; i < suns.Length; i++)
            suns[i] = SolarDay.Of(dayBefore + i, latitudeDeg, longitudeDeg, SunTimes.HorizonZenithDeg);

        for (var day = 0; day < span.Count; day++)
        {
            var date = span[day];
            // Minutes since 00:00 UTC of the date before the local one, which suns[day] counts from too.
            var start = MinutesSince(dayBefore + day, zone.AtLeniently(date + shift.Start).ToInstant());
            var end = MinutesSince(dayBefore + day, zone.AtLeniently(date + shift.End).ToInstant());
            var lit = 0.0;
            for (var near = 0; near < 3; near++)
            {
                var sun = suns[day + near];
                var midnight = near * MinutesPerDay;
                lit += Math.Max(0, Math.Min(end, sun.SetsMin + midnight) - Math.Max(start, sun.RisesMin + midnight));
            }
            light[day] = Math.Round(Math.Min(lit, end - start));
            dark[day] = end - start - light[day];
        }
        return new(light, dark);
    }

    private const double MinutesPerDay = 1440;

    private static double MinutesSince(int unixDays, Instant instant) =>
        (instant.ToUnixTimeSeconds() - unixDays * (long)NodaConstants.SecondsPerDay) / 60.0;
}

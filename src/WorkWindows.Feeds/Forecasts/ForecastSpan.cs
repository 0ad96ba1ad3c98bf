using NodaTime;
using NodaTime.Text;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>One value of a layer and the time for which it is forecast, both ends known.</summary>
internal readonly record struct ForecastSpan(Interval Time, double Value)
{
    public const string Accepted = "an instant and a length by ISO 8601, such as 2026-04-12T06:00:00+00:00/PT13H";

    /// <returns>The interval, or null if the text is not an instant, a slash and a positive length.</returns>
    public static Interval? ParseTime(string validTime)
    {
        if (validTime.Split('/') is not [var startText, var lengthText])
            return null;
        var start = OffsetDateTimePattern.Rfc3339.Parse(startText);
        var length = PeriodPattern.Roundtrip.Parse(lengthText);
        // Months and years have no fixed length, and the service does not use them.
        if (!start.Success || !length.Success || length.Value is { Months: not 0 } or { Years: not 0 })
            return null;
        var duration = length.Value.ToDuration();
        return duration > Duration.Zero && duration < Duration.FromDays(60)
            ? new Interval(start.Value.ToInstant(), start.Value.ToInstant() + duration)
            : null;
    }
}

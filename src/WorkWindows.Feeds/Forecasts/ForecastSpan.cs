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
        var start = ParseInstant(startText);
        var length = PeriodPattern.Roundtrip.Parse(lengthText);
        // Months and years have no fixed length, and the service does not use them.
        if (start is not { } from || !length.Success || length.Value is { Months: not 0 } or { Years: not 0 })
            return null;
        var duration = length.Value.ToDuration();
        return duration > Duration.Zero && duration < Duration.FromDays(60)
            ? new Interval(from, from + duration)
            : null;
    }

    /// <returns>Null for another text, and for a year that would make a forecast of a million days.</returns>
    public static Instant? ParseInstant(string text) =>
        OffsetDateTimePattern.Rfc3339.Parse(text) is { Success: true, Value: { Year: >= 2000 and <= 2100 } time }
            ? time.ToInstant()
            : null;
}

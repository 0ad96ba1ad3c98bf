using NodaTime;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>
/// The times that a forecast can speak of. What lies outside was not meant, and would take long to lay out.
/// </summary>
/// <param name="IssuedAt">When the forecast was made.</param>
internal readonly record struct ForecastHorizon(Instant IssuedAt)
{
    /// <summary>As far as the longest global models in common use run: common practice, no source.</summary>
    public const int DaysAhead = 16;

    /// <summary>Layers begin with an interval that was under way, up to a day and a half long.</summary>
    public const int DaysBack = 2;

    private Instant First => IssuedAt - Duration.FromDays(DaysBack);

    private Instant Last => IssuedAt + Duration.FromDays(DaysAhead);

    public string Accepted => $"a time from {First} to {Last}, {DaysAhead} days after the issue";

    /// <summary>Whether an interval lies wholly within.</summary>
    public bool Holds(Interval time) => time.Start >= First && time.End <= Last;

    /// <summary>The local days that it touches.</summary>
    public DateInterval Days(DateTimeZone zone) => new(First.InZone(zone).Date, Last.InZone(zone).Date);
}

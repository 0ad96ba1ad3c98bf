using NodaTime;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>Turns the intervals of a layer into values of local days.</summary>
internal static class ForecastDays
{
    /// <summary>
    /// The service's day and night layers run 12 to 14 hours; what is shorter is the rest of one that had begun when
    /// the forecast was made, and its extreme may already be past.
    /// </summary>
    private static readonly Duration ShortestHalfDay = Duration.FromHours(12);

    private static readonly Duration LongestHalfDay = Duration.FromHours(24);

    /// <summary>Starts of intervals differ by a second or so from the ends before them.</summary>
    private static readonly Duration Slack = Duration.FromMinutes(1);

    /// <summary>The maxima of the daytime layer (7 to 19 h standard time), on the day that holds its middle.</summary>
    public static Dictionary<LocalDate, double> Maxima(IEnumerable<ForecastSpan> spans, DateTimeZone zone) =>
        HalfDays(spans, time => (time.Start + time.Duration / 2).InZone(zone).Date, values => values.Max());

    /// <summary>The minima of the night layer (19 to 8 h standard time), on the morning in which it ends.</summary>
    public static Dictionary<LocalDate, double> Minima(IEnumerable<ForecastSpan> spans, DateTimeZone zone) =>
        HalfDays(spans, time => (time.End - Duration.Epsilon).InZone(zone).Date, values => values.Min());

    /// <summary>
    /// The extreme of each local day that the intervals cover from midnight to midnight, but for a minute in all. An
    /// interval counts for every day that it reaches into.
    /// </summary>
    /// <param name="spans">Ascending by start.</param>
    /// <param name="zone">Whose days are meant.</param>
    /// <param name="extreme">Picks the value of a day.</param>
    public static Dictionary<LocalDate, double> WholeDays(
        IReadOnlyList<ForecastSpan> spans, DateTimeZone zone, Func<IEnumerable<double>, double> extreme) =>
        CoveredDays(spans, zone, (_, within) => extreme(within.Select(span => span.Value)));

    /// <summary>
    /// The sum of each local day that the intervals cover as above. Of an interval that reaches over midnight each day
    /// takes the share of its time: nothing says when within it the rain falls.
    /// </summary>
    public static Dictionary<LocalDate, double> Totals(IReadOnlyList<ForecastSpan> spans, DateTimeZone zone) =>
        CoveredDays(spans, zone, (day, within) => within.Sum(span =>
            span.Value * (Common(day, span.Time) / span.Time.Duration)));

    private static Dictionary<LocalDate, double> CoveredDays(
        IReadOnlyList<ForecastSpan> spans, DateTimeZone zone, Func<Interval, List<ForecastSpan>, double> valueOf)
    {
        var days = new Dictionary<LocalDate, double>();
        if (spans.Count == 0)
            return days;
        var last = spans.Max(span => span.Time.End).InZone(zone).Date;
        for (var date = spans[0].Time.Start.InZone(zone).Date; date <= last; date = date.PlusDays(1))
        {
            var day = new Interval(
                zone.AtStartOfDay(date).ToInstant(), zone.AtStartOfDay(date.PlusDays(1)).ToInstant());
            var within = spans.Where(span => span.Time.Start < day.End && span.Time.End > day.Start).ToList();
            if (Uncovered(day, within) <= Slack)
                days[date] = valueOf(day, within);
        }
        return days;
    }

    private static Duration Common(Interval one, Interval other) =>
        Instant.Min(one.End, other.End) - Instant.Max(one.Start, other.Start);

    /// <summary>The extreme of what reaches into the first day, when the intervals begin after its midnight.</summary>
    public static Dictionary<LocalDate, double> RestOfFirstDay(
        IReadOnlyList<ForecastSpan> spans, DateTimeZone zone, Func<IEnumerable<double>, double> extreme)
    {
        if (spans.Count == 0)
            return [];
        var start = spans[0].Time.Start;
        var date = start.InZone(zone).Date;
        var end = zone.AtStartOfDay(date.PlusDays(1)).ToInstant();
        return start - zone.AtStartOfDay(date).ToInstant() <= Slack
            ? []
            : new() { [date] = extreme(spans.Where(span => span.Time.Start < end).Select(span => span.Value)) };
    }

    private static Dictionary<LocalDate, double> HalfDays(
        IEnumerable<ForecastSpan> spans, Func<Interval, LocalDate> dateOf, Func<IEnumerable<double>, double> extreme) =>
        spans
            .Where(span => span.Time.Duration >= ShortestHalfDay && span.Time.Duration <= LongestHalfDay)
            .GroupBy(span => dateOf(span.Time), span => span.Value)
            .ToDictionary(day => day.Key, day => extreme(day));

    private static Duration Uncovered(Interval day, IEnumerable<ForecastSpan> ascending)
    {
        var (uncovered, reached) = (Duration.Zero, day.Start);
        foreach (var span in ascending)
        {
            if (span.Time.Start > reached)
                uncovered += span.Time.Start - reached;
            reached = Instant.Max(reached, span.Time.End);
        }
        return reached < day.End ? uncovered + (day.End - reached) : uncovered;
    }
}

using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Calendars;

/// <summary>Lays a yearly range out over the days of a signal set. Source: docs/rules/calendar-dates.md.</summary>
public static class CalendarDays
{
    // A range over New Year reaches one year on, and added days reach one more.
    private const int YearsAround = 2;

    // Weekdays fall on the same dates again after 28 years, or after 40 across a year such as 2100.
    private const int CycleYears = 40;
    private const int CycleStart = 2000;

    /// <summary>Which days of the set's span lie in the range.</summary>
    /// <returns>
    /// Holds on days certainly inside and fails on days certainly outside. The days between an end's earliest and
    /// latest date are unknown while the event that it follows is. A range whose known end precedes its start, or
    /// that names a fifth weekday that a year does not have, has no days in that year.
    /// </returns>
    public static Tri Days(CalendarRange range, SignalSet signals)
    {
        var span = signals.Span;
        var certain = DayBits.None(span.Count);
        var possible = certain;
        for (var year = span.First.Year - YearsAround; year <= span.Last.Year + YearsAround; year++)
        {
            if (Ends(range, signals, year) is not var (from, to))
                continue;
            certain |= DayBits.Range(span.Count, span.IndexOf(from.Latest), span.IndexOf(to.Earliest));
            possible |= DayBits.Range(span.Count, span.IndexOf(from.Earliest), span.IndexOf(to.Latest));
        }
        return new(certain, ~possible);
    }

    /// <summary>
    /// The turns of a range that touch the span, as indices of their first and last day; a turn that began before the
    /// span has a negative first one.
    /// </summary>
    internal static IEnumerable<(int First, int Last)> Turns(CalendarRange range, SignalSet signals)
    {
        var span = signals.Span;
        for (var year = span.First.Year - YearsAround; year <= span.Last.Year + YearsAround; year++)
        {
            if (Ends(range, signals, year) is not var (from, to))
                continue;
            var (first, last) = (span.IndexOf(from.Earliest), span.IndexOf(to.Latest));
            if (last >= 0 && first < span.Count)
                yield return (first, last);
        }
    }

    /// <summary>The turn of the range that a day lies in, or may lie in, or else the next one after it.</summary>
    /// <exception cref="ArgumentException">The range has no days in any year.</exception>
    public static RangeOccurrence Occurrence(CalendarRange range, SignalSet signals, LocalDate day)
    {
        for (var year = day.Year - YearsAround; year <= day.Year + CycleYears; year++)
        {
            if (Ends(range, signals, year) is var (from, to) && to.Latest >= day)
                return new(from.Earliest, to.Latest, LeastKnown(from.Basis, to.Basis));
        }
        throw new ArgumentException($"The range {range} has no days after {day:R}.", nameof(range));
    }

    /// <summary>Whether the range has days in any year.</summary>
    internal static bool EverHolds(CalendarRange range) => Enumerable.Range(CycleStart, CycleYears)
        .Any(year => Ends(range, SignalSet.Of("", new(new(year, 1, 1), 1), [], []), year) is not null);

    private static (RangeEnd From, RangeEnd To)? Ends(CalendarRange range, SignalSet signals, int year)
    {
        if (RangeEnd.Nominal(range.From, year) is not { } nominalFrom)
            return null;
        // By the calendar alone: an early event must not turn a range of days into one of a whole year.
        var overNewYear = RangeEnd.Nominal(range.To, year) is { } nominalTo && nominalTo.Latest < nominalFrom.Earliest;
        return RangeEnd.Of(range.From, year, signals) is { } from
            && RangeEnd.Of(range.To, overNewYear ? year + 1 : year, signals) is { } to
            && from.Earliest <= to.Latest
                ? (from, to)
                : null;
    }

    private static Basis LeastKnown(Basis left, Basis right) => Certainty(left) <= Certainty(right) ? left : right;

    private static int Certainty(Basis basis) => basis switch
    {
        Basis.Missing => 0,
        Basis.Climatology => 1,
        Basis.Forecast => 2,
        Basis.Interpolated => 3,
        Basis.Observed => 4,
        Basis.SiteObservation => 5,
        Basis.Alert => 5,
        Basis.Calendar => 6,
    };
}

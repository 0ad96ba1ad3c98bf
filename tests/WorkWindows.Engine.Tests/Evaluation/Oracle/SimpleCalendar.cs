using NodaTime;
using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Evaluation.Oracle;

/// <summary>
/// Finds the days of yearly ranges by looking at every day of a month. Shares no code with the engine.
/// </summary>
internal static class SimpleCalendar
{
    public static Truth Contains(CalendarRange range, SignalSet signals, LocalDate day)
    {
        var maybe = false;
        for (var year = day.Year - 3; year <= day.Year + 3; year++)
        {
            if (Turn(range, signals, year) is not var (earliestFrom, latestFrom, earliestTo, latestTo))
                continue;
            if (day >= latestFrom && day <= earliestTo)
                return Truth.Holds;
            maybe |= day >= earliestFrom && day <= latestTo;
        }
        return maybe ? Truth.Unknown : Truth.Fails;
    }

    /// <summary>The turns of a range that no event moves and that a day lies in: first and last day.</summary>
    public static IEnumerable<(LocalDate First, LocalDate Last)> TurnsAt(CalendarRange range, SignalSet signals, LocalDate day) =>
        from year in Enumerable.Range(day.Year - 3, 7)
        let turn = Turn(range, signals, year)
        where turn is not null && day >= turn.Value.EarliestFrom && day <= turn.Value.LatestTo
        select (turn.Value.EarliestFrom, turn.Value.LatestTo);

    /// <summary>The last time that a month and day came, up to a day.</summary>
    public static LocalDate LastBefore(FixedDate date, LocalDate day)
    {
        var found = day;
        while (found != Find(date, found.Year))
            found = found.PlusDays(-1);
        return found;
    }

    private static (LocalDate EarliestFrom, LocalDate LatestFrom, LocalDate EarliestTo, LocalDate LatestTo)? Turn(
        CalendarRange range, SignalSet signals, int year)
    {
        if (Bounds(range.From, year, null) is not { } calendarFrom)
            return null;
        var wraps = Bounds(range.To, year, null) is { } calendarTo && calendarTo.Latest < calendarFrom.Earliest;
        if (Bounds(range.From, year, signals) is not { } from
            || Bounds(range.To, wraps ? year + 1 : year, signals) is not { } to
            || to.Latest < from.Earliest)
        {
            return null;
        }
        return (from.Earliest, from.Latest, to.Earliest, to.Latest);
    }

    private static (LocalDate Earliest, LocalDate Latest)? Bounds(YearlyDate date, int year, SignalSet? signals)
    {
        if (date is not EventDate e)
            return Find(date, year) is { } day ? (day, day) : null;
        var (early, late) = (Find(e.NotBefore, year)!.Value, Find(e.NotAfter, year)!.Value);
        if (signals?.Events.Where(known => known.Kind == e.Event && known.Date.Year == year).ToArray() is [var happened])
        {
            var within = happened.Date < early ? early : happened.Date > late ? late : happened.Date;
            (early, late) = (within, within);
        }
        return (early.PlusDays(e.PlusDays), late.PlusDays(e.PlusDays));
    }

    private static LocalDate? Find(YearlyDate date, int year) => date switch
    {
        FixedDate f => OnDay(year, f.Month, f.Day),
        NthWeekday n => Nth(n, year),
        NearestWeekday n => Enumerable.Range(-3, 7).Select(off => OnDay(year, n.Month, n.Day).PlusDays(off))
            .Single(day => day.DayOfWeek == n.Weekday),
        WeekdayOnOrAfter w => Enumerable.Range(0, 7).Select(off => OnDay(year, w.Month, w.Day).PlusDays(off))
            .Single(day => day.DayOfWeek == w.Weekday),
        _ => throw new ArgumentException($"{date.GetType().Name} is not by the calendar."),
    } is { } found ? found.PlusDays(date.PlusDays) : null;

    private static LocalDate? Nth(NthWeekday n, int year)
    {
        var days = new List<LocalDate>();
        for (var day = new LocalDate(year, n.Month, 1); day.Month == n.Month; day = day.PlusDays(1))
        {
            if (day.DayOfWeek == n.Weekday)
                days.Add(day);
        }
        var index = n.Nth > 0 ? n.Nth - 1 : days.Count + n.Nth;
        return index >= 0 && index < days.Count ? days[index] : null;
    }

    private static LocalDate OnDay(int year, int month, int day) =>
        month == 2 && day == 29 && !DateTime.IsLeapYear(year) ? new(year, 2, 28) : new(year, month, day);
}

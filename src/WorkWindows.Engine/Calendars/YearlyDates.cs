using NodaTime;

namespace WorkWindows.Engine.Calendars;

/// <summary>Finds the date that a yearly date has in one year. Source: docs/rules/calendar-dates.md.</summary>
public static class YearlyDates
{
    /// <summary>
    /// The date in a year, with <see cref="YearlyDate.PlusDays"/> added; it may then lie in another year.
    /// </summary>
    /// <returns>
    /// Null for an event of nature, which no calendar tells, and for a fifth weekday in a year whose month has four.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The month or the day does not exist, or the nth is 0.</exception>
    public static LocalDate? Resolve(this YearlyDate date, int year) => date switch
    {
        FixedDate fixedDate => OnDay(year, fixedDate.Month, fixedDate.Day),
        NthWeekday nth => Nth(nth, year),
        NearestWeekday nearest => Nearest(OnDay(year, nearest.Month, nearest.Day), nearest.Weekday),
        WeekdayOnOrAfter first => OnOrAfter(OnDay(year, first.Month, first.Day), first.Weekday),
        _ => null,
    } is { } found ? found.PlusDays(date.PlusDays) : null;

    /// <summary>The last turn of a fixed date that is not after a day.</summary>
    public static LocalDate LastOnOrBefore(FixedDate date, LocalDate day)
    {
        var inYear = date.Resolve(day.Year)!.Value;
        return inYear <= day ? inYear : date.Resolve(day.Year - 1)!.Value;
    }

    private static LocalDate OnDay(int year, int month, int day) =>
        month == 2 && day == 29 && !CalendarSystem.Iso.IsLeapYear(year) ? new(year, 2, 28) : new(year, month, day);

    private static LocalDate? Nth(NthWeekday date, int year)
    {
        ArgumentOutOfRangeException.ThrowIfZero(date.Nth, nameof(date));
        var first = OnOrAfter(new(year, date.Month, 1), date.Weekday);
        var last = CalendarSystem.Iso.GetDaysInMonth(year, date.Month);
        var inMonth = 1 + (last - first.Day) / 7;
        var nth = date.Nth > 0 ? date.Nth : inMonth + 1 + date.Nth;
        return nth >= 1 && nth <= inMonth ? first.PlusWeeks(nth - 1) : null;
    }

    private static LocalDate OnOrAfter(LocalDate from, IsoDayOfWeek weekday) => DateAdjusters.NextOrSame(weekday)(from);

    // The two neighbours are seven days apart, so that they are never equally near.
    private static LocalDate Nearest(LocalDate day, IsoDayOfWeek weekday) => OnOrAfter(day.PlusDays(-3), weekday);
}

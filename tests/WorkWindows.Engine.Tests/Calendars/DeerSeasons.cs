using NodaTime;
using WorkWindows.Engine.Calendars;

namespace WorkWindows.Engine.Tests.Calendars;

/// <summary>
/// Deer seasons as rules of the calendar. WI-gun and MO-Nov as their agencies state them; the others fitted to
/// published seasons or from news reprints, not read in law (shared reference: wildlife and calendars, section 4).
/// </summary>
internal static class DeerSeasons
{
    public static CalendarRange Of(string season) => season switch
    {
        "WI-gun" => Thanksgiving(-5, 3),
        "WI-mz" => Thanksgiving(4, 13),
        "WI-antl" => Thanksgiving(14, 17),
        "WI-bow" => new(Nearest(IsoDayOfWeek.Saturday, 9, 15), Nearest(IsoDayOfWeek.Sunday, 1, 6)),
        "WI-holiday" => new(new FixedDate(12, 24), new FixedDate(1, 1)),
        "MI-gun" => new(new FixedDate(11, 15), new FixedDate(11, 30)),
        "MI-mz" => Days(First(IsoDayOfWeek.Friday, 12), 10),
        "MI-late" => new(First(IsoDayOfWeek.Friday, 12).Later(10), new FixedDate(1, 1)),
        "MI-liberty" => Days(new NthWeekday(2, IsoDayOfWeek.Saturday, 9), 2),
        "MN-gun" => Days(Nearest(IsoDayOfWeek.Saturday, 11, 6), 1),
        "MN-mz" => Days(Nearest(IsoDayOfWeek.Saturday, 11, 6).Later(21), 16),
        "MN-bow" => new(Nearest(IsoDayOfWeek.Saturday, 9, 16), new FixedDate(12, 31)),
        "IA-gun1" => Days(First(IsoDayOfWeek.Saturday, 12), 5),
        "IL-gun1" => Thanksgiving(-6, -4),
        "IL-gun2" => Thanksgiving(7, 10),
        "IL-mz" => Thanksgiving(15, 17),
        "IL-bow" => new(new FixedDate(10, 1), new WeekdayOnOrAfter(IsoDayOfWeek.Sunday, 1, 14)),
        "OH-gun" => Thanksgiving(4, 10),
        "OH-bonus" => Thanksgiving(23, 24),
        "OH-youth" => Days(new NthWeekday(3, IsoDayOfWeek.Saturday, 11), 2),
        "OH-mz" => Days(First(IsoDayOfWeek.Saturday, 1), 4),
        "OH-bow" => new(new NthWeekday(-1, IsoDayOfWeek.Saturday, 9), First(IsoDayOfWeek.Sunday, 2)),
        "PA-gun" => Thanksgiving(2, 16),
        "PA-gun closed" => Thanksgiving(10, 10),
        "NY-south" => Days(new NthWeekday(3, IsoDayOfWeek.Saturday, 11), 23),
        "NY-south late" => Days(new NthWeekday(3, IsoDayOfWeek.Saturday, 11).Later(23), 9),
        "NY-north" => Days(new NthWeekday(-2, IsoDayOfWeek.Saturday, 10), 44),
        "IN-gun" => Days(new WeekdayOnOrAfter(IsoDayOfWeek.Saturday, 11, 12), 16),
        "IN-mz" => Days(new WeekdayOnOrAfter(IsoDayOfWeek.Saturday, 11, 12).Later(21), 16),
        "IN-bow" => new(new FixedDate(10, 1), First(IsoDayOfWeek.Sunday, 1)),
        "MO-Nov" => Thanksgiving(-12, -2),
        "MO-youth" => Thanksgiving(-26, -25),
        "MO-youth late" => Thanksgiving(1, 3),
        "MO-late" => Thanksgiving(9, 17),
        "MO-alt" => Thanksgiving(30, 40),
        _ => throw new ArgumentException($"{season} is not a season of the table.", nameof(season)),
    };

    private static CalendarRange Thanksgiving(int fromDays, int toDays) =>
        new(new NthWeekday(4, IsoDayOfWeek.Thursday, 11).Later(fromDays),
            new NthWeekday(4, IsoDayOfWeek.Thursday, 11).Later(toDays));

    private static CalendarRange Days(YearlyDate from, int days) => new(from, from.Later(days - 1));

    private static NthWeekday First(IsoDayOfWeek weekday, int month) => new(1, weekday, month);

    private static NearestWeekday Nearest(IsoDayOfWeek weekday, int month, int day) => new(weekday, month, day);

    private static YearlyDate Later(this YearlyDate date, int days) => date with { PlusDays = date.PlusDays + days };
}

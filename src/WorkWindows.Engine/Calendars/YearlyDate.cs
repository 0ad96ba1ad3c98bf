using NodaTime;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Calendars;

/// <summary>A date that a rule names once and that every year has again.</summary>
public abstract record YearlyDate
{
    /// <summary>Whole days added after the date has been found; may be negative.</summary>
    public int PlusDays { get; init; }

    public YearlyDate Plus(int days) => this with { PlusDays = PlusDays + days };
}

/// <summary>The same month and day every year; 29 February falls on the 28th of a common year.</summary>
public sealed record FixedDate(int Month, int Day) : YearlyDate;

/// <summary>
/// The nth weekday of a month, counted from its start, or from its end where negative (-1 is the last).
/// </summary>
public sealed record NthWeekday(int Nth, IsoDayOfWeek Weekday, int Month) : YearlyDate;

/// <summary>The weekday nearest to a month and day, on either side of it.</summary>
public sealed record NearestWeekday(IsoDayOfWeek Weekday, int Month, int Day) : YearlyDate;

/// <summary>The first such weekday on or after a month and day.</summary>
public sealed record WeekdayOnOrAfter(IsoDayOfWeek Weekday, int Month, int Day) : YearlyDate;

/// <summary>
/// A yearly event of nature. In a year whose event is not known it lies somewhere between the two given dates.
/// </summary>
public sealed record EventDate(SeasonEventKind Event, FixedDate NotBefore, FixedDate NotAfter) : YearlyDate;

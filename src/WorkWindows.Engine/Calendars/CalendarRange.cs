namespace WorkWindows.Engine.Calendars;

/// <summary>
/// A range of days that returns every year, both ends included. A range whose end would precede its start runs over
/// New Year into the next year.
/// </summary>
public sealed record CalendarRange(YearlyDate From, YearlyDate To);

using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Morning;

namespace WorkWindows.Service.Windows;

/// <summary>The days that an address names.</summary>
internal static class AskedDays
{
    /// <summary>A year and a month: more is asked for in parts.</summary>
    public const int LongestSpan = 400;

    private const int DaysAWeek = 7;
    private const string DateForm = "a date such as 2025-01-31";

    /// <summary>Leap days and lead-in days lie within, too.</summary>
    private static readonly LocalDate Earliest = new(1800, 1, 1), Latest = new(2200, 12, 31);

    /// <summary>The days from one date to another, both included.</summary>
    /// <param name="from">The first; <paramref name="today"/> without one.</param>
    /// <param name="to">The last; a year of days without one.</param>
    /// <param name="today">The day of asking.</param>
    /// <param name="faults">What is wrong with them.</param>
    /// <param name="days">The days, when nothing is wrong.</param>
    public static bool TryRead(
        string? from, string? to, LocalDate today, FieldFaults faults, out DaySpan days)
    {
        days = default;
        var first = from is null ? today : Date("from", from, faults);
        var last = to is not null ? Date("to", to, faults) : first is { } start ? YearFrom(start).Last : null;
        if (first is not { } f || last is not { } l)
            return false;
        if (l < f)
            faults.Add("to", $"{l:R}", $"a day that is not before {f:R}");
        else if (Period.DaysBetween(f, l) >= LongestSpan)
            faults.Add(
                "to", $"{l:R}", $"a day up to {f.PlusDays(LongestSpan - 1):R}: at most {LongestSpan} days at once");
        else
            days = DaySpan.Between(f, l);
        return !faults.Any;
    }

    /// <summary>A year of days.</summary>
    public static DaySpan YearFrom(LocalDate first) => DaySpan.Between(first, first.PlusYears(1).PlusDays(-1));

    /// <summary>The week of a day from its Monday on; that of today where the text is no day.</summary>
    public static DaySpan WeekOf(string? text, LocalDate today)
    {
        var day = text is not null && Date("from", text, new()) is { } asked ? asked : today;
        return new(day.PlusDays(IsoDayOfWeek.Monday - day.DayOfWeek), DaysAWeek);
    }

    /// <summary>One of the coming days of which outlooks tell; today where the text is none of them.</summary>
    public static LocalDate Coming(string? text, LocalDate today) =>
        LocalDatePattern.Iso.Parse(text ?? "") is { Success: true, Value: var day } && day >= today && day < today.PlusDays(TaskOutlook.Days)
            ? day
            : today;

    public static LocalDate? Date(string field, string text, FieldFaults faults)
    {
        if (LocalDatePattern.Iso.Parse(text) is { Success: true, Value: var date } && date >= Earliest && date <= Latest)
            return date;
        faults.Add(field, text, DateForm);
        return null;
    }
}

using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Windows;

/// <summary>How pages write days and counts.</summary>
public static class DayWords
{
    private static readonly LocalDatePattern Short = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");
    private static readonly LocalDatePattern Long = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM uuuu");
    private static readonly LocalDateTimePattern Moment =
        LocalDateTimePattern.CreateWithInvariantCulture("ddd d MMM uuuu, H:mm");
    private static readonly LocalDatePattern Address = LocalDatePattern.Iso;

    /// <summary>As in Thu 26 Nov.</summary>
    public static string Of(LocalDate day) => Short.Format(day);

    /// <summary>As in Thu 26 Nov 2026.</summary>
    public static string WithYear(LocalDate day) => Long.Format(day);

    /// <summary>With its year only where that is not the year of today.</summary>
    public static string Of(LocalDate day, LocalDate today) =>
        day.Year == today.Year ? Short.Format(day) : Long.Format(day);

    /// <summary>As in Thu 26 Nov 2026, 2:00.</summary>
    public static string At(Instant instant, DateTimeZone zone) => Moment.Format(instant.InZone(zone).LocalDateTime);

    /// <summary>The address of a task's page of a day.</summary>
    public static string AddressOf(Guid task, LocalDate day) => $"/tasks/{task}/days/{Address.Format(day)}";

    public static string ClassOf(DayState state) => Wording.Of(state);

    public static string Count(int count, string one, string many) => count == 1 ? $"1 {one}" : $"{count} {many}";
}

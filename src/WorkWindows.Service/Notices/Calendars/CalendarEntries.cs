using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Notices.Calendars;

/// <summary>Entries for a calendar that go with a notice.</summary>
/// <param name="IsCancelled">They are to be taken out.</param>
/// <param name="Entries">One a run of days.</param>
public sealed record CalendarDraft(bool IsCancelled, ImmutableArray<CalendarEntry> Entries);

/// <summary>Days of one task, both ends included.</summary>
/// <param name="Key">What tells the entry from others of the same person, for ever.</param>
/// <param name="First">The first day.</param>
/// <param name="Last">The last day.</param>
/// <param name="Title">The work.</param>
/// <param name="Place">Where.</param>
/// <param name="TimeZone">The IANA zone of the property.</param>
/// <param name="Hours">The working hours on the one day of the entry; null for whole days.</param>
public sealed record CalendarEntry(
    string Key, LocalDate First, LocalDate Last, string Title, string Place, string TimeZone, WorkShift? Hours = null);

internal static class CalendarEntries
{
    /// <summary>What the key of a scheduled day ends with.</summary>
    public const string ScheduledSuffix = "-scheduled";

    /// <summary>The entry of a window that was announced: it keeps its key while its last day moves.</summary>
    public static CalendarEntry Of(TaskSummary task, Window run) => new(
        Key(task.Id, run.First), run.First, run.Last, task.Practice.Name, Place(task), task.Zone.Id);

    /// <summary>The entry of the day that a task is scheduled for: it keeps its key while the day moves.</summary>
    public static CalendarEntry Scheduled(TaskSummary task, LocalDate day, WorkShift hours, string title) =>
        new(ScheduledKey(task.Id), day, day, title, Place(task), task.Zone.Id, hours);

    public static string Key(Guid task, LocalDate first) => $"{task:N}-{first:uuuuMMdd}";

    public static string ScheduledKey(Guid task) => $"{task:N}{ScheduledSuffix}";

    private static string Place(TaskSummary task) => $"{task.PropertyName}, {task.ParcelName}";
}

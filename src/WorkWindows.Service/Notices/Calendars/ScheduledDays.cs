using NodaTime;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Notices.Calendars;

/// <summary>
/// Puts the days that work is scheduled for into the calendar of its crew lead, with how they stand tonight.
/// </summary>
internal static class ScheduledDays
{
    public static void Tell(Night night, CalendarLedger ledger)
    {
        foreach (var task in night.Tasks)
        {
            var key = CalendarEntries.ScheduledKey(task.Task.Id);
            var lead = task.Task.ScheduledOn is { } scheduled ? task.Task.LeadOn(scheduled) : null;
            foreach (var former in ledger.Days.Where(day => day.Key == key && day.PersonId != lead).ToList())
                ledger.Cancel(former.PersonId, key);
            if (lead is { } person && task.Task.ScheduledOn is { } day && task.Evaluation.Span.Contains(day)
                && day >= task.Today)
            {
                ledger.Publish(person, CalendarEntries.Scheduled(task.Task, day, night.Shift, Title(task, day)));
            }
        }
    }

    private static string Title(TaskTonight task, LocalDate day) => task.IsWorkable(day)
        ? task.Task.Practice.Name
        : $"{task.Task.Practice.Name}: {Wording.Of(task.Evaluation[day])}, do not start";
}

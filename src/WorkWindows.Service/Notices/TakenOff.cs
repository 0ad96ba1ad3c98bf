using NodaTime;
using WorkWindows.Service.Notices.Calendars;

namespace WorkWindows.Service.Notices;

/// <summary>
/// Takes back days that people were reminded of and that are not theirs any more: the work was moved, or another crew
/// does it. Nobody is to stand on a site alone because the others know better.
/// </summary>
internal static class TakenOff
{
    public static void Plan(Night night, NightPlan plan)
    {
        var tasks = night.Tasks.ToDictionary(task => task.Task.Id);
        foreach (var window in plan.Standing(night))
        {
            if (window.MessageKey is { } key && Reminders.DayOf(key) is { } day
                && tasks.TryGetValue(window.TaskId, out var task) && day >= task.Today
                && !IsTheirs(task, day, window.PersonId))
            {
                TakeBack(night, plan, window, task, day);
            }
        }
    }

    /// <summary>A lead is also reminded of a window that opens, where no day is set.</summary>
    private static bool IsTheirs(TaskTonight task, LocalDate day, Guid person) =>
        task.Task.ScheduledOn is null && task.Booked.Count == 0
            ? task.Task.CrewLeadId == person
            : task.IsScheduledOn(day) && task.CrewOn(day).Contains(person);

    private static void TakeBack(Night night, NightPlan plan, Announcement window, TaskTonight task, LocalDate day)
    {
        plan.Stopped.Add(window);
        var mayHaveLeft = !night.Waiting.TryGetValue(window.MessageKey!, out var left) || left;
        if (night.Waiting.ContainsKey(window.MessageKey!))
            plan.Dropped.Add(window.MessageKey!);
        if (!mayHaveLeft)
            return;
        var key = $"taken-off:{window.Id}:{window.PersonId}";
        plan.Tell(night, window.PersonId, NoticeKinds.DoNotStart, key, recipient => new(
            key, NoticeKinds.DoNotStart, recipient, TakenOffNotice.Of(night, task, day),
            new(IsCancelled: true, [CalendarEntries.Of(task.Task, new(window.FirstDay, window.LastDay))])));
    }
}

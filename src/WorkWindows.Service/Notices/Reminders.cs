using NodaTime;

namespace WorkWindows.Service.Notices;

/// <summary>Tells the crew lead, the day before, how to go to work, or not to.</summary>
internal static class Reminders
{
    public static void Plan(Night night, NightPlan plan)
    {
        var standing = plan.Standing(night);
        foreach (var task in night.Tasks)
        {
            var tomorrow = task.Today.PlusDays(1);
            var isScheduled = task.Task.ScheduledOn == tomorrow;
            var opens = task.Task.ScheduledOn is null
                && standing.Any(window => window.TaskId == task.Task.Id && window.FirstDay == tomorrow);
            if (task.Task.CrewLeadId is { } lead && (isScheduled || opens))
                Tell(night, plan, standing, task, tomorrow, lead);
        }
    }

    private static void Tell(
        Night night, NightPlan plan, IReadOnlyList<Announcement> standing, TaskTonight task, LocalDate day, Guid lead)
    {
        var key = $"reminder:{task.Task.Id}:{day:R}:{lead}";
        if (!task.IsWorkable(day))
        {
            // Whoever was told to stop on that day knows it.
            var stopped = plan.Stopped.Any(window =>
                window.TaskId == task.Task.Id && window.FirstDay <= day && window.LastDay >= day);
            if (!stopped)
            {
                plan.Tell(night, lead, key, recipient =>
                    new(key, NoticeKinds.DoNotStart, recipient, DoNotStartNotice.Of(night, task, day), Calendar: null));
            }
            return;
        }
        var told = plan.Tell(night, lead, key, recipient => new(
            key, NoticeKinds.Reminder, recipient, ReminderNotice.Of(night, task, day),
            new(IsCancelled: false, [CalendarEntries.Of(task, new(day, day))])));
        var known = standing.Any(window => window.TaskId == task.Task.Id && window.PersonId == lead
            && window.FirstDay <= day && window.LastDay >= day);
        if (told && !known)
        {
            plan.Announced.Add(new()
            {
                TaskId = task.Task.Id,
                PersonId = lead,
                FirstDay = day,
                LastDay = day,
                AnnouncedAt = night.Now,
            });
        }
    }
}

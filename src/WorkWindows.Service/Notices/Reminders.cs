using NodaTime;
using NodaTime.Text;
using WorkWindows.Service.Notices.Seasons;
using WorkWindows.Service.Notices.Calendars;

namespace WorkWindows.Service.Notices;

/// <summary>Tells the crew lead and whoever is booked, the day before, how to go to work, or not to.</summary>
internal static class Reminders
{
    public static void Plan(Night night, NightPlan plan)
    {
        var standing = plan.Standing(night);
        foreach (var task in night.Tasks)
        {
            var tomorrow = task.Today.PlusDays(1);
            var isScheduled = task.IsScheduledOn(tomorrow);
            var opens = task.Task.ScheduledOn is null && task.Booked.Count == 0
                && standing.Any(window => window.TaskId == task.Task.Id && window.FirstDay == tomorrow);
            if (!isScheduled && !opens)
                continue;
            foreach (var person in task.CrewOn(tomorrow))
                Tell(night, plan, standing, task, tomorrow, person);
        }
    }

    private static void Tell(
        Night night, NightPlan plan, IReadOnlyList<Announcement> standing, TaskTonight task, LocalDate day, Guid person)
    {
        var key = KeyOf(task.Task.Id, day, person);
        if (!task.IsWorkable(day))
        {
            // Whoever was told to stop on that day knows it.
            var stopped = plan.ToldToStop.Contains((task.Task.Id, person)) && plan.Stopped.Any(window =>
                window.TaskId == task.Task.Id && window.FirstDay <= day && window.LastDay >= day);
            if (!stopped)
            {
                plan.Tell(night, person, NoticeKinds.DoNotStart, key, recipient => new(
                    key, NoticeKinds.DoNotStart, recipient,
                    DoNotStartNotice.Of(night, task, day, recipient.Wishes.Scale), Calendar: null));
            }
            return;
        }
        var known = standing.Any(window => window.TaskId == task.Task.Id && window.PersonId == person
            && window.FirstDay <= day && window.LastDay >= day);
        // A window that they were told of is in the calendar already.
        var told = plan.Tell(night, person, NoticeKinds.Reminder, key, recipient => new(
            key, NoticeKinds.Reminder, recipient, ReminderNotice.Of(night, task, day, recipient.Wishes.Scale),
            known ? null : new(IsCancelled: false, [CalendarEntries.Of(task.Task, new(day, day))])));
        if (!told.IsTold)
            return;
        if (SeasonEdges.Next(task.Evaluation, day) is { } end)
            plan.SeasonEnds[(task.Task.Id, person)] = end.Day.PlusDays(-1);
        if (!known)
        {
            plan.Announced.Add(new()
            {
                TaskId = task.Task.Id,
                PersonId = person,
                FirstDay = day,
                LastDay = day,
                MessageKey = told.MessageKey,
                AnnouncedAt = night.Now,
            });
        }
    }

    public static string KeyOf(Guid task, LocalDate day, Guid lead) => $"reminder:{task}:{day:R}:{lead}";

    /// <returns>The day that a key of <see cref="KeyOf"/> is of; null for another key.</returns>
    public static LocalDate? DayOf(string key) =>
        key.Split(':') is ["reminder", _, var day, _]
        && LocalDatePattern.Iso.Parse(day) is { Success: true, Value: var of }
            ? of
            : null;
}

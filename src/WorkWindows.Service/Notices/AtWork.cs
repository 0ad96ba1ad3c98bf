namespace WorkWindows.Service.Notices;

/// <summary>
/// Keeps whoever is at work today, or should be, among those who are told when the day closes, though nobody named the
/// day to them: they were booked this morning, or went by themselves.
/// </summary>
internal static class AtWork
{
    public static void Plan(Night night, NightPlan plan)
    {
        var standing = plan.Standing(night);
        foreach (var task in night.Tasks)
        {
            foreach (var person in task.AtWork())
            {
                if (!task.IsWorkable(task.Today))
                    Stop(night, plan, task, person);
                else if (!standing.Any(window => window.TaskId == task.Task.Id && window.PersonId == person
                    && window.FirstDay <= task.Today && window.LastDay >= task.Today))
                {
                    plan.Announced.Add(new()
                    {
                        TaskId = task.Task.Id,
                        PersonId = person,
                        FirstDay = task.Today,
                        LastDay = task.Today,
                        AnnouncedAt = night.Now,
                    });
                }
            }
        }
    }

    private static void Stop(Night night, NightPlan plan, TaskTonight task, Guid person)
    {
        if (Knows(night, plan, task, person))
            return;
        var key = $"stop-work:{task.Task.Id}:{task.Today:R}:{person}";
        plan.Tell(night, person, NoticeKinds.StopWork, key, recipient => new(
            key, NoticeKinds.StopWork, recipient,
            StopWorkNotice.AtWork(night, task, recipient.Wishes.Scale), Calendar: null));
        plan.ToldToStop.Add((task.Task.Id, person));
    }

    /// <summary>Whoever was told to stop, or not to start and has not gone all the same.</summary>
    private static bool Knows(Night night, NightPlan plan, TaskTonight task, Guid person)
    {
        var reminder = Reminders.KeyOf(task.Task.Id, task.Today, person);
        return plan.ToldToStop.Contains((task.Task.Id, person))
            || night.ToldToStop.Contains((task.Task.Id, person, task.Today))
            || (night.Written.Contains(reminder) && !plan.Dropped.Contains(reminder) && !task.OnSite.Contains(person));
    }
}

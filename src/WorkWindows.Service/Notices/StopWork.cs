using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Notices.Calendars;

namespace WorkWindows.Service.Notices;

/// <summary>Takes back days that people were told of and that can no longer be worked.</summary>
internal static class StopWork
{
    public static void Plan(Night night, NightPlan plan)
    {
        var tasks = night.Tasks.ToDictionary(task => task.Task.Id);
        // Work that is done needs no stopping.
        plan.Stopped.AddRange(night.Announced.Where(window => !tasks.ContainsKey(window.TaskId)));
        var broken = night.Announced.Where(window => tasks.TryGetValue(window.TaskId, out var task)
            && DaysLeft(task, window).Any(day => !task.IsWorkable(day))).ToList();
        foreach (var window in broken)
            Drop(night, plan, window, tasks[window.TaskId]);
        var told = broken.Where(window => MayHaveBeenTold(night, window));
        foreach (var windows in told.ToLookup(window => window.TaskId))
            Stop(night, plan, tasks[windows.Key], [.. windows]);
        plan.Stopped.AddRange(broken.Except(plan.Stopped).ToList());
        TakeUpAgain(night, plan);
    }

    /// <summary>A message that still waits must not arrive after its days were taken back.</summary>
    private static void Drop(Night night, NightPlan plan, Announcement window, TaskTonight task)
    {
        var reminders = DaysLeft(task, window).Where(day => !task.IsWorkable(day))
            .Select(day => Reminders.KeyOf(task.Task.Id, day, window.PersonId));
        plan.Dropped.UnionWith(reminders.Append(window.MessageKey).OfType<string>().Where(night.Waiting.ContainsKey));
    }

    /// <summary>Nobody is woken to be told that a day which nobody named is not good.</summary>
    private static bool MayHaveBeenTold(Night night, Announcement window) =>
        window.MessageKey is not { } key || !night.Waiting.TryGetValue(key, out var mayHaveLeft) || mayHaveLeft;

    /// <summary>What else a dropped message named has not been told either, and is news again.</summary>
    private static void TakeUpAgain(Night night, NightPlan plan) => plan.Stopped.AddRange(night.Announced
        .Where(window => window.MessageKey is { } key && plan.Dropped.Contains(key)).Except(plan.Stopped).ToList());

    private static void Stop(Night night, NightPlan plan, TaskTonight task, List<Announcement> broken)
    {
        var days = broken.SelectMany(window => DaysLeft(task, window)).Distinct().Order().ToList();
        var withdrawn = days.Where(day => !task.IsWorkable(day)).ToList();
        var standing = Runs(days.Where(task.IsWorkable));
        var people = broken.Select(window => window.PersonId);
        if (task.Task.CrewLeadId is { } lead && task.Booked.Count == 0)
            people = people.Append(lead);
        people = people.Concat(withdrawn.Where(task.IsScheduledOn).SelectMany(task.CrewOn));
        foreach (var person in people.Distinct())
        {
            var own = broken.Where(window => window.PersonId == person).ToList();
            var key = $"stop-work:{(own.FirstOrDefault() ?? broken[0]).Id}:{person}";
            plan.Tell(night, person, NoticeKinds.StopWork, key, recipient => new(
                key, NoticeKinds.StopWork, recipient,
                StopWorkNotice.Of(night, task, withdrawn, standing, recipient.Wishes.Scale),
                own.Count == 0 ? null : Cancelled(task, own)));
            plan.ToldToStop.Add((task.Task.Id, person));
        }
        plan.Stopped.AddRange(broken);
        plan.Announced.AddRange(broken.SelectMany(window => StillStanding(night, task, window)));
    }

    /// <summary>The notice names the days that still stand, so that they count as told.</summary>
    private static IEnumerable<Announcement> StillStanding(Night night, TaskTonight task, Announcement window) =>
        Runs(DaysLeft(task, window).Where(task.IsWorkable)).Select(run => new Announcement
        {
            TaskId = window.TaskId,
            PersonId = window.PersonId,
            FirstDay = run.First,
            LastDay = run.Last,
            AnnouncedAt = night.Now,
        });

    private static CalendarDraft Cancelled(TaskTonight task, IEnumerable<Announcement> windows) => new(
        IsCancelled: true,
        [.. windows.Select(window => CalendarEntries.Of(task.Task, new(window.FirstDay, window.LastDay)))]);

    private static IEnumerable<LocalDate> DaysLeft(TaskTonight task, Announcement window)
    {
        for (var day = LocalDate.Max(window.FirstDay, task.Today); day <= window.LastDay; day = day.PlusDays(1))
            yield return day;
    }

    /// <summary>Days in ascending order as runs of consecutive ones.</summary>
    internal static List<Window> Runs(IEnumerable<LocalDate> ascending)
    {
        var runs = new List<Window>();
        foreach (var day in ascending)
        {
            if (runs.Count > 0 && runs[^1].Last.PlusDays(1) == day)
                runs[^1] = runs[^1] with { Last = day };
            else
                runs.Add(new(day, day));
        }
        return runs;
    }
}

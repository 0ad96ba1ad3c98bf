using NodaTime;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Notices;

/// <summary>Takes back days that people were told of and that can no longer be worked.</summary>
internal static class StopWork
{
    public static void Plan(Night night, NightPlan plan)
    {
        var tasks = night.Tasks.ToDictionary(task => task.Task.Id);
        // Work that is done needs no stopping.
        plan.Stopped.AddRange(night.Announced.Where(window => !tasks.ContainsKey(window.TaskId)));
        foreach (var windows in night.Announced.Where(window => tasks.ContainsKey(window.TaskId))
            .ToLookup(window => window.TaskId))
        {
            var task = tasks[windows.Key];
            var broken = windows.Where(window => DaysLeft(task, window).Any(day => !task.IsWorkable(day))).ToList();
            if (broken.Count > 0)
                Stop(night, plan, task, broken);
        }
    }

    private static void Stop(Night night, NightPlan plan, TaskTonight task, List<Announcement> broken)
    {
        var days = broken.SelectMany(window => DaysLeft(task, window)).Distinct().Order().ToList();
        var withdrawn = days.Where(day => !task.IsWorkable(day)).ToList();
        var standing = Runs(days.Where(task.IsWorkable));
        var people = broken.Select(window => window.PersonId);
        if (task.Task.CrewLeadId is { } lead)
            people = people.Append(lead);
        foreach (var person in people.Distinct())
        {
            var own = broken.Where(window => window.PersonId == person).ToList();
            var key = $"stop-work:{(own.FirstOrDefault() ?? broken[0]).Id}:{person}";
            plan.Tell(night, person, key, recipient => new(
                key, NoticeKinds.StopWork, recipient, StopWorkNotice.Of(night, task, withdrawn, standing),
                own.Count == 0 ? null : Cancelled(task, own)));
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
        [.. windows.Select(window => CalendarEntries.Of(task, new(window.FirstDay, window.LastDay)))]);

    private static IEnumerable<LocalDate> DaysLeft(TaskTonight task, Announcement window)
    {
        for (var day = LocalDate.Max(window.FirstDay, task.Today); day <= window.LastDay; day = day.PlusDays(1))
            yield return day;
    }

    private static List<Window> Runs(IEnumerable<LocalDate> ascending)
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

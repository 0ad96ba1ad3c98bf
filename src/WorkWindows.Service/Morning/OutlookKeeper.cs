using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Seasons;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Morning;

/// <summary>Keeps what a look at tasks found, beside what was found the day before.</summary>
public sealed class OutlookKeeper(WorkWindowsDb db)
{
    /// <summary>The caller saves.</summary>
    public async Task KeepAsync(Instant now, IReadOnlyCollection<TaskTonight> tasks, CancellationToken cancellation)
    {
        var ids = tasks.Select(task => task.Task.Id).ToList();
        var kept = await db.TaskOutlooks.Where(outlook => ids.Contains(outlook.TaskId))
            .ToDictionaryAsync(outlook => outlook.TaskId, cancellation);
        foreach (var task in tasks)
        {
            var days = Enumerable.Range(0, TaskOutlook.Days).Select(task.Today.PlusDays)
                .Select(day => Explanation.Of(task.Evaluation, day)).ToList();
            var outlook = kept.GetValueOrDefault(task.Task.Id);
            if (outlook is null)
                db.Add(outlook = new() { TaskId = task.Task.Id, SeenAt = now, FirstDay = task.Today, States = "", Why = [] });
            else if (outlook.FirstDay < task.Today)
                (outlook.BeforeFirstDay, outlook.BeforeStates) = (outlook.FirstDay, outlook.States);
            (outlook.SeenAt, outlook.FirstDay) = (now, task.Today);
            outlook.States = TaskOutlook.Written(days.Select(day => day.State));
            outlook.Why = [.. days.Select(Why)];
            (outlook.LastDay, outlook.ClosedBy) = SeasonEnd(task);
        }
    }

    private static string Why(Explanation day) => day.State switch
    {
        DayState.Open => "",
        DayState.Limited => string.Join("; ", day.Deciding.Select(verdict => verdict.Rule.Title).Distinct()),
        _ => OutlookWords.Why(day),
    };

    private static (LocalDate? LastDay, string? ClosedBy) SeasonEnd(TaskTonight task) =>
        !SeasonEdges.IsClosed(task.Evaluation, task.Today) && SeasonEdges.Next(task.Evaluation, task.Today) is { } end
            ? (end.Day.PlusDays(-1), end.Rule.Title)
            : (null, null);
}

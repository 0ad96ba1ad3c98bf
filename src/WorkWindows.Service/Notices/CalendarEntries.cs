using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Notices;

internal static class CalendarEntries
{
    public static CalendarEntry Of(TaskTonight task, Window run) => new(
        task.Task.Id, run.First, run.Last, task.Task.Practice.Name,
        $"{task.Task.PropertyName}, {task.Task.ParcelName}");
}

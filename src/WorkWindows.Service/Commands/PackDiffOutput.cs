using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Commands;

/// <summary>The changes of tasks' days as two tables, or as plain data for JSON.</summary>
internal static class PackDiffOutput
{
    public static void Write(TextWriter output, IReadOnlyList<TaskDiff> tasks, DaySpan days)
    {
        var changed = tasks.Where(task => task.Changes.Count > 0).ToArray();
        if (changed.Length > 0)
        {
            Printing.Write(output, Runs(changed));
            Printing.Write(output, Totals(changed));
        }
        var changedDays = changed.Sum(task => task.Years.Sum(year => year.ChangedDays));
        output.WriteLine($"{days.First:R} to {days.Last:R}: {changed.Length} of {tasks.Count} tasks change, "
            + $"{changedDays} of {(long)days.Count * tasks.Count} days.");
    }

    public static object Plain(IReadOnlyList<TaskDiff> tasks, DaySpan days) =>
        new { From = days.First, To = days.Last, Tasks = tasks.Select(Plain) };

    private static object Plain(TaskDiff task) => new
    {
        task.Task,
        task.Parcel,
        Changes = task.Changes.Select(change => new
        {
            From = change.First,
            To = change.Last,
            change.Before,
            change.After,
            Rules = change.RuleIds,
        }),
        task.Years,
    };

    private static Spectre.Console.Table Runs(TaskDiff[] tasks)
    {
        var table = Printing.Table("task", "from", "to", "days", "before", "after", "because of");
        foreach (var task in tasks)
        {
            foreach (var change in task.Changes)
            {
                table.Add(task.Task, $"{change.First:R}", $"{change.Last:R}",
                    $"{Period.DaysBetween(change.First, change.Last) + 1}", Wording.Of(change.Before),
                    Wording.Of(change.After), string.Join(", ", change.RuleIds));
            }
        }
        return table;
    }

    private static Spectre.Console.Table Totals(TaskDiff[] tasks)
    {
        var table = Printing.Table("task", "year", "days that change", "workable before", "workable after");
        foreach (var task in tasks)
        {
            foreach (var year in task.Years)
            {
                table.Add(task.Task, $"{year.Year}", $"{year.ChangedDays}", $"{year.WorkableDaysBefore}",
                    $"{year.WorkableDaysAfter}");
            }
        }
        return table;
    }
}

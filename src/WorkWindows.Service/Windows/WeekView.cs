using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Windows;

/// <summary>Which tasks to show; a part that is null or false shows all.</summary>
public sealed record WeekFilter(Guid? Property = null, string? Practice = null, bool WorkableToday = false)
{
    public bool IsSet => Property is not null || Practice is not null || WorkableToday;
}

/// <summary>A choice of the filter.</summary>
public sealed record Choice(string Value, string Text);

/// <summary>The tasks of all visible properties on the next ten days.</summary>
public sealed record WeekView(
    string Summary,
    IReadOnlyList<DayCell> Days,
    IReadOnlyList<PropertyWeek> Properties,
    IReadOnlyList<Choice> PropertyChoices,
    IReadOnlyList<Choice> PracticeChoices,
    bool HasTasks)
{
    public const int DaysShown = 10;

    /// <summary>The days that an outlook looks at: the next opening may be most of a year away.</summary>
    public static DaySpan Horizon(LocalDate today) => new(today, 366);

    /// <summary>Arranges evaluated tasks; those that are done are left out.</summary>
    /// <param name="tasks">In the order of property, parcel and key, evaluated over the horizon.</param>
    /// <param name="today">The first day shown.</param>
    /// <param name="filter">What to leave out.</param>
    public static WeekView Of(IEnumerable<EvaluatedTask> tasks, LocalDate today, WeekFilter filter)
    {
        var days = new DaySpan(today, DaysShown);
        var pending = tasks.Where(task => task.Task.CompletedOn is null).ToArray();
        var shown = pending
            .Where(task => filter.Property is not { } property || task.Task.PropertyId == property)
            .Where(task => filter.Practice is not { } practice || task.Task.Practice.Id == practice)
            .Select(task => TaskWeek.Of(task, days))
            .Where(task => !filter.WorkableToday || (task.Cells[0].IsWorkable && task.WaitsFor is null))
            .ToArray();
        var ready = shown.Where(task => task.WaitsFor is null).ToArray();
        return new(
            WeekSummary.Of([.. ready.Select(task => task.Cells)], shown.Length - ready.Length),
            shown.FirstOrDefault()?.Cells ?? [],
            [.. shown.GroupBy(task => (task.PropertyId, task.PropertyName))
                .Select(group => new PropertyWeek(group.Key.PropertyId, group.Key.PropertyName, [.. group]))],
            [.. pending.Select(task => new Choice($"{task.Task.PropertyId}", task.Task.PropertyName)).Distinct()],
            [.. pending.Select(task => new Choice(task.Task.Practice.Id, task.Task.Practice.Name)).Distinct()
                .OrderBy(choice => choice.Text, StringComparer.Ordinal)],
            pending.Length > 0);
    }
}

/// <summary>The tasks of one property.</summary>
public sealed record PropertyWeek(Guid Id, string Name, IReadOnlyList<TaskWeek> Tasks);

/// <summary>One task on the next ten days.</summary>
public sealed record TaskWeek(
    Guid Id, Guid ParcelId, Guid PropertyId, string PropertyName, string Practice, string Place, string Outlook,
    string? Scheduled, string? WaitsFor, IReadOnlyList<DayCell> Cells)
{
    public static TaskWeek Of(EvaluatedTask evaluated, DaySpan days)
    {
        var task = evaluated.Task;
        return new(
            task.Id, task.ParcelId, task.PropertyId, task.PropertyName, task.Practice.Name, TaskWords.Place(task),
            OutlookWords.Of(evaluated.Evaluation, days.First), ScheduledIn(evaluated, days.First),
            TaskWords.WaitsFor(task, days.First), DayCell.Of(evaluated, days, days.First, null));
    }

    private static string? ScheduledIn(EvaluatedTask evaluated, LocalDate today)
    {
        if (evaluated.Task.ScheduledOn is not { } day)
            return null;
        var state = day >= today && evaluated.Evaluation.Span.Contains(day)
            ? $": {Wording.Of(evaluated.Evaluation[day])}"
            : "";
        return $"Scheduled {DayWords.Of(day, today)}{state}";
    }
}

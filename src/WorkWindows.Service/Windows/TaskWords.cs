using System.Globalization;
using NodaTime;

namespace WorkWindows.Service.Windows;

/// <summary>What a task is, in a few words.</summary>
public static class TaskWords
{
    /// <summary>As in 'Hinge cut, Beech Ridge'.</summary>
    public static string Title(TaskSummary task) => $"{task.Practice.Name}, {task.ParcelName}";

    /// <summary>What must be done first, as in 'Waits for: Hinge cut.'; null when nothing must.</summary>
    public static string? WaitsFor(TaskSummary task) => task.WaitsFor.Count == 0
        ? null
        : $"Waits for: {string.Join(", ", task.WaitsFor)}. It is not recorded as done.";

    /// <summary>What stands between today and the work besides its days: what comes first, or its own first day.</summary>
    public static string? WaitsFor(TaskSummary task, LocalDate today) => WaitsFor(task)
        ?? (task.NotBefore > today ? $"Not before {DayWords.WithYear(task.NotBefore.Value)}." : null);

    /// <summary>As in 'Beech Ridge, 4.5 acres'.</summary>
    public static string Place(TaskSummary task) =>
        task.Quantity is { } quantity
            ? $"{task.ParcelName}, {quantity.ToString("0.##", CultureInfo.InvariantCulture)} {task.QuantityUnit}"
            : task.ParcelName;
}

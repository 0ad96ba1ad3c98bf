using System.Globalization;

namespace WorkWindows.Service.Windows;

/// <summary>What a task is, in a few words.</summary>
public static class TaskWords
{
    /// <summary>As in 'Hinge cut, Beech Ridge'.</summary>
    public static string Title(TaskSummary task) => $"{task.Practice.Name}, {task.ParcelName}";

    /// <summary>As in 'Beech Ridge, 4.5 acres'.</summary>
    public static string Place(TaskSummary task) =>
        task.Quantity is { } quantity
            ? $"{task.ParcelName}, {quantity.ToString("0.##", CultureInfo.InvariantCulture)} {task.QuantityUnit}"
            : task.ParcelName;
}

using NodaTime;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Windows;

/// <summary>The week in one sentence.</summary>
public static class WeekSummary
{
    /// <param name="tasks">The cells of each task that waits for no other, today first.</param>
    /// <param name="waiting">How many tasks wait for others.</param>
    public static string Of(IReadOnlyList<IReadOnlyList<DayCell>> tasks, int waiting = 0)
    {
        if (tasks.Count + waiting == 0)
            return "No task to show.";
        var today = tasks.Count(cells => cells[0].IsWorkable);
        var later = tasks.Where(cells => !cells[0].IsWorkable)
            .Select(cells => cells.FirstOrDefault(cell => cell.IsWorkable)?.Day)
            .OfType<LocalDate>().ToArray();
        var unknown = tasks.Count(cells => cells[0].State == DayState.Unknown);
        return $"{Today(today, tasks.Count + waiting)}{Later(later, today)}.{Unknown(unknown)}{Waiting(waiting)}";
    }

    private static string Today(int count, int all) => (count, all) switch
    {
        (0, _) => "No task may be done today",
        (1, 1) => "The task may be done today",
        _ when count == all => $"All {count} tasks may be done today",
        _ => $"{count} of {all} tasks may be done today",
    };

    private static string Later(LocalDate[] days, int today) => days.Length == 0
        ? ""
        : $", {days.Length}{(today > 0 ? " more" : "")} by {DayWords.Of(days.Max())}";

    private static string Waiting(int count) => count switch
    {
        0 => "",
        1 => " 1 waits for other work.",
        _ => $" {count} wait for other work.",
    };

    private static string Unknown(int count) => count switch
    {
        0 => "",
        1 => " For 1, something is not known: do not start it.",
        _ => $" For {count}, something is not known: do not start them.",
    };
}

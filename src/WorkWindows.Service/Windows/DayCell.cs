using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Windows;

/// <summary>One day of one task, as a link to its reasons.</summary>
/// <param name="Day">The day.</param>
/// <param name="State">What may be done.</param>
/// <param name="IsScheduled">The task is meant to be done on it.</param>
/// <param name="IsToday">It is the day that it is.</param>
/// <param name="IsCurrent">It is told to those who hear the page: the day that it is about, else today.</param>
/// <param name="IsViewed">The page is about it alone.</param>
/// <param name="Address">Of the page with its reasons.</param>
public sealed record DayCell(
    LocalDate Day, DayState State, bool IsScheduled, bool IsToday, bool IsCurrent, bool IsViewed, string Address)
{
    private static readonly LocalDatePattern WeekdayPattern = LocalDatePattern.CreateWithInvariantCulture("ddd");

    public string Weekday => WeekdayPattern.Format(Day);

    public string? CurrentDate => IsCurrent ? "date" : null;

    /// <summary>The names of its styles.</summary>
    public string Style =>
        $"state {Wording.Of(State)}{(IsScheduled ? " is-scheduled" : "")}{(IsViewed ? " is-viewed" : "")}";

    public bool IsWorkable => State is DayState.Open or DayState.Limited;

    /// <summary>The cell in words, for those who hear the page.</summary>
    public string Label => $"{DayWords.Of(Day)}: {Wording.Of(State)}{(IsScheduled ? ", scheduled" : "")}";

    /// <summary>The cells of consecutive days.</summary>
    /// <param name="task">Whose days they are.</param>
    /// <param name="days">The days.</param>
    /// <param name="today">The day that it is.</param>
    /// <param name="viewed">The one day that the page is about; null where it is about all of them.</param>
    /// <exception cref="ArgumentOutOfRangeException">A day lies outside the evaluation's span.</exception>
    public static IReadOnlyList<DayCell> Of(EvaluatedTask task, DaySpan days, LocalDate today, LocalDate? viewed) =>
    [
        .. Enumerable.Range(0, days.Count).Select(index => days[index]).Select(day => new DayCell(
            day, task.Evaluation[day], day == task.Task.ScheduledOn, day == today, day == (viewed ?? today),
            day == viewed, DayWords.AddressOf(task.Task.Id, day))),
    ];
}

using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Windows;

/// <summary>One day of one task, as a link to its reasons.</summary>
public sealed record DayCell(LocalDate Day, DayState State, bool IsScheduled, bool IsToday, string Address)
{
    private static readonly LocalDatePattern WeekdayPattern = LocalDatePattern.CreateWithInvariantCulture("ddd");

    public string Weekday => WeekdayPattern.Format(Day);

    public string? CurrentDate => IsToday ? "date" : null;

    /// <summary>The names of its styles.</summary>
    public string Style => $"state {Wording.Of(State)}{(IsScheduled ? " is-scheduled" : "")}";

    public bool IsWorkable => State is DayState.Open or DayState.Limited;

    /// <summary>The cell in words, for those who hear the page.</summary>
    public string Label => $"{DayWords.Of(Day)}: {Wording.Of(State)}{(IsScheduled ? ", scheduled" : "")}";

    /// <summary>The cells of consecutive days.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A day lies outside the evaluation's span.</exception>
    public static IReadOnlyList<DayCell> Of(EvaluatedTask task, DaySpan days, LocalDate today) =>
    [
        .. Enumerable.Range(0, days.Count).Select(index => days[index]).Select(day => new DayCell(
            day, task.Evaluation[day], day == task.Task.ScheduledOn, day == today,
            DayWords.AddressOf(task.Task.Id, day))),
    ];
}

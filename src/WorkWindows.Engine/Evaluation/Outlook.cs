using NodaTime;

namespace WorkWindows.Engine.Evaluation;

/// <summary>Where a task stands on a day: may it be done, until when, and when next.</summary>
/// <param name="Today">The state of the day.</param>
/// <param name="Current">The window that the day lies in, or null.</param>
/// <param name="Next">The next window that begins after the day and after the current window, or null.</param>
/// <param name="MayOpen">
/// The first later day that no rule closes but whose inputs are not all known, when it comes before the next window;
/// null otherwise. A forecast or a reading must decide it.
/// </param>
public sealed record Outlook(DayState Today, Window? Current, Window? Next, LocalDate? MayOpen)
{
    /// <exception cref="ArgumentOutOfRangeException">The day lies outside the evaluation's span.</exception>
    public static Outlook Of(TaskEvaluation evaluation, LocalDate today)
    {
        var windows = evaluation.Windows(evaluation.Span).ToArray();
        var current = Array.Find(windows, window => window.First <= today && today <= window.Last);
        var next = Array.Find(windows, window => window.First > (current?.Last ?? today));
        var mayOpen = evaluation.Unknown.FirstFrom(evaluation.IndexOf(current?.Last ?? today) + 1) is { } day
            ? evaluation.Span[day]
            : (LocalDate?)null;
        return new(evaluation[today], current, next, next is null || mayOpen < next.First ? mayOpen : null);
    }
}

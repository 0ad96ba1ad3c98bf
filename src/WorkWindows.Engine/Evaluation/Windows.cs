using NodaTime;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Evaluation;

/// <summary>Windows, runs and outlooks read off an evaluation.</summary>
public static class Windows
{
    /// <summary>The windows that touch the given days, cut off at their ends, ascending.</summary>
    public static IEnumerable<Window> Within(TaskEvaluation evaluation, DaySpan days) =>
        evaluation.Runs(days, evaluation.Workable).Select(run => new Window(run.First, run.Last));

    /// <summary>The runs of equal state over the given days, ascending and without gaps.</summary>
    public static IEnumerable<StateRun> Runs(TaskEvaluation evaluation, DaySpan days)
    {
        var start = 0;
        for (var day = 1; day <= days.Count; day++)
        {
            if (day < days.Count && evaluation[days[day]] == evaluation[days[start]])
                continue;
            yield return new(evaluation[days[start]], days[start], days[day - 1]);
            start = day;
        }
    }

    /// <summary>Where the task stands on a day of the evaluation's span.</summary>
    public static Outlook On(TaskEvaluation evaluation, LocalDate today)
    {
        var windows = Within(evaluation, evaluation.Span).ToArray();
        var current = Array.Find(windows, window => window.First <= today && today <= window.Last);
        var next = Array.Find(windows, window => window.First > (current?.Last ?? today));
        var mayOpen = evaluation.Unknown.FirstFrom(evaluation.IndexOf(current?.Last ?? today) + 1) is { } day
            ? evaluation.Span[day]
            : (LocalDate?)null;
        return new(evaluation[today], current, next, next is null || mayOpen < next.First ? mayOpen : null);
    }

    private static IEnumerable<(LocalDate First, LocalDate Last)> Runs(
        this TaskEvaluation evaluation, DaySpan days, DayBits set)
    {
        var offset = evaluation.IndexOf(days.First);
        _ = evaluation.IndexOf(days.Last);
        return set.Slice(offset, days.Count).Runs().Select(run => (days[run.First], days[run.Last]));
    }
}

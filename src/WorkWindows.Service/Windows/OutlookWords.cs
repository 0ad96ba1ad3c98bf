using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Windows;

/// <summary>Where a task stands, in a line.</summary>
public static class OutlookWords
{
    /// <returns>
    /// Such as 'Open until Thu 30 Apr, then closed: …', 'Workable, limited, until Thu 30 Apr, then closed: …',
    /// 'Opens Mon 25 Jan' or 'May open Sat 28 Nov, not known yet: gusts'.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The day lies outside the evaluation's span.</exception>
    public static string Of(TaskEvaluation evaluation, LocalDate today)
    {
        var outlook = Outlook.Of(evaluation, today);
        if (outlook.Current is { } current)
            return Until(evaluation, current, today);
        if (outlook.Today == DayState.Unknown)
            return $"Not known today: {Missing(Explanation.Of(evaluation, today))}";
        if (outlook.MayOpen is { } mayOpen)
            return $"May open {DayWords.Of(mayOpen, today)}, {Why(Explanation.Of(evaluation, mayOpen))}";
        return outlook.Next is { } next
            ? $"Opens {DayWords.Of(next.First, today)}"
            : $"Does not open before {DayWords.Of(evaluation.Span.Last, today)}";
    }

    private static string Until(TaskEvaluation evaluation, Window window, LocalDate today)
    {
        var last = DayWords.Of(window.Last, today);
        var after = window.Last.PlusDays(1);
        var doable = Doable(evaluation, DaySpan.Between(LocalDate.Max(window.First, today), window.Last));
        if (!evaluation.Span.Contains(after))
            return $"{doable} past {last}";
        return $"{doable} until {last}, then {Why(Explanation.Of(evaluation, after))}";
    }

    /// <summary>How the rest of a window may be worked in; 'Open' is said of days without a limit alone.</summary>
    private static string Doable(TaskEvaluation evaluation, DaySpan days)
    {
        var states = Enumerable.Range(0, days.Count).Select(index => evaluation[days[index]]).ToHashSet();
        return !states.Contains(DayState.Limited) ? "Open"
            : !states.Contains(DayState.Open) ? "Workable, limited,"
            : "Open or limited";
    }

    /// <summary>Why a day is not workable, as in 'closed: …' or 'not known yet: gusts'.</summary>
    public static string Why(Explanation explanation) => explanation.State == DayState.Unknown
        ? $"not known yet: {Missing(explanation)}"
        : $"closed: {string.Join("; ", explanation.Deciding.Select(verdict => verdict.Rule.Title).Distinct())}";

    /// <summary>What is not known of an unknown day, as in 'sustained wind, gusts'.</summary>
    public static string Missing(Explanation explanation) => string.Join(", ", Wording.Missing(explanation));
}

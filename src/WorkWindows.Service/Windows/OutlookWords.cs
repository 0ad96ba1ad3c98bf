using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Windows;

/// <summary>Where a task stands, in a line.</summary>
public static class OutlookWords
{
    private const int Named = 2;

    /// <returns>
    /// Such as 'Open until Thu 30 Apr, then closed: …', 'Workable, limited, until Thu 30 Apr, then closed: …',
    /// 'Closed: …. Opens Mon 25 Jan' or 'Closed: …. May open Sat 28 Nov, not known yet: gusts'.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The day lies outside the evaluation's span.</exception>
    public static string Of(TaskEvaluation evaluation, LocalDate today)
    {
        var outlook = Outlook.Of(evaluation, today);
        if (outlook.Current is { } current)
            return Until(evaluation, current, today);
        if (outlook.Today == DayState.Unknown)
            return $"Not known today: {Few(Explanation.Of(evaluation, today))}";
        var closed = $"Closed: {Titles(Explanation.Of(evaluation, today))}.";
        if (outlook.MayOpen is { } mayOpen)
            return $"{closed} May open {DayWords.Of(mayOpen, today)}, {Why(Explanation.Of(evaluation, mayOpen))}";
        return outlook.Next is { } next
            ? $"{closed} Opens {DayWords.Of(next.First, today)}"
            : $"{closed} Does not open before {DayWords.Of(evaluation.Span.Last, today)}";
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
        ? $"not known yet: {Few(explanation)}"
        : $"closed: {Titles(explanation)}";

    private static string Titles(Explanation explanation) =>
        string.Join("; ", explanation.Deciding.Select(verdict => verdict.Rule.Title).Distinct());

    /// <summary>The first of what is not known, and how much more there is: the page of the day names it all.</summary>
    internal static string Few(Explanation explanation)
    {
        var missing = Wording.Missing(explanation).ToArray();
        return missing.Length <= Named + 1
            ? string.Join(", ", missing)
            : $"{string.Join(", ", missing.Take(Named))} and {missing.Length - Named} more";
    }

    /// <summary>What is not known of an unknown day, as in 'sustained wind, gusts'.</summary>
    public static string Missing(Explanation explanation) => string.Join(", ", Wording.Missing(explanation));
}

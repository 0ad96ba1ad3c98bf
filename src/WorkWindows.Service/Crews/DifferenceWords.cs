using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Planning.Differences;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>What differs from one plan to the next, in a sentence that says why where a day closed.</summary>
internal static class DifferenceWords
{
    /// <summary>As in 'Hinge cut, Beech Ridge, North Forty: moved two days later, to Sat 6 Feb: Thu 4 Feb is closed: gusts above 25 mph.'</summary>
    public static string Of(PlanDifference difference, PlanInput input)
    {
        var title = PlanWords.Title(difference.TaskId, input);
        var crew = difference.CrewAfter is { } id ? input.Crews[Guid.Parse(id)].Name : null;
        var says = difference.Change switch
        {
            PlanChange.Added => $"new, {crew}, {Days(difference.After)}",
            PlanChange.Dropped => $"off the board, was {Days(difference.Before)}",
            PlanChange.Moved => Moved(difference),
            PlanChange.OtherCrew => $"goes to {crew}, on the same days",
            PlanChange.Rearranged => $"the same days, {Days(difference.After)}, with other hours or people",
            PlanChange.MovedToOtherCrew => $"goes to {crew}, {Moved(difference)}",
        };
        return $"{title}: {says}{Because(difference, input)}.";
    }

    private static string Moved(PlanDifference difference) => difference.DaysLater switch
    {
        0 => $"begins on the same day, now {Days(difference.After)} instead of {Days(difference.Before)}",
        > 0 and var days => $"moved {DayWords.Count(days, "day", "days")} later, from {Days(difference.Before)} to {Days(difference.After)}",
        var days => $"moved {DayWords.Count(-days, "day", "days")} earlier, from {Days(difference.Before)} to {Days(difference.After)}",
    };

    /// <summary>What closed the first of its days that is closed now; nothing where its days could be worked still.</summary>
    private static string Because(PlanDifference difference, PlanInput input)
    {
        if (!input.Tasks.TryGetValue(Guid.Parse(difference.TaskId), out var task))
            return "";
        var evaluation = task.Evaluated().Evaluation;
        foreach (var day in difference.Left.Where(evaluation.Span.Contains))
        {
            if (evaluation[day] == DayState.Closed)
                return $": {DayWords.Of(day)} is {OutlookWords.Why(Explanation.Of(evaluation, day))}";
        }
        return "";
    }

    private static string Days(IReadOnlyList<LocalDate> days) => days.Count == 1
        ? DayWords.Of(days[0])
        : $"{DayWords.Of(days[0])} to {DayWords.Of(days[^1])} ({days.Count} days)";
}

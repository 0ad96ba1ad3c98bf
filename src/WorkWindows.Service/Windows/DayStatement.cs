using NodaTime;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Windows;

/// <summary>A day's state as it is said to people.</summary>
/// <param name="State">The state.</param>
/// <param name="Headline">One short sentence.</param>
/// <param name="Reasons">Why, or under which measures, a sentence each.</param>
public sealed record DayStatement(DayState State, string Headline, IReadOnlyList<string> Reasons)
{
    public static DayStatement Of(Explanation explanation, LocalDate today)
    {
        var when = explanation.Day == today ? "today" : $"on {DayWords.Of(explanation.Day, today)}";
        return explanation.State switch
        {
            DayState.Open => new(explanation.State, $"Open {when}", ["No rule stands against the work."]),
            DayState.Limited => new(explanation.State, $"Limited {when}: only with these measures",
                [.. explanation.Deciding.Select(verdict => Wording.Lifted(verdict) ?? verdict.Rule.Measure)
                    .OfType<string>().Distinct()]),
            DayState.Unknown => new(explanation.State, $"Not known {when}: do not start",
            [
                $"Not known: {OutlookWords.Missing(explanation)}. "
                    + "Without it a rule that may close the day cannot be checked.",
            ]),
            DayState.Closed => new(explanation.State, $"Closed {when}",
                [.. explanation.Deciding.Select(verdict => verdict.Rule.Because).Distinct()]),
        };
    }
}

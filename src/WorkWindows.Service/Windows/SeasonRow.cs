using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Windows;

/// <summary>A window, or a run of days that may become one, as a line of the season's table.</summary>
/// <param name="From">The first day.</param>
/// <param name="To">The last day, included.</param>
/// <param name="IsWorkable">A window, and not a run of unknown days.</param>
/// <param name="Days">How many days of which state.</param>
/// <param name="Note">What comes after a window, or what is not known.</param>
public sealed record SeasonRow(LocalDate From, LocalDate To, bool IsWorkable, string Days, string Note)
{
    /// <returns>In the order of the days.</returns>
    public static IReadOnlyList<SeasonRow> Of(TaskSeason season, TaskEvaluation evaluation) =>
    [
        .. season.Windows.Select(window => new SeasonRow(
                window.From, window.To, true, DaysOf(window), After(evaluation, window.To)))
            .Concat(season.NotKnown.Select(run => new SeasonRow(
                run.From, run.To, false,
                $"{DayWords.Count(DaySpan.Between(run.From, run.To).Count, "day", "days")} unknown",
                $"not known: {string.Join(", ", run.Missing)}")))
            .OrderBy(row => row.From),
    ];

    private static string DaysOf(WindowRun window) => (window.OpenDays, window.LimitedDays) switch
    {
        (var open, 0) => $"{DayWords.Count(open, "day", "days")} open",
        (0, var limited) => $"{DayWords.Count(limited, "day", "days")} limited",
        var (open, limited) => $"{DayWords.Count(open, "day", "days")} open, {limited} limited",
    };

    private static string After(TaskEvaluation evaluation, LocalDate last) =>
        evaluation.Span.Contains(last.PlusDays(1))
            ? $"then {OutlookWords.Why(Explanation.Of(evaluation, last.PlusDays(1)))}"
            : "the last of the days shown";
}

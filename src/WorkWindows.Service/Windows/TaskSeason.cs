using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Service.Windows;

/// <summary>What an evaluation says of a span of days, as it is told to people and programs.</summary>
/// <param name="From">The first day.</param>
/// <param name="To">The last day, included.</param>
/// <param name="Days">How many days have each state.</param>
/// <param name="Windows">The runs of workable days.</param>
/// <param name="NotKnown">The runs of days that no rule closes, but whose inputs are not all known.</param>
/// <param name="LeafOut">The leaf-out of each year that can be told.</param>
public sealed record TaskSeason(
    LocalDate From,
    LocalDate To,
    DayCounts Days,
    IReadOnlyList<WindowRun> Windows,
    IReadOnlyList<UnknownRun> NotKnown,
    IReadOnlyList<SeasonEvent> LeafOut)
{
    public static TaskSeason Of(TaskEvaluation evaluation, DaySpan days)
    {
        var states = Enumerable.Range(0, days.Count).Select(day => evaluation[days[day]]).ToArray();
        return new(
            days.First,
            days.Last,
            new(Count(DayState.Open), Count(DayState.Limited), Count(DayState.Unknown), Count(DayState.Closed)),
            [.. evaluation.Windows(days).Select(window => Run(evaluation, window))],
            [.. evaluation.Runs(days).Where(run => run.State == DayState.Unknown)
                .Select(run => new UnknownRun(
                    run.First, run.Last, [.. Wording.Missing(Explanation.Of(evaluation, run.First))]))],
            [.. evaluation.Signals.Events.Where(e => e.Kind == SeasonEventKind.LeafOut
                && days.First.Year <= e.Date.Year && e.Date.Year <= days.Last.Year)]);

        int Count(DayState state) => states.Count(s => s == state);
    }

    private static WindowRun Run(TaskEvaluation evaluation, Window window)
    {
        var days = DaySpan.Between(window.First, window.Last);
        var limited = Enumerable.Range(0, days.Count).Count(day => evaluation[days[day]] == DayState.Limited);
        var after = window.Last.PlusDays(1);
        return new(window.First, window.Last, days.Count - limited, limited,
            evaluation.Span.Contains(after) ? Titles(evaluation, after) : []);
    }

    private static string[] Titles(TaskEvaluation evaluation, LocalDate day) =>
        [.. Explanation.Of(evaluation, day).Deciding.Select(verdict => verdict.Rule.Title).Distinct()];
}

/// <summary>How many days of a span have each state.</summary>
public sealed record DayCounts(int Open, int Limited, int Unknown, int Closed);

/// <summary>A window.</summary>
/// <param name="From">The first day.</param>
/// <param name="To">The last day, included.</param>
/// <param name="OpenDays">How many of them are open.</param>
/// <param name="LimitedDays">How many of them are limited.</param>
/// <param name="EndedBy">The titles of the rules that decide the day after; empty at the end of the span.</param>
public sealed record WindowRun(
    LocalDate From, LocalDate To, int OpenDays, int LimitedDays, IReadOnlyList<string> EndedBy);

/// <summary>A run of days of the state unknown.</summary>
/// <param name="From">The first day.</param>
/// <param name="To">The last day, included.</param>
/// <param name="Missing">The inputs that are missing on the first day.</param>
public sealed record UnknownRun(LocalDate From, LocalDate To, IReadOnlyList<string> Missing);

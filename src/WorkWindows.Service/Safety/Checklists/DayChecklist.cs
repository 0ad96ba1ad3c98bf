using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Safety;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Safety.Checklists;

/// <summary>A task's checklist for a day, and whether the task is released for it.</summary>
/// <param name="Task">The task.</param>
/// <param name="LeadName">The name of who leads it on that day, where somebody does.</param>
/// <param name="Day">The day in the property's zone.</param>
/// <param name="Today">The day that it is there.</param>
/// <param name="KnownAt">When this was put together.</param>
/// <param name="Evaluation">Covers the day.</param>
/// <param name="Explanation">Of the day.</param>
/// <param name="Checklist">The list as it stands.</param>
/// <param name="Release">Whether a crew may begin.</param>
public sealed record DayChecklist(
    TaskSummary Task, string? LeadName, LocalDate Day, LocalDate Today, Instant KnownAt, TaskEvaluation Evaluation,
    Explanation Explanation, SafetyChecklist Checklist, Release Release)
{
    public DayStatement Statement => DayStatement.Of(Explanation, Today);

    /// <summary>The day's figures, a line each.</summary>
    public IReadOnlyList<string> Figures => DayFigures.Lines(Evaluation.Signals, Day);

    /// <summary>The days that can be signed for: a phone may have been out of reach overnight.</summary>
    public bool MayBeSigned => Day >= Today.PlusDays(-DaysBack) && Day <= Today.PlusDays(DaysAhead);

    /// <summary>
    /// Whether somebody is a consultant who may release the work in place of the crew lead that is set.
    /// </summary>
    public bool MayBeReleasedInstead(Caller caller) =>
        caller.Role == Role.Consultant && Task.LeadOn(Day) is { } lead && lead != caller.PersonId;

    public const int DaysBack = 1, DaysAhead = 7;
}

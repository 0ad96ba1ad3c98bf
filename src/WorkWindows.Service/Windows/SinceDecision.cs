using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Decisions;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Windows;

/// <summary>What is otherwise than it was decided, and why.</summary>
/// <param name="DecidedAt">When the decision was stored that said something else.</param>
/// <param name="Days">The days that are others, a sentence a run.</param>
/// <param name="Causes">Why, a sentence each.</param>
public sealed record SinceDecision(Instant DecidedAt, IReadOnlyList<string> Days, IReadOnlyList<string> Causes);

/// <summary>Compares a task with what was decided about it.</summary>
public sealed class DecisionComparison(WorkWindowsDb db)
{
    // The newest decision may be the one that already says what is so now: then the one before it tells what changed.
    private const int DecisionsLookedAt = 2;

    /// <returns>Null when nothing was decided before, or nothing else about the days evaluated.</returns>
    public Task<SinceDecision?> WithLastAsync(EvaluatedTask task, CancellationToken cancellation) =>
        FindAsync(task, task.Evaluation.Span, cancellation);

    /// <returns>Null when nothing was decided before, or nothing else about the day.</returns>
    public Task<SinceDecision?> OfDayAsync(EvaluatedTask task, LocalDate day, CancellationToken cancellation) =>
        FindAsync(task, new(day, 1), cancellation);

    private async Task<SinceDecision?> FindAsync(EvaluatedTask task, DaySpan days, CancellationToken cancellation)
    {
        var decisions = await db.Decisions.AsNoTracking().Where(decision => decision.TaskId == task.Task.Id)
            .OrderByDescending(decision => decision.EvaluatedAt).Take(DecisionsLookedAt)
            .Join(db.WeatherSnapshots, decision => decision.SnapshotHash, snapshot => snapshot.Hash,
                (decision, snapshot) => new { decision.EvaluatedAt, decision.Content, Snapshot = snapshot.Content })
            .OrderByDescending(decision => decision.EvaluatedAt)
            .ToListAsync(cancellation);
        foreach (var decision in decisions)
        {
            var difference = DecisionDifference.Between(
                decision.Content, Snapshot.Read(decision.Snapshot), task.Evaluation, days);
            if (!difference.Days.IsEmpty)
                return Of(decision.EvaluatedAt, difference, task.Evaluation);
        }
        return null;
    }

    private static SinceDecision Of(Instant decidedAt, DecisionDifference difference, TaskEvaluation evaluation)
    {
        var titles = evaluation.Rules.DistinctBy(rule => rule.Rule.Id)
            .ToDictionary(rule => rule.Rule.Id, rule => rule.Rule.Title);
        return new(
            decidedAt,
            [.. difference.Days.Select(Wording.Of)],
            [.. Wording.Causes(difference, id => titles.GetValueOrDefault(id, id))]);
    }
}

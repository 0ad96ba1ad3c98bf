using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Decisions;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Review;

/// <summary>Tells why a day was as it was.</summary>
public sealed class ReviewHandler(
    WorkWindowsDb db, VisibleTasks visible, WindowHandler windows, DecisionStore decisions, IClock clock)
{
    private const int LongestHistory = 30;

    /// <param name="taskId">The task.</param>
    /// <param name="day">The day.</param>
    /// <param name="decisionId">The decision to show; without one that which stood when the day ended.</param>
    /// <param name="compares">Whether to evaluate the day with what is known now, too, which costs a dozen queries.</param>
    /// <param name="cancellation">Ends the queries.</param>
    /// <returns>No task when the caller sees none, no review when nothing was decided about the day.</returns>
    public async Task<(ReviewedTask? Task, DayReview? Review)> ReadAsync(
        Guid taskId, LocalDate day, Guid? decisionId, bool compares, CancellationToken cancellation)
    {
        if (await ReviewedTask.Of(visible.All.Where(row => row.Id == taskId)).SingleOrDefaultAsync(cancellation)
            is not { } task)
        {
            return (null, null);
        }
        var rows = await db.Decisions.AsNoTracking()
            .Where(row => row.TaskId == taskId && row.FirstDay <= day && row.LastDay >= day)
            .OrderByDescending(row => row.EvaluatedAt).Take(LongestHistory).ToListAsync(cancellation);
        var end = DateTimeZoneProviders.Tzdb[task.TimeZone].AtStartOfDay(day.PlusDays(1)).ToInstant();
        var decision = decisionId is { } id
            ? rows.Find(row => row.Id == id)
            : rows.Find(row => row.EvaluatedAt < end) ?? rows.LastOrDefault();
        if (decision is null)
            return (task, null);
        var inputs = await decisions.InputsAsync(decision, cancellation);
        var now = compares ? await windows.EvaluateAsync(taskId, new(day, 1), cancellation) : null;
        return (task, Of(task, decision, rows, inputs, day, now?.Evaluation));
    }

    private DayReview Of(
        ReviewedTask task, Decision decision, List<Decision> rows, DecisionInputs inputs, LocalDate day,
        TaskEvaluation? now)
    {
        var stored = StoredDecision.Of(decision.Content);
        var then = inputs.Evaluation;
        var explanation = then is null ? null : Explanation.Of(then, day);
        var deciding = explanation?.Deciding.ToArray() ?? [];
        return new(
            task.Id, task.Title, task.Property, day, task.TimeZone, decision.Id, decision.EvaluatedAt, decision.Hash,
            stored.StateOn(day),
            [.. deciding.Select(verdict => RuleReason.Of(verdict, day))],
            [.. (explanation?.Verdicts ?? []).Where(verdict => verdict.Spoke || verdict.Lifting is not null)
                .Except(deciding).Select(verdict => RuleReason.Of(verdict, day))],
            [.. stored.RuleIds.Distinct().Where(rule => stored.TruthOf(rule, day) == Truth.Holds)],
            then is null ? [] : [.. KnownThings.Of(then, day, DateTimeZoneProviders.Tzdb[task.TimeZone])],
            then is null ? [] : [.. KnownThings.WeatherOf(then, day)],
            then is null ? [] : [.. KnownThings.PacksOf(then)],
            Replays.Of(decision, inputs),
            now is null ? null : SinceOf(decision, then, now, day),
            [.. rows.Select(row =>
                new Decided(row.Id, row.EvaluatedAt, StoredDecision.Of(row.Content).StateOn(day), row.Hash))],
            clock.GetCurrentInstant());
    }

    private static Since SinceOf(Decision decision, TaskEvaluation? then, TaskEvaluation now, LocalDate day)
    {
        if (then is null)
            return new(now[day], [], []);
        var difference = DecisionDifference.Between(decision.Content, then.Signals, now, new(day, 1));
        var readings =
            from kind in then.Signals.Signals.Keys.Union(now.Signals.Signals.Keys)
            let change = new ReadingChange(
                kind, day, Reading.Of(then.Signals, kind, day), Reading.Of(now.Signals, kind, day))
            where change.Before != change.After && !difference.Readings.Contains(change)
            select Wording.Of(change);
        return new(now[day], [.. Wording.Causes(difference, Replays.TitlesOf(then, now))], [.. readings]);
    }
}

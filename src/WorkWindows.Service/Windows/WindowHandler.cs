using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Windows;

/// <summary>Evaluates single tasks that the caller may see.</summary>
public sealed class WindowHandler(VisibleTasks visible, TaskEvaluator evaluator, IClock clock)
{
    /// <returns>The day it is where the task is; null when the caller sees no such task.</returns>
    public async Task<LocalDate?> TodayAsync(Guid taskId, CancellationToken cancellation)
    {
        var zone = await visible.All.Where(task => task.Id == taskId)
            .Select(task => task.Parcel.Property.TimeZone).SingleOrDefaultAsync(cancellation);
        return zone is null ? null : clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[zone]).Date;
    }

    /// <returns>All that the task's days rest on; null when the caller sees no such task.</returns>
    public async Task<TaskInput?> ReadAsync(Guid taskId, DaySpan days, CancellationToken cancellation) =>
        (await evaluator.ReadAsync(visible.All.Where(task => task.Id == taskId), days, cancellation)).SingleOrDefault();

    /// <returns>Null when the caller sees no such task.</returns>
    public async Task<EvaluatedTask?> EvaluateAsync(Guid taskId, DaySpan days, CancellationToken cancellation) =>
        (await ReadAsync(taskId, days, cancellation))?.Evaluated();

    /// <summary>The same as it was known at another time.</summary>
    /// <returns>Null when the caller sees no such task.</returns>
    public async Task<EvaluatedTask?> EvaluateAsync(
        Guid taskId, DaySpan days, KnownThen then, CancellationToken cancellation) =>
        (await evaluator.ReadAsync(visible.All.Where(task => task.Id == taskId), days, then, cancellation))
        .SingleOrDefault()?.Evaluated();

    /// <returns>What every rule says of a day; null when the caller sees no such task.</returns>
    public async Task<Explanation?> ExplainAsync(Guid taskId, LocalDate day, CancellationToken cancellation) =>
        await EvaluateAsync(taskId, new(day, 1), cancellation) is { } task
            ? Explanation.Of(task.Evaluation, day)
            : null;
}

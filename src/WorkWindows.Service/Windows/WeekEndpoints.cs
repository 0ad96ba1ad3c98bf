using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Windows;

internal static class WeekEndpoints
{
    /// <summary>Which tasks may be done on which days.</summary>
    public sealed record WeekView(LocalDate From, LocalDate To, IReadOnlyList<WeekTask> Tasks);

    /// <param name="TaskId">The task.</param>
    /// <param name="Key">The organization's own name for it.</param>
    /// <param name="Practice">The key of its practice.</param>
    /// <param name="PracticeName">The practice's name for people.</param>
    /// <param name="PropertyName">Its property.</param>
    /// <param name="ParcelName">Its parcel.</param>
    /// <param name="States">The state of each day, from the first on.</param>
    public sealed record WeekTask(
        Guid TaskId, string Key, string Practice, string PracticeName, string PropertyName, string ParcelName,
        IReadOnlyList<DayState> States);

    public static void MapWeek(this IEndpointRouteBuilder app) =>
        app.MapGet("/api/week", WeekAsync).WithTags("Windows").RequireAuthorization()
            .WithSummary("Shows on which of ten days, from today or a date on, each task may be done.");

    private static async Task<Results<Ok<WeekView>, ValidationProblem>> WeekAsync(
        string? from, WeekHandler week, CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        var first = from is null ? await week.TodayAsync(cancellation) : AskedDays.Date("from", from, faults);
        if (first is not { } start)
            return faults.ToProblem();
        var tasks = await week.EvaluateAsync(start, cancellation);
        var days = new DaySpan(start, WeekHandler.Days);
        return TypedResults.Ok(new WeekView(days.First, days.Last, [.. tasks.Select(task => View(task, days))]));
    }

    private static WeekTask View(EvaluatedTask evaluated, DaySpan days)
    {
        var (task, evaluation) = evaluated;
        return new(task.Id, task.Key, task.Practice.Id, task.Practice.Name, task.PropertyName, task.ParcelName,
            [.. Enumerable.Range(0, days.Count).Select(day => evaluation[days[day]])]);
    }
}

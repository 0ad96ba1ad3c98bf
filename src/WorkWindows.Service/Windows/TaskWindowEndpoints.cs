using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Windows;

internal static class TaskWindowEndpoints
{
    /// <summary>The days of a task.</summary>
    /// <param name="TaskId">The task.</param>
    /// <param name="TimeZone">The IANA zone whose days these are.</param>
    /// <param name="Today">The day it is there.</param>
    /// <param name="Outlook">Where the task stands today; null when today is not among the days.</param>
    /// <param name="States">The state of every day, as runs of equal state.</param>
    /// <param name="Season">Counts, windows, unknown days and leaf-out.</param>
    public sealed record WindowsView(
        Guid TaskId, string TimeZone, LocalDate Today, OutlookView? Outlook, IReadOnlyList<StateView> States,
        TaskSeason Season);

    /// <summary>Days of one state, both ends included.</summary>
    public sealed record StateView(LocalDate From, LocalDate To, DayState State);

    /// <summary>Where a task stands today.</summary>
    /// <param name="State">What may be done today.</param>
    /// <param name="ClosesAfter">The last day of the window that today lies in, or null.</param>
    /// <param name="OpensOn">The first day of the next window, or null where none is known.</param>
    /// <param name="MayOpenOn">
    /// The first day before it that no rule closes but whose inputs are not all known, or null.
    /// </param>
    public sealed record OutlookView(DayState State, LocalDate? ClosesAfter, LocalDate? OpensOn, LocalDate? MayOpenOn);

    public static void MapTaskWindows(this IEndpointRouteBuilder app)
    {
        var task = app.MapGroup("/api/tasks/{id:guid}").WithTags("Windows").RequireAuthorization();
        task.MapGet("/windows", WindowsAsync)
            .WithSummary("Shows the days and windows of a task, of the coming year or from one date to another.");
        task.MapGet("/days/{date}", DayAsync).WithSummary("Shows why a day is as it is: every rule and what it found.");
    }

    private static async Task<Results<Ok<WindowsView>, NotFound, ValidationProblem>> WindowsAsync(
        Guid id, string? from, string? to, WindowHandler windows, CancellationToken cancellation)
    {
        if (await windows.TodayAsync(id, cancellation) is not { } today)
            return TypedResults.NotFound();
        var faults = new FieldFaults();
        if (!AskedDays.TryRead(from, to, today, faults, out var days))
            return faults.ToProblem();
        if (await windows.EvaluateAsync(id, days, cancellation) is not var (task, evaluation))
            return TypedResults.NotFound();
        return TypedResults.Ok(new WindowsView(
            task.Id, task.Zone.Id, today,
            days.Contains(today) ? View(Outlook.Of(evaluation, today)) : null,
            [.. evaluation.Runs(days).Select(run => new StateView(run.First, run.Last, run.State))],
            TaskSeason.Of(evaluation, days)));
    }

    private static async Task<Results<Ok<DayView>, NotFound, ValidationProblem>> DayAsync(
        Guid id, string date, WindowHandler windows, CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        if (AskedDays.Date("date", date, faults) is not { } day)
            return faults.ToProblem();
        return await windows.ExplainAsync(id, day, cancellation) is { } explanation
            ? TypedResults.Ok(DayView.Of(explanation))
            : TypedResults.NotFound();
    }

    private static OutlookView View(Outlook outlook) =>
        new(outlook.Today, outlook.Current?.Last, outlook.Next?.First, outlook.MayOpen);
}

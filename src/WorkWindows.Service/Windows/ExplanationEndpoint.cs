using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Windows;

internal static class ExplanationEndpoint
{
    /// <summary>Why a day of a task is as it is, and what would make it another.</summary>
    /// <param name="TaskId">The task.</param>
    /// <param name="Day">The day: its state and every rule that spoke.</param>
    /// <param name="Binding">The rules that decide the state.</param>
    /// <param name="Changes">Single inputs that would give the day another state.</param>
    /// <param name="SinceDecision">What changed since a stored decision, and why; null when nothing did.</param>
    public sealed record ExplanationView(
        Guid TaskId, DayView Day, IReadOnlyList<BindingRule> Binding, IReadOnlyList<SingleChange> Changes,
        SinceDecision? SinceDecision);

    /// <summary>A rule that decides a day.</summary>
    /// <param name="Id">Its key in the pack.</param>
    /// <param name="Title">What it says, in a few words.</param>
    /// <param name="LetsGoOn">
    /// The first later day on which it surely says nothing; null when none is known in the days ahead.
    /// </param>
    public sealed record BindingRule(string Id, string Title, LocalDate? LetsGoOn);

    public static void MapExplanation(this IEndpointRouteBuilder app) =>
        app.MapGet("/api/tasks/{id:guid}/explanation", ExplainAsync).WithTags("Windows").RequireAuthorization()
            .WithSummary("Explains a day, today without a date: what binds, when it lets go, what would change it.");

    private static async Task<Results<Ok<ExplanationView>, NotFound, ValidationProblem>> ExplainAsync(
        Guid id, string? date, WindowHandler windows, DecisionComparison decisions, CancellationToken cancellation)
    {
        if (await windows.TodayAsync(id, cancellation) is not { } today)
            return TypedResults.NotFound();
        var faults = new FieldFaults();
        var asked = date is null ? today : AskedDays.Date("date", date, faults);
        if (asked is not { } day)
            return faults.ToProblem();
        if (await windows.EvaluateAsync(id, AskedDays.YearFrom(day), cancellation) is not { } task)
            return TypedResults.NotFound();
        var explanation = Explanation.Of(task.Evaluation, day);
        return TypedResults.Ok(new ExplanationView(
            id, DayView.Of(explanation),
            [.. explanation.Deciding.Select(
                verdict => new BindingRule(verdict.Rule.Id, verdict.Rule.Title, verdict.LetsGoOn))],
            SingleChanges.Of(task.Evaluation, day),
            await decisions.WithLastAsync(task, cancellation)));
    }
}

using Microsoft.AspNetCore.Http.HttpResults;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Safety.Checklists;

internal static class ChecklistEndpoints
{
    /// <summary>What is stored of a signature, and what came of it.</summary>
    /// <param name="Signature">The signature.</param>
    /// <param name="Release">Whether a crew may begin now.</param>
    public sealed record SignedView(SignatureView Signature, ReleaseView Release);

    public static void MapChecklists(this IEndpointRouteBuilder app)
    {
        var day = app.MapGroup("/api/tasks/{id:guid}/checklists/{date}").WithTags("Checklists")
            .RequireAuthorization(Access.Work);
        day.MapGet("", FindAsync).WithSummary("Shows a task's checklist for a day, and whether the task is released.");
        day.MapGet("/signatures", ListAsync).WithSummary("Lists who has acknowledged it, in the order received.");
        day.MapPost("/signatures", SignAsync).RequireAuthorization(Access.Acknowledge)
            .WithSummary("Acknowledges every line by name; safe to repeat with the same key.");
    }

    private static async Task<Results<Ok<ChecklistView>, NotFound, ValidationProblem>> FindAsync(
        Guid id, string date, ChecklistReader checklists, CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        if (AskedDays.Date("date", date, faults) is not { } day)
            return faults.ToProblem();
        return await checklists.ReadAsync(id, day, cancellation) is { } found
            ? TypedResults.Ok(ChecklistView.Of(found))
            : TypedResults.NotFound();
    }

    private static async Task<Results<Ok<List<SignatureView>>, NotFound, ValidationProblem>> ListAsync(
        Guid id, string date, ChecklistReader checklists, CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        if (AskedDays.Date("date", date, faults) is not { } day)
            return faults.ToProblem();
        if (await checklists.ReadAsync(id, day, cancellation) is null)
            return TypedResults.NotFound();
        return TypedResults.Ok((await checklists.SignaturesAsync(id, day, cancellation)).ConvertAll(SignatureView.Of));
    }

    private static async Task<Results<Created<SignedView>, NotFound, ValidationProblem, ProblemHttpResult>> SignAsync(
        Guid id, string date, SignatureForm form, SignatureHandler signatures, ChecklistReader checklists,
        CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        if (AskedDays.Date("date", date, faults) is not { } day)
            return faults.ToProblem();
        var made = await signatures.SignAsync(id, day, form, cancellation);
        var now = made.Outcome == ChangeOutcome.Done ? await checklists.ReadAsync(id, day, cancellation) : null;
        return made.AnswerCreated(
            signature => new SignedView(SignatureView.Of(signature), ReleaseView.Of(now!.Release)),
            signature => $"/api/tasks/{id}/checklists/{date}/signatures#{signature.Id}");
    }
}

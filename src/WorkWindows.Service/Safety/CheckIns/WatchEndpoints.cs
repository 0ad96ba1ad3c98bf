using Microsoft.AspNetCore.Http.HttpResults;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Safety.CheckIns;

internal static class WatchEndpoints
{
    public static void MapWatches(this IEndpointRouteBuilder app)
    {
        var task = app.MapGroup("/api/tasks/{id:guid}/watches").WithTags("Watches").RequireAuthorization(Access.Work);
        task.MapGet("", ListAsync).WithSummary("Lists the watches of a task, the newest first.");
        task.MapPost("", StartAsync).WithSummary(
            "Begins a watch on a task: its crew is looked for when it is not heard from.");
        var watch = app.MapGroup("/api/watches/{id:guid}").WithTags("Watches").RequireAuthorization(Access.Work);
        watch.MapGet("", FindAsync).WithSummary("Shows a watch.");
        watch.MapPost("/check-ins", CheckInAsync).WithSummary("Says that the crew is fine, which moves the due time.");
        watch.MapPost("/end", EndAsync).WithSummary("Says that the crew is out, which ends the watch; safe to repeat.");
        watch.MapPost("/acknowledgement", AcknowledgeAsync)
            .WithSummary("Takes a missed check-in over, which stops the calls and not the watch; safe to repeat.");
    }

    private static async Task<Results<Ok<IReadOnlyList<WatchView>>, NotFound>> ListAsync(
        Guid id, WatchReader watches, CancellationToken cancellation) =>
        await watches.ListAsync(id, cancellation) is { } found ? TypedResults.Ok(found) : TypedResults.NotFound();

    private static async Task<Results<Ok<WatchView>, NotFound>> FindAsync(
        Guid id, WatchReader watches, CancellationToken cancellation) =>
        await watches.FindAsync(id, cancellation) is { } found ? TypedResults.Ok(found) : TypedResults.NotFound();

    private static async Task<Results<Created<WatchView>, NotFound, ValidationProblem, ProblemHttpResult>> StartAsync(
        Guid id, WatchForm form, WatchStart start, WatchReader watches, Caller caller, WorkWindowsDb db,
        CancellationToken cancellation)
    {
        var made = await start.StartAsync(id, form, await Signer.OfAsync(caller, db, cancellation), cancellation);
        var view = made.Value is { } watch ? await watches.FindAsync(watch.Id, cancellation) : null;
        return made.AnswerCreated(_ => view!, watch => $"/api/watches/{watch.Id}");
    }

    private static Task<Results<Ok<WatchView>, NotFound, ValidationProblem, ProblemHttpResult>> CheckInAsync(
        Guid id, WatchHandler handler, WatchReader watches, Caller caller, WorkWindowsDb db,
        CancellationToken cancellation) =>
        AnswerAsync(id, handler.CheckInAsync, watches, caller, db, cancellation);

    private static Task<Results<Ok<WatchView>, NotFound, ValidationProblem, ProblemHttpResult>> EndAsync(
        Guid id, WatchHandler handler, WatchReader watches, Caller caller, WorkWindowsDb db,
        CancellationToken cancellation) =>
        AnswerAsync(id, handler.EndAsync, watches, caller, db, cancellation);

    private static Task<Results<Ok<WatchView>, NotFound, ValidationProblem, ProblemHttpResult>> AcknowledgeAsync(
        Guid id, WatchHandler handler, WatchReader watches, Caller caller, WorkWindowsDb db,
        CancellationToken cancellation) =>
        AnswerAsync(id, handler.AcknowledgeAsync, watches, caller, db, cancellation);

    private static async Task<Results<Ok<WatchView>, NotFound, ValidationProblem, ProblemHttpResult>> AnswerAsync(
        Guid id, Func<Guid, Signer, CancellationToken, Task<Change<CrewWatch>>> change, WatchReader watches,
        Caller caller, WorkWindowsDb db, CancellationToken cancellation)
    {
        var done = await change(id, await Signer.OfAsync(caller, db, cancellation), cancellation);
        var view = done.Outcome == ChangeOutcome.Done ? await watches.FindAsync(id, cancellation) : null;
        return done.Answer(_ => view!);
    }
}

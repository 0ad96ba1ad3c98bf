using System.Text;
using Microsoft.AspNetCore.Http.HttpResults;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Safety.Incidents;

internal static class IncidentEndpoints
{
    public static void MapIncidents(this IEndpointRouteBuilder app)
    {
        var task = app.MapGroup("/api/tasks/{id:guid}/incidents").WithTags("Incidents").RequireAuthorization(
            Access.Work);
        task.MapGet("", OfTaskAsync).WithSummary("Lists the incidents and near misses of a task, the latest first.");
        task.MapPost("", RecordAsync)
            .WithSummary(
                "Records an incident or near miss with what the day was like; a correction names what it corrects.");
        var all = app.MapGroup("/api/incidents").WithTags("Incidents").RequireAuthorization(Access.Plan);
        all.MapGet("", AllAsync).WithSummary(
            "Lists all incidents and near misses of the organization, the latest first.");
        all.MapGet("/export", ExportAsync).WithSummary("The same as CSV.").Produces<string>(contentType: "text/csv");
    }

    private static async Task<Results<Ok<IReadOnlyList<IncidentView>>, NotFound>> OfTaskAsync(
        Guid id, IncidentReader incidents, CancellationToken cancellation) =>
        await incidents.OfTaskAsync(id, cancellation) is { } found ? TypedResults.Ok(found) : TypedResults.NotFound();

    private static async
        Task<Results<Created<IncidentView>, NotFound, ValidationProblem, ProblemHttpResult>> RecordAsync(
            Guid id, IncidentForm form, IncidentHandler incidents, Caller caller, WorkWindowsDb db,
            CancellationToken cancellation) =>
        (await incidents.RecordAsync(id, form, await Signer.OfAsync(caller, db, cancellation), cancellation))
        .AnswerCreated(IncidentView.Of, made => $"/api/tasks/{id}/incidents#{made.Id}");

    private static async Task<Ok<IReadOnlyList<PlacedIncident>>> AllAsync(
        IncidentReader incidents, CancellationToken cancellation) =>
        TypedResults.Ok(await incidents.AllAsync(cancellation));

    private static async Task<FileContentHttpResult> ExportAsync(
        IncidentReader incidents, CancellationToken cancellation) => TypedResults.File(
        Encoding.UTF8.GetBytes(IncidentCsv.Of(await incidents.AllAsync(cancellation))), "text/csv; charset=utf-8",
        "incidents.csv");
}

using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.WorkDone;

/// <summary>What was done on a day.</summary>
public sealed record WorkView(
    Guid Id, LocalDate Day, int People, decimal PersonHours, decimal? Quantity, int? Stems, string? Problem, bool IsLast,
    Instant RecordedAt, string RecordedBy, IReadOnlyList<Guid> PhotoIds)
{
    public static WorkView Of(WorkRecord record) => new(
        record.Id, record.Day, record.People, record.PersonHours, record.Quantity, record.Stems, record.Problem,
        record.IsLast, record.RecordedAt, record.RecordedBy, [.. record.Photos.Select(photo => photo.Id).Order()]);
}

public static class WorkEndpoints
{
    public static void AddWorkDone(this IHostApplicationBuilder builder)
    {
        builder.Services.AddScoped<WorkHandler>();
        builder.Services.AddScoped<FollowUpDates>();
    }

    public static void MapWorkDone(this IEndpointRouteBuilder app)
    {
        var work = app.MapGroup("/api/tasks/{id:guid}/work").WithTags("Tasks").RequireAuthorization(Access.Work);
        work.MapGet("", ListAsync).WithSummary("Lists what was done on a task.");
        work.MapPost("", RecordAsync).WithSummary("Records what was done on a task; handed in twice it is stored once.");
        app.MapGet("/photos/{id:guid}", PhotoAsync).RequireAuthorization().WithTags("Tasks")
            .WithSummary("Shows a photo of work to whoever may see the task.");
    }

    /// <returns>The records of a task with the ids of their photos, the newest first.</returns>
    internal static async Task<List<WorkView>> ReadAsync(WorkWindowsDb db, Guid task, CancellationToken cancellation) =>
        await db.WorkRecords.AsNoTracking().Where(record => record.TaskId == task)
            .OrderByDescending(record => record.Day).ThenByDescending(record => record.RecordedAt)
            .Select(record => new WorkView(
                record.Id, record.Day, record.People, record.PersonHours, record.Quantity, record.Stems, record.Problem,
                record.IsLast, record.RecordedAt, record.RecordedBy,
                record.Photos.OrderBy(photo => photo.Id).Select(photo => photo.Id).ToList()))
            .ToListAsync(cancellation);

    private static async Task<Results<Ok<List<WorkView>>, NotFound>> ListAsync(
        Guid id, VisibleTasks visible, WorkWindowsDb db, CancellationToken cancellation) =>
        await visible.All.AnyAsync(task => task.Id == id, cancellation)
            ? TypedResults.Ok(await ReadAsync(db, id, cancellation))
            : TypedResults.NotFound();

    private static async Task<Results<Ok<WorkView>, NotFound, ValidationProblem, ProblemHttpResult>> RecordAsync(
        Guid id, WorkForm form, WorkHandler work, Caller caller, WorkWindowsDb db, CancellationToken cancellation) =>
        (await work.RecordAsync(id, form, [], await Signer.OfAsync(caller, db, cancellation), cancellation)).Answer(WorkView.Of);

    private static async Task<Results<FileContentHttpResult, NotFound>> PhotoAsync(
        Guid id, VisibleTasks visible, WorkWindowsDb db, CancellationToken cancellation) =>
        await db.WorkPhotos.AsNoTracking().Where(photo => photo.Id == id && db.WorkRecords.Any(
                record => record.Id == photo.RecordId && visible.All.Any(task => task.Id == record.TaskId)))
            .SingleOrDefaultAsync(cancellation) is { } found
            ? TypedResults.File(found.Bytes, found.ContentType)
            : TypedResults.NotFound();
}

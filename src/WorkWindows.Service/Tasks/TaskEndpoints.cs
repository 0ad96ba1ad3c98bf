using System.Linq.Expressions;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;

namespace WorkWindows.Service.Tasks;

public static class TaskEndpoints
{
    /// <summary>A planned task as the API shows it.</summary>
    public sealed record TaskView(
        Guid Id, string Key, Guid ParcelId, string Practice, decimal? Quantity, string? QuantityUnit, int CrewSize,
        Guid? CrewLeadId, LocalDate? Deadline, LocalDate? ScheduledOn, LocalDate? CompletedOn,
        IReadOnlyList<Guid> PrerequisiteIds, LocalDate? NotBefore, Guid? FollowsId, decimal? HoursLow, decimal? HoursHigh,
        decimal? Points);

    /// <param name="CompletedOn">The day it was done on; null, which must be written out, takes it back.</param>
    public sealed record CompletionForm([property: JsonRequired] LocalDate? CompletedOn);

    private static readonly Expression<Func<PlannedTask, TaskView>> View = task => new TaskView(
        task.Id, task.Key, task.ParcelId, task.PracticeId, task.Quantity, task.QuantityUnit, task.CrewSize,
        task.CrewLeadId, task.Deadline, task.ScheduledOn, task.CompletedOn,
        task.Prerequisites.Select(link => link.PrerequisiteId).ToList(), task.NotBefore, task.FollowsId, task.HoursLow,
        task.HoursHigh, task.Points);

    private static readonly Func<PlannedTask, TaskView> ViewOf = View.Compile();

    public static void AddTasks(this IHostApplicationBuilder builder)
    {
        builder.Services.AddScoped<VisibleTasks>();
        builder.Services.AddScoped<TaskHandler>();
        builder.Services.AddScoped<TaskImportHandler>();
        builder.Services.AddScoped<TaskBulkHandler>();
    }

    public static void MapTasks(this IEndpointRouteBuilder app)
    {
        var tasks = app.MapGroup("/api/tasks").WithTags("Tasks").RequireAuthorization();
        tasks.MapGet("", ListAsync).WithSummary("Lists the tasks that the caller may see, of a property or practice.");
        tasks.MapGet("/{id:guid}", FindAsync).WithSummary("Shows a task.");
        tasks.MapPost("", CreateAsync).RequireAuthorization(Access.Plan).WithSummary("Plans a task.");
        tasks.MapPut("/{id:guid}", UpdateAsync).RequireAuthorization(Access.Plan).WithSummary("Changes a task.");
        tasks.MapPut("/{id:guid}/completion", CompleteAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Says on which day a task was done; null takes it back.");
        tasks.MapDelete("/{id:guid}", DeleteAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Deletes a task, unless there are decisions about it.");
        app.MapTaskImport();
    }

    private static async Task<List<TaskView>> ListAsync(
        VisibleTasks visible, Guid? propertyId, string? practice, CancellationToken cancellation) =>
        await visible.All
            .Where(task => propertyId == null || task.Parcel.PropertyId == propertyId)
            .Where(task => practice == null || task.PracticeId == practice)
            .OrderBy(task => task.Key).Select(View).ToListAsync(cancellation);

    private static async Task<Results<Ok<TaskView>, NotFound>> FindAsync(
        Guid id, VisibleTasks visible, CancellationToken cancellation) =>
        await visible.All.Where(task => task.Id == id).Select(View).SingleOrDefaultAsync(cancellation) is { } found
            ? TypedResults.Ok(found)
            : TypedResults.NotFound();

    private static async Task<Results<Created<TaskView>, NotFound, ValidationProblem, ProblemHttpResult>> CreateAsync(
        TaskForm form, TaskHandler tasks, CancellationToken cancellation) =>
        (await tasks.CreateAsync(form, cancellation)).AnswerCreated(ViewOf, made => $"/api/tasks/{made.Id}");

    private static async Task<Results<Ok<TaskView>, NotFound, ValidationProblem, ProblemHttpResult>> UpdateAsync(
        Guid id, TaskForm form, TaskHandler tasks, CancellationToken cancellation) =>
        (await tasks.UpdateAsync(id, form, cancellation)).Answer(ViewOf);

    private static async Task<Results<Ok<TaskView>, NotFound, ValidationProblem, ProblemHttpResult>> CompleteAsync(
        Guid id, CompletionForm form, TaskHandler tasks, CancellationToken cancellation) =>
        (await tasks.CompleteAsync(id, form.CompletedOn, cancellation)).Answer(ViewOf);

    private static async Task<Results<NoContent, NotFound, ValidationProblem, ProblemHttpResult>> DeleteAsync(
        Guid id, TaskHandler tasks, CancellationToken cancellation) =>
        (await tasks.DeleteAsync(id, cancellation)).AnswerNothing();
}

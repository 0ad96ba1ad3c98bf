using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Prescriptions;

public static class PrescriptionEndpoints
{
    /// <summary>A task that was made.</summary>
    public sealed record MadeTask(Guid Id, string Key, string Practice, Guid? FollowsId, IReadOnlyList<Guid> PrerequisiteIds)
    {
        internal static MadeTask Of(PlannedTask task) => new(
            task.Id, task.Key, task.PracticeId, task.FollowsId, [.. task.Prerequisites.Select(link => link.PrerequisiteId)]);
    }

    public static void AddPrescriptions(this IHostApplicationBuilder builder)
    {
        builder.Services.AddScoped<PrescriptionHandler>();
        builder.Services.AddScoped<PropertyPlanReader>();
    }

    public static void MapPrescriptions(this IEndpointRouteBuilder app)
    {
        app.MapPost("/api/parcels/{id:guid}/prescription",
            async (Guid id, PrescriptionForm form, PrescriptionHandler handler, CancellationToken cancellation) =>
                (await handler.PrescribeAsync(id, form, cancellation)).Answer(made => made.Select(MadeTask.Of).ToList()))
            .RequireAuthorization(Access.Plan).WithTags("Parcels")
            .WithSummary("Plans practices on a parcel in their order, with what follows in later years.");
        app.MapGet("/api/properties/{id:guid}/plan",
            async (Guid id, PropertyPlanReader reader, CancellationToken cancellation) =>
                await reader.ReadAsync(id, cancellation) is { } plan ? Results.Ok(plan) : Results.NotFound())
            .RequireAuthorization().WithTags("Properties").Produces<PropertyPlan>()
            .WithSummary("What was, is to be and will be done on a property, and what brings most for an hour.");
    }
}

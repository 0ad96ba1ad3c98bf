using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Rules;

/// <summary>An exception as the API and the audit show it.</summary>
/// <param name="Id">Names it when it is to be withdrawn.</param>
/// <param name="PropertyId">The property.</param>
/// <param name="ParcelId">The one parcel, or null for all.</param>
/// <param name="TaskId">The one task, or null for all.</param>
/// <param name="RuleId">The rule.</param>
/// <param name="FirstDay">The first day.</param>
/// <param name="LastDay">The day on which it expires, included.</param>
/// <param name="Reason">Why.</param>
/// <param name="MadeById">Who answers for it.</param>
/// <param name="MadeBy">Their name; null in the audit, which names them beside it.</param>
/// <param name="MadeAt">When.</param>
/// <param name="WithdrawnById">Who withdrew it, or null.</param>
/// <param name="WithdrawnAt">When, or null.</param>
public sealed record OverrideView(
    Guid Id, Guid PropertyId, Guid? ParcelId, Guid? TaskId, string RuleId, LocalDate FirstDay, LocalDate LastDay,
    string Reason, Guid MadeById, string? MadeBy, Instant MadeAt, Guid? WithdrawnById, Instant? WithdrawnAt)
{
    internal static OverrideView Of(StoredOverride row, string? madeBy) => new(
        row.Id, row.PropertyId, row.ParcelId, row.TaskId, row.RuleId, row.FirstDay, row.LastDay, row.Reason,
        row.MadeById, madeBy, row.MadeAt, row.WithdrawnById, row.WithdrawnAt);
}

internal static class OverrideEndpoints
{
    public static void MapOverrides(this IEndpointRouteBuilder app)
    {
        var overrides = app.MapGroup("/api/properties/{propertyId:guid}/overrides").WithTags("Overrides")
            .RequireAuthorization();
        overrides.MapGet("", ListAsync)
            .WithSummary("Lists the exceptions on a property, withdrawn and expired ones too, the newest first.");
        overrides.MapPost("", CreateAsync).RequireAuthorization(Access.Sign)
            .WithSummary("Makes an exception to a rule that is neither regulation nor life safety; a person signs it.");
        overrides.MapDelete("/{id:guid}", WithdrawAsync).RequireAuthorization(Access.Sign)
            .WithSummary("Withdraws an exception; it stays in the list.");
    }

    private static async Task<Results<Ok<List<OverrideView>>, NotFound>> ListAsync(
        Guid propertyId, VisibleProperties visible, WorkWindowsDb db, CancellationToken cancellation)
    {
        if (!await visible.All.AnyAsync(property => property.Id == propertyId, cancellation))
            return TypedResults.NotFound();
        var rows = await db.RuleOverrides.AsNoTracking().Include(row => row.MadeBy)
            .Where(row => row.PropertyId == propertyId).OrderByDescending(row => row.MadeAt).ToListAsync(cancellation);
        return TypedResults.Ok(rows.ConvertAll(View));
    }

    private static async Task<Results<Created<OverrideView>, NotFound, ValidationProblem, ProblemHttpResult>>
        CreateAsync(
            Guid propertyId, OverrideForm form, Caller caller, OverrideHandler overrides,
            CancellationToken cancellation) =>
        (await overrides.CreateAsync(propertyId, form, caller.PersonId!.Value, cancellation))
        .AnswerCreated(View, made => $"/api/properties/{propertyId}/overrides/{made.Id}");

    private static async Task<Results<NoContent, NotFound, ValidationProblem, ProblemHttpResult>> WithdrawAsync(
        Guid propertyId, Guid id, Caller caller, OverrideHandler overrides, CancellationToken cancellation) =>
        (await overrides.WithdrawAsync(propertyId, id, caller.PersonId!.Value, cancellation)).AnswerNothing();

    private static OverrideView View(StoredOverride row) => OverrideView.Of(row, row.MadeBy.DisplayName);
}

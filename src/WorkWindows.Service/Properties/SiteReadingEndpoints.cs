using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Properties;

/// <summary>A reading as the API and the audit show it.</summary>
/// <param name="Id">Names it when it is to be taken back.</param>
/// <param name="PropertyId">The property.</param>
/// <param name="Signal">What was read.</param>
/// <param name="Value">The reading with its unit, as it was given.</param>
/// <param name="SeenOn">The day.</param>
/// <param name="Until">The last day that it stands for, included.</param>
/// <param name="Note">Where and how, or null.</param>
/// <param name="RecordedById">Who answers for it.</param>
/// <param name="RecordedBy">Their name; null in the audit, which names them beside it.</param>
/// <param name="RecordedAt">When.</param>
public sealed record SiteReadingView(
    Guid Id, Guid PropertyId, string Signal, string Value, LocalDate SeenOn, LocalDate Until, string? Note,
    Guid RecordedById, string? RecordedBy, Instant RecordedAt)
{
    internal static SiteReadingView Of(SiteReadingRow row, string? recordedBy) => new(
        row.Id, row.PropertyId, SignalWords.OfSiteReading(row.Signal), row.Given, row.SeenOn, row.Until, row.Note,
        row.RecordedById, recordedBy, row.RecordedAt);
}

internal static class SiteReadingEndpoints
{
    public static void MapSiteReadings(this IEndpointRouteBuilder app)
    {
        var readings = app.MapGroup("/api/properties/{propertyId:guid}/observations").WithTags("Observations")
            .RequireAuthorization();
        readings.MapGet("", ListAsync).WithSummary("Lists what was read on a property, the latest first.");
        readings.MapPost("", CreateAsync).RequireAuthorization(Access.Sign)
            .WithSummary("Says what was read on a property; it takes the place of the record until it expires.");
        readings.MapDelete("/{id:guid}", DeleteAsync).RequireAuthorization(Access.Sign)
            .WithSummary("Takes a reading back.");
    }

    private static async Task<Results<Ok<List<SiteReadingView>>, NotFound>> ListAsync(
        Guid propertyId, VisibleProperties visible, WorkWindowsDb db, CancellationToken cancellation)
    {
        if (!await visible.All.AnyAsync(property => property.Id == propertyId, cancellation))
            return TypedResults.NotFound();
        var rows = await db.SiteReadings.AsNoTracking().Include(row => row.RecordedBy)
            .Where(row => row.PropertyId == propertyId)
            .OrderByDescending(row => row.SeenOn).ThenByDescending(row => row.RecordedAt).ToListAsync(cancellation);
        return TypedResults.Ok(rows.ConvertAll(View));
    }

    private static async Task<Results<Created<SiteReadingView>, NotFound, ValidationProblem, ProblemHttpResult>>
        CreateAsync(
            Guid propertyId, SiteReadingForm form, Caller caller, SiteReadingHandler readings,
            CancellationToken cancellation) =>
        (await readings.CreateAsync(propertyId, form, caller.PersonId!.Value, cancellation))
        .AnswerCreated(View, made => $"/api/properties/{propertyId}/observations/{made.Id}");

    private static async Task<Results<NoContent, NotFound, ValidationProblem, ProblemHttpResult>> DeleteAsync(
        Guid propertyId, Guid id, SiteReadingHandler readings, CancellationToken cancellation) =>
        (await readings.DeleteAsync(propertyId, id, cancellation)).AnswerNothing();

    private static SiteReadingView View(SiteReadingRow row) => SiteReadingView.Of(row, row.RecordedBy.DisplayName);
}
